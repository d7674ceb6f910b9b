package browsertest

import (
	"net"
	"net/http"
	"testing"

	"toewright/internal/web"
)

// Server serves the page on the loopback. It can be stopped, to see what the page
// does without it, and started again at the same address.
type Server struct {
	t       testing.TB
	handler http.Handler
	address string
	server  *http.Server
}

// Serve starts a server that stops at the end of the test.
func Serve(t testing.TB, o Options) *Server {
	t.Helper()
	s := &Server{t: t, address: "127.0.0.1:0", handler: o.Handler}
	if s.handler == nil {
		s.Use(o.Web)
	}
	s.Start()
	t.Cleanup(s.Stop)
	return s
}

// Use makes the server serve something else from its next start on.
func (s *Server) Use(cfg web.Config) {
	s.t.Helper()
	handler, err := web.NewHandler(cfg)
	if err != nil {
		s.t.Fatal(err)
	}
	s.handler = handler
}

// Lose makes the server answer as if it did not have a file, until it is to use something
// else.
func (s *Server) Lose(path string) {
	whole := s.handler
	s.handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == path {
			http.NotFound(w, r)
			return
		}
		whole.ServeHTTP(w, r)
	})
}

// Start makes the server answer. It must not be running.
func (s *Server) Start() {
	s.t.Helper()
	listener, err := net.Listen("tcp", s.address)
	if err != nil {
		s.t.Fatal(err)
	}
	s.address = listener.Addr().String()
	s.server = &http.Server{Handler: s.handler}
	go s.server.Serve(listener)
}

// Stop ends the server and cuts its connections. It may be called again.
func (s *Server) Stop() { s.server.Close() }

// Origin returns the server's address, such as "http://127.0.0.1:4711".
func (s *Server) Origin() string { return "http://" + s.address }
