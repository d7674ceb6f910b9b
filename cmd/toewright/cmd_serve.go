package main

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"time"

	"github.com/spf13/cobra"

	"toewright/internal/version"
	"toewright/internal/web"
	"toewright/internal/web/api"
)

// Limits of the server. A client has time for a slow line but not for ever; an
// answer may take as long as a search does.
const (
	headerTimeout = 10 * time.Second
	readTimeout   = 30 * time.Second
	idleTimeout   = 2 * time.Minute
	stopGrace     = 35 * time.Second // for answers under way when asked to stop: more than the longest call takes
)

func newServeCommand() *cobra.Command {
	var address, basePath string
	cmd := &cobra.Command{
		Use:   "serve",
		Short: "Serve the page and the HTTP calls",
		Long: `Serve the page and the HTTP calls until interrupted.

The server can be reached from this machine alone unless --address says otherwise.
It has no accounts and no encryption: put it behind something that has before
others can reach it.`,
		Args: usage(cobra.NoArgs),
		RunE: func(cmd *cobra.Command, _ []string) error {
			handler, err := web.NewHandler(web.Config{BasePath: basePath, API: newAPI(cmd)})
			if err != nil {
				return err
			}
			listener, err := net.Listen("tcp", address)
			if err != nil {
				return fmt.Errorf("cannot serve at --address %s: %w", address, err)
			}
			fmt.Fprintf(cmd.OutOrStdout(), "Toewright is at http://%s%s/ (Ctrl-C stops it)\n", listener.Addr(), basePath)
			return serve(cmd.Context(), listener, handler)
		},
	}
	cmd.Flags().StringVar(&address, "address", "127.0.0.1:8321", "host and port to listen on; port 0 takes any that is free")
	cmd.Flags().StringVar(&basePath, "base-path", "", "path of the page on its host, such as /toe")
	return cmd
}

// newAPI returns the handler of the calls, which are logged as lines of JSON.
func newAPI(cmd *cobra.Command) http.Handler {
	return api.New(api.Config{
		Version:  version.Name(),
		Logger:   slog.New(slog.NewJSONHandler(cmd.ErrOrStderr(), nil)),
		Stopping: cmd.Context().Done(),
	})
}

// serve answers requests until ctx is cancelled. Then it takes no more, and waits a
// short while for answers under way.
func serve(ctx context.Context, listener net.Listener, handler http.Handler) error {
	server := &http.Server{
		Handler:           handler,
		ReadHeaderTimeout: headerTimeout,
		ReadTimeout:       readTimeout,
		IdleTimeout:       idleTimeout,
	}
	stopped := make(chan error, 1)
	unregister := context.AfterFunc(ctx, func() {
		grace, cancel := context.WithTimeout(context.Background(), stopGrace)
		defer cancel()
		stopped <- server.Shutdown(grace)
	})
	err := server.Serve(listener)
	if unregister() || !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return <-stopped
}
