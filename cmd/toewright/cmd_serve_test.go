package main

import (
	"context"
	"io"
	"net"
	"net/http"
	"testing"
)

// startServing serves a handler until the function it returns is called, which
// returns what serve does.
func startServing(t *testing.T, handler http.HandlerFunc) (url string, stop func() error) {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	done := make(chan error, 1)
	go func() { done <- serve(ctx, site{listener, handler}) }()
	return "http://" + listener.Addr().String(), func() error {
		cancel()
		return <-done
	}
}

func TestServeFinishesAnswersUnderWay(t *testing.T) {
	asked, release := make(chan bool), make(chan bool)
	url, stop := startServing(t, func(w http.ResponseWriter, _ *http.Request) {
		close(asked)
		<-release
		io.WriteString(w, "whole")
	})
	body := make(chan string, 1)
	go func() {
		r, err := http.Get(url)
		if err != nil {
			body <- err.Error()
			return
		}
		defer r.Body.Close()
		b, _ := io.ReadAll(r.Body)
		body <- string(b)
	}()
	<-asked
	stopped := make(chan error, 1)
	go func() { stopped <- stop() }()
	close(release)
	if got := <-body; got != "whole" {
		t.Errorf("answer under way = %q, want whole", got)
	}
	if err := <-stopped; err != nil {
		t.Errorf("serve = %v, want nil after it was asked to stop", err)
	}
}

func TestServeReportsALostListener(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	listener.Close()
	if err := serve(t.Context(), site{listener, http.NotFoundHandler()}); err == nil {
		t.Error("serve on a closed listener gave no error")
	}
}
