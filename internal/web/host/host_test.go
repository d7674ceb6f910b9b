package host

import (
	"net/http/httptest"
	"testing"
)

func TestName(t *testing.T) {
	for host, want := range map[string]string{
		"localhost:8321": "localhost", "LocalHost.": "localhost", "[::1]:80": "::1", "[::1]": "::1",
		"toe.example": "toe.example", "": "", "127.0.0.1:0": "127.0.0.1",
	} {
		if got := Name(host); got != want {
			t.Errorf("Name(%q) = %q, want %q", host, got, want)
		}
	}
}

func TestIsLoopback(t *testing.T) {
	for name, want := range map[string]bool{
		"localhost": true, "127.0.0.1": true, "127.9.9.9": true, "::1": true, "::ffff:127.0.0.1": true,
		"": false, "localhost.example": false, "192.0.2.1": false, "0.0.0.0": false,
	} {
		if got := IsLoopback(name); got != want {
			t.Errorf("IsLoopback(%q) = %t, want %t", name, got, want)
		}
	}
}

func TestAsksFromHere(t *testing.T) {
	for _, tt := range []struct {
		from, host, header string
		want               bool
	}{
		{"127.0.0.1:4000", "localhost:8321", "", true},
		{"[::1]:4000", "127.0.0.1:8321", "", true},
		{"192.0.2.1:4000", "localhost:8321", "", false},
		{"127.0.0.1:4000", "toe.example", "", false},
		{"127.0.0.1:4000", "localhost:8321", "Forwarded", false},
		{"127.0.0.1:4000", "localhost:8321", "X-Forwarded-For", false},
		{"127.0.0.1:4000", "localhost:8321", "Via", false},
	} {
		r := httptest.NewRequest("GET", "/", nil)
		r.RemoteAddr, r.Host = tt.from, tt.host
		if tt.header != "" {
			r.Header.Set(tt.header, "a")
		}
		if got := AsksFromHere(r); got != tt.want {
			t.Errorf("from %s by %s, %q set: %t, want %t", tt.from, tt.host, tt.header, got, tt.want)
		}
	}
}
