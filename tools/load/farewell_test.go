package main

import (
	"net/http"
	"net/http/httptest"
	"os"
	"testing"

	"toewright/internal/web/api"
)

// TestTheLastCallTakesItsTime asks for the call that must be under way while the
// server is stopped.
func TestTheLastCallTakesItsTime(t *testing.T) {
	study, err := os.ReadFile("../../testdata/studies/" + stormStudy)
	if err != nil {
		t.Fatal(err)
	}
	service := api.New(api.Config{})
	all := http.NewServeMux()
	all.Handle("/", service)
	all.Handle("/metrics", service.Metrics)
	served := httptest.NewServer(all)
	defer served.Close()
	s := &server{url: served.URL}
	ended := make(chan string, 1)
	go func() { ended <- s.call(t.Context(), string(study)) }()
	if err := s.untilRunning(t.Context()); err != nil {
		t.Fatal(err)
	}
	if got := <-ended; got != "200" {
		t.Errorf("the last call ended by %s, want 200", got)
	}
}
