package web

import "strings"

// resolver makes the paths of the page relative to its document, so that the same
// files work under any path of any host.
type resolver struct{}

// Resolve returns a path of the page as its document names it. Addresses of other
// hosts are left as they are.
func (resolver) Resolve(path string) string {
	switch {
	case strings.Contains(path, "://"):
		return path
	case path == "/":
		return "./"
	}
	return strings.TrimPrefix(path, "/")
}
