package main

import (
	"context"
	"errors"
	"net"
	"net/http"
	"time"
)

// Limits of the server. A client has time for a slow line but not for ever; an
// answer may take as long as a search does.
const (
	headerTimeout = 10 * time.Second
	readTimeout   = 30 * time.Second
	idleTimeout   = 2 * time.Minute
	stopGrace     = 1500 * time.Millisecond // for answers under way when asked to stop: more than calls are given to finish
)

// site is what is served at one address.
type site struct {
	listener net.Listener
	handler  http.Handler
}

// serve answers requests at all sites until ctx is cancelled, or until one of them
// fails. Then it takes no more, and waits a short while for answers under way.
func serve(ctx context.Context, sites ...site) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	ended := make(chan error, len(sites))
	for _, s := range sites {
		go func() {
			defer stop()
			ended <- s.serve(ctx)
		}()
	}
	var all []error
	for range sites {
		all = append(all, <-ended)
	}
	return errors.Join(all...)
}

// serve does so for one.
func (s site) serve(ctx context.Context) error {
	server := &http.Server{
		Handler:           s.handler,
		ReadHeaderTimeout: headerTimeout,
		ReadTimeout:       readTimeout,
		IdleTimeout:       idleTimeout,
	}
	stopped := make(chan error, 1)
	unregister := context.AfterFunc(ctx, func() {
		grace, cancel := context.WithTimeout(context.Background(), stopGrace)
		defer cancel()
		err := server.Shutdown(grace)
		if errors.Is(err, context.DeadlineExceeded) {
			err = server.Close() // on who sends or takes too slowly
		}
		stopped <- err
	})
	err := server.Serve(s.listener)
	if unregister() || !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return <-stopped
}
