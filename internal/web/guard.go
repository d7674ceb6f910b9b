package web

import (
	"fmt"
	"net"
	"net/http"
	"net/netip"
	"strings"

	"toewright/internal/web/api"
)

// healthPath answers to whatever name it is asked by: probes ask by an address of
// their own choice, and it tells nothing.
const healthPath = "/healthz"

// guarded refuses what the pages of other sites can have a visitor's browser ask: a
// request to a name that is not ours, by which a name of theirs that was pointed at
// this machine would read the answers (RFC 9110, section 15.5.20), and one that a
// page of another origin sends and that is not just a look.
func guarded(hosts []string, next http.Handler) http.Handler {
	known := map[string]bool{}
	for _, h := range hosts {
		known[h] = true
	}
	cross := http.NewCrossOriginProtection()
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if name := hostName(r.Host); !isLoopback(name) && !known[name] {
			api.Refuse(w, http.StatusMisdirectedRequest, "Host", fmt.Sprintf("this server does not answer to %.60q; where it should, start it with --host and that name", name))
			return
		}
		if cross.Check(r) != nil {
			api.Refuse(w, http.StatusForbidden, "Origin", "a page of another site may not ask this server to compute")
			return
		}
		next.ServeHTTP(w, r)
	})
}

// local serves next to those who ask from this machine, by one of its own names, and
// hides it from others. What a proxy passes on comes from elsewhere.
func local(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := r.Header
		passedOn := h.Get("Forwarded") != "" || h.Get("X-Forwarded-For") != "" || h.Get("Via") != ""
		if passedOn || !isLoopback(hostName(r.RemoteAddr)) || !isLoopback(hostName(r.Host)) {
			http.NotFound(w, r)
			return
		}
		next.ServeHTTP(w, r)
	})
}

// hostName returns the name in a host with or without a port, in lower case and
// without brackets and the dot at its end.
func hostName(host string) string {
	if name, _, err := net.SplitHostPort(host); err == nil {
		host = name
	}
	host = strings.TrimSuffix(strings.TrimPrefix(host, "["), "]")
	return strings.ToLower(strings.TrimSuffix(host, "."))
}

// isLoopback reports whether a name is one of this machine that no server of names
// can point elsewhere.
func isLoopback(name string) bool {
	a, err := netip.ParseAddr(name)
	return name == "localhost" || err == nil && a.Unmap().IsLoopback()
}

// CleanHost returns a name that the server is to answer to as requests are compared
// with it. The error says what is wrong with it.
func CleanHost(name string) (string, error) {
	clean := hostName(name)
	_, err := netip.ParseAddr(clean)
	if _, _, port := net.SplitHostPort(name); port == nil || clean == "" || err != nil && strings.ContainsFunc(clean, notOfNames) {
		return "", fmt.Errorf("want a host name or address without a port, such as toe.example")
	}
	return clean, nil
}

// CleanBasePath returns the path under which the page stands without a slash at its
// end, nothing for the root. The error says what is wrong with it.
func CleanBasePath(path string) (string, error) {
	if path == "" || path == "/" {
		return "", nil
	}
	clean := strings.TrimSuffix(path, "/")
	parts := strings.Split(clean, "/")
	ok := parts[0] == ""
	for _, part := range parts[1:] {
		ok = ok && part != "" && part != "." && part != ".." && !strings.ContainsFunc(part, notOfNames)
	}
	if !ok || len(parts) < 2 {
		return "", fmt.Errorf("want a path such as /toe or /tools/toe, of letters, digits and . _ ~ -")
	}
	return clean, nil
}

// notOfNames reports whether a letter needs an escape in an address (RFC 3986,
// section 2.3).
func notOfNames(r rune) bool {
	return !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune("._~-", r))
}
