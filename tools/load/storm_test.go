package main

import (
	"context"
	"net"
	"net/http/httptest"
	"os"
	"slices"
	"strings"
	"testing"

	"toewright/internal/web/api"
)

// serveCalls serves the calls and returns the address and a study.
func serveCalls(t *testing.T, cfg api.Config) (address, study string) {
	t.Helper()
	text, err := os.ReadFile("../../testdata/studies/double-wishbone-rack.json")
	if err != nil {
		t.Fatal(err)
	}
	server := httptest.NewServer(api.New(cfg))
	t.Cleanup(server.Close)
	return strings.TrimPrefix(server.URL, "http://"), string(text)
}

func TestOneRequestOfEachStorm(t *testing.T) {
	ends := map[string][]string{
		"huge":                          {"413", closed}, // the answer may be lost to the reset
		"half-closed after the request": {"200"},
		"half-closed in the body":       {"400"},
		"half-closed in the header":     {"400"},
		"left before the answer":        {"left"},
	}
	address, study := serveCalls(t, api.Config{})
	for _, s := range storms(study) {
		want, quick := ends[s.name]
		if !quick {
			continue // What is slow takes as long as the server lets it.
		}
		if got := s.once(t.Context(), address); !slices.Contains(want, got) {
			t.Errorf("%s ended by %s, want one of %q", s.name, got, want)
		}
	}
}

func TestBadRequestsAreRefused(t *testing.T) {
	address, study := serveCalls(t, api.Config{})
	for _, text := range badRequests(study) {
		s := storm{send: func(_ context.Context, c net.Conn) error { return write(c, text) }}
		if got := s.once(t.Context(), address); got != closed && !(got >= "400" && got < "500") {
			t.Errorf("%.60q ended by %s, want 4xx", text, got)
		}
	}
}
