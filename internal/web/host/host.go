// Package host tells by which name a request comes, and whether it comes from this machine.
package host

import (
	"net"
	"net/http"
	"net/netip"
	"strings"
)

// Name returns the name in a host with or without a port, in lower case and without
// brackets and the dot at its end.
func Name(host string) string {
	if name, _, err := net.SplitHostPort(host); err == nil {
		host = name
	}
	host = strings.TrimSuffix(strings.TrimPrefix(host, "["), "]")
	return strings.ToLower(strings.TrimSuffix(host, "."))
}

// IsLoopback reports whether a name is one of this machine that no server of names can
// point elsewhere.
func IsLoopback(name string) bool {
	a, err := netip.ParseAddr(name)
	return name == "localhost" || err == nil && a.Unmap().IsLoopback()
}

// AsksFromHere reports whether a request was made on this machine, by one of its own names.
// What a proxy passes on comes from elsewhere.
func AsksFromHere(r *http.Request) bool {
	h := r.Header
	passedOn := h.Get("Forwarded") != "" || h.Get("X-Forwarded-For") != "" || h.Get("Via") != ""
	return !passedOn && IsLoopback(Name(r.RemoteAddr)) && IsLoopback(Name(r.Host))
}
