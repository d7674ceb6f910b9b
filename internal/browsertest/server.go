package browsertest

import (
	"io/fs"
	"maps"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"toewright/internal/web"
)

// Server serves the page on the loopback. It can be stopped, to see what the page
// does without it, and started again at the same address.
type Server struct {
	t       testing.TB
	handler http.Handler
	address string
	name    string // by which the browser asks for it, if not the loopback's address
	server  *http.Server
}

// Serve starts a server that stops at the end of the test.
func Serve(t testing.TB, o Options) *Server {
	t.Helper()
	s := &Server{t: t, address: "127.0.0.1:0", handler: o.Handler, name: o.Name}
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

// instead makes the server answer otherwise to one path, until it is to use something else.
func (s *Server) instead(path string, answer func(http.ResponseWriter, *http.Request, http.Handler)) {
	whole := s.handler
	s.handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == path {
			answer(w, r, whole)
			return
		}
		whole.ServeHTTP(w, r)
	})
}

// Lose makes the server answer as if it did not have a file.
func (s *Server) Lose(path string) {
	s.instead(path, func(w http.ResponseWriter, r *http.Request, _ http.Handler) { http.NotFound(w, r) })
}

// Vanish makes the server break off the connection when it is asked for a file.
func (s *Server) Vanish(path string) {
	s.instead(path, func(http.ResponseWriter, *http.Request, http.Handler) { panic(http.ErrAbortHandler) })
}

// Swap makes the server answer with the file of other assets.
func (s *Server) Swap(path string, assets fs.FS) {
	own := s.handler
	s.Use(web.Config{Assets: assets})
	other := s.handler
	s.handler = own
	s.instead(path, func(w http.ResponseWriter, r *http.Request, _ http.Handler) { other.ServeHTTP(w, r) })
}

// Cut makes the server send only the beginning of a file, as if that were all of it.
func (s *Server) Cut(path string) {
	s.instead(path, func(w http.ResponseWriter, r *http.Request, whole http.Handler) {
		r.Header.Del("Accept-Encoding") // What is packed and cut would not even open.
		r.Header.Del("If-None-Match")
		all := httptest.NewRecorder()
		whole.ServeHTTP(all, r)
		maps.Copy(w.Header(), all.Header())
		w.Header().Del("Content-Length")
		w.WriteHeader(all.Code)
		w.Write(all.Body.Bytes()[:all.Body.Len()/2])
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
func (s *Server) Origin() string {
	if s.name == "" {
		return "http://" + s.address
	}
	return "http://" + s.name + s.address[strings.LastIndex(s.address, ":"):]
}
