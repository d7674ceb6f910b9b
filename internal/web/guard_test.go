package web

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"toewright/internal/web/api"
)

// nameless stands for a request without a host.
const nameless = "none at all"

// TestGuard: whoever asks by a name that is not the server's, and a page of another
// origin that has it compute, is refused in one line; probes and all that a browser
// does by itself are not.
func TestGuard(t *testing.T) {
	service := api.New(api.Config{})
	tests := []struct {
		name, method, host, path, base string
		header                         [2]string
		want                           int
	}{
		{name: "loopback", host: "127.0.0.1:8321", want: 200},
		{name: "another of the loopback's", host: "127.8.9.10", want: 200},
		{name: "loopback of the sixth version", host: "[::1]:8321", want: 200},
		{name: "its name", host: "LOCALHOST:8321", want: 200},
		{name: "a name that was stated", host: "Toe.Example.:80", want: 200},
		{name: "an address that was stated", host: "192.0.2.7:8321", want: 200},
		{name: "a name that was not", host: "evil.example:8321", want: 421},
		{name: "below one that was", host: "evil.toe.example", want: 421},
		{name: "one that looks like the loopback", host: "127.0.0.1.evil.example", want: 421},
		{name: "no name", host: nameless, want: 421},
		{name: "call by such a name", host: "evil.example", method: http.MethodPost, path: "/api/v1/sweep", want: 421},
		{name: "schema by such a name", host: "evil.example", path: "/api/v1/schema", want: 421},
		{name: "health by such a name", host: "evil.example", path: "/healthz", want: 200},
		{name: "health below a path", host: "evil.example", base: "/toe", path: "/toe/healthz", want: 200},
		{name: "call of a page of another site", method: http.MethodPost, path: "/api/v1/sweep", header: [2]string{"Sec-Fetch-Site", "cross-site"}, want: 403},
		{name: "of another port", method: http.MethodPost, path: "/api/v1/sweep", header: [2]string{"Sec-Fetch-Site", "same-site"}, want: 403},
		{name: "of an older browser", method: http.MethodPost, path: "/api/v1/sweep", header: [2]string{"Origin", "http://evil.example"}, want: 403},
		{name: "of a page without an origin", method: http.MethodPost, path: "/api/v1/sweep", header: [2]string{"Origin", "null"}, want: 403},
		{name: "of our own page", method: http.MethodPost, path: "/api/v1/sweep", header: [2]string{"Origin", "http://127.0.0.1:8321"}, want: 415},
		{name: "of a program", method: http.MethodPost, path: "/api/v1/sweep", want: 415},
		{name: "link from another site", header: [2]string{"Sec-Fetch-Site", "cross-site"}, want: 200},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			h, err := NewHandler(Config{Assets: front(), API: service, BasePath: tt.base, Hosts: []string{"toe.example", "192.0.2.7"}})
			if err != nil {
				t.Fatal(err)
			}
			r := httptest.NewRequest(tt.method, "http://127.0.0.1:8321/"+strings.TrimPrefix(tt.path, "/"), nil)
			switch tt.host {
			case "":
			case nameless:
				r.Host = ""
			default:
				r.Host = tt.host
			}
			r.Header.Set(tt.header[0], tt.header[1])
			w := httptest.NewRecorder()
			h.ServeHTTP(w, r)
			body := w.Body.String()
			if w.Code != tt.want {
				t.Errorf("status %d, want %d: %s", w.Code, tt.want, body)
			}
			if tt.want >= 400 && (!strings.HasPrefix(body, `{"error":{"key":"`) || strings.Contains(body, "\n")) {
				t.Errorf("refused by %q, want one line that names the header", body)
			}
		})
	}
}

// TestMetricsAreOfThisMachine: they are told to who asks from here by a name of the
// loopback, and to nobody through a proxy.
func TestMetricsAreOfThisMachine(t *testing.T) {
	h := newTestHandler(t, Config{Assets: front(), Metrics: api.New(api.Config{}).Metrics})
	tests := []struct {
		name, from, host, header string
		want                     int
	}{
		{"from here", "127.0.0.1:4000", "localhost:8321", "", 200},
		{"from here, sixth version", "[::1]:4000", "[::1]:8321", "", 200},
		{"from elsewhere", "192.0.2.7:4000", "localhost:8321", "", 404},
		{"by a public name", "127.0.0.1:4000", "example.com", "", 404},
		{"through a proxy", "127.0.0.1:4000", "localhost:8321", "X-Forwarded-For", 404},
		{"through a proxy of the standard", "127.0.0.1:4000", "localhost:8321", "Forwarded", 404},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := httptest.NewRequest(http.MethodGet, "http://"+tt.host+"/metrics", nil)
			r.RemoteAddr = tt.from
			if tt.header != "" {
				r.Header.Set(tt.header, "for=192.0.2.7")
			}
			w := httptest.NewRecorder()
			h.ServeHTTP(w, r)
			if w.Code != tt.want || (w.Code == 200) != strings.Contains(w.Body.String(), "toewright_goroutines") {
				t.Errorf("status %d, want %d: %.80s", w.Code, tt.want, w.Body)
			}
		})
	}
}

// TestCleanBasePath: a path is taken as it will stand in addresses, or refused.
func TestCleanBasePath(t *testing.T) {
	for path, want := range map[string]string{"": "", "/": "", "/toe": "/toe", "/toe/": "/toe", "/tools/toe-2_x.y~": "/tools/toe-2_x.y~", "/api": "/api"} {
		if got, err := CleanBasePath(path); err != nil || got != want {
			t.Errorf("CleanBasePath(%q) = %q, %v, want %q", path, got, err, want)
		}
	}
	for _, path := range []string{"toe", "/a b", "/toe/../x", "//evil", "//", "/toe//", "/.", "/{x}", "/{$}", "/GET /x", "/ü", "/a%20b", "/a\nb", "https://evil.example/", `/\evil`} {
		if got, err := CleanBasePath(path); err == nil {
			t.Errorf("CleanBasePath(%q) = %q, want an error", path, got)
		}
		if _, err := NewHandler(Config{Assets: front(), BasePath: path}); err == nil {
			t.Errorf("NewHandler takes the base path %q", path)
		}
	}
}

func TestCleanHost(t *testing.T) {
	for name, want := range map[string]string{"toe.example": "toe.example", "TOE.example.": "toe.example", "192.0.2.7": "192.0.2.7", "[2001:db8::1]": "2001:db8::1", "2001:db8::1": "2001:db8::1"} {
		if got, err := CleanHost(name); err != nil || got != want {
			t.Errorf("CleanHost(%q) = %q, %v, want %q", name, got, err, want)
		}
	}
	for _, name := range []string{"", "toe.example:8321", "[::1]:80", "http://toe.example", "toe example", "*", "*.example", "toe/"} {
		if got, err := CleanHost(name); err == nil {
			t.Errorf("CleanHost(%q) = %q, want an error", name, got)
		}
	}
}
