package web

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// front is a front end of a few bytes, the program in all encodings.
func front() fstest.MapFS {
	files := fstest.MapFS{".gitignore": {Data: []byte("*")}}
	for name, data := range map[string]string{
		"app.wasm": "program", "app.wasm.br": "brotli", "app.wasm.gz": "gzip",
		"boot.js": "boot", "worker.js": "worker", "page.css": "style",
		"icon-192.png": "icon", "icon-512.png": "icon", "icon.svg": "icon", "manifest.webmanifest": "{}",
	} {
		files[name] = &fstest.MapFile{Data: []byte(data)}
	}
	return files
}

func newTestHandler(t *testing.T, cfg Config) http.Handler {
	t.Helper()
	cfg.Hosts = append(cfg.Hosts, "example.com") // as httptest has it
	h, err := NewHandler(cfg)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// get returns the answer to a GET with the given header fields, as key, value.
func get(h http.Handler, path string, header ...string) *http.Response {
	r := httptest.NewRequest(http.MethodGet, path, nil)
	for i := 0; i < len(header); i += 2 {
		r.Header.Set(header[i], header[i+1])
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

func bodyOf(t *testing.T, r *http.Response) string {
	t.Helper()
	b, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func TestHandlerServes(t *testing.T) {
	api := http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) { fmt.Fprint(w, "api ", r.URL.Path) })
	tests := []struct {
		name, base, path string
		want             int
		wantType         string
		wantBody         string // a part of it
	}{
		{name: "page", path: "/", want: 200, wantType: "text/html", wantBody: `src="web/boot.js?`},
		{name: "file", path: "/web/boot.js", want: 200, wantType: "text/javascript", wantBody: "boot"},
		{name: "program", path: "/web/app.wasm", want: 200, wantType: "application/wasm", wantBody: "program"},
		{name: "compressed form by name", path: "/web/app.wasm.br", want: 404},
		{name: "manifest", path: "/manifest.webmanifest", want: 200, wantType: "application/manifest+json", wantBody: "{}"},
		{name: "service worker", path: "/app-worker.js", want: 200, wantType: "text/javascript", wantBody: `"web/worker.js?`},
		{name: "size of the program", path: "/app.js", want: 200, wantType: "text/javascript", wantBody: `ContentLength = "7"`},
		{name: "placeholder of the folder", path: "/web/.gitignore", want: 404},
		{name: "no such file", path: "/web/none.js", want: 404},
		{name: "no such page", path: "/none", want: 404},
		{name: "what go-app would fetch elsewhere", path: "/robots.txt", want: 404},
		{name: "calls", path: "/api/v1/sweep", want: 200, wantBody: "api /api/v1/sweep"},
		{name: "health", path: "/healthz", want: 200, wantBody: "api /healthz"},
		{name: "page below a path", base: "/toe/", path: "/toe/", want: 200, wantType: "text/html", wantBody: `src="web/boot.js?`},
		{name: "path without its slash", base: "/toe", path: "/toe", want: 301},
		{name: "calls below a path", base: "/toe", path: "/toe/api/v1/sweep", want: 200, wantBody: "api /api/v1/sweep"},
		{name: "outside of the path", base: "/toe", path: "/", want: 404},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			h := newTestHandler(t, Config{Assets: front(), BasePath: tt.base, API: api})
			r := get(h, tt.path)
			if r.StatusCode != tt.want {
				t.Fatalf("GET %s: status %d, want %d", tt.path, r.StatusCode, tt.want)
			}
			if got := r.Header.Get("Content-Type"); !strings.HasPrefix(got, tt.wantType) {
				t.Errorf("GET %s: type %q, want %q", tt.path, got, tt.wantType)
			}
			if got := bodyOf(t, r); !strings.Contains(got, tt.wantBody) {
				t.Errorf("GET %s = %q, want it to hold %q", tt.path, got, tt.wantBody)
			}
			for key, want := range securityHeaders {
				if got := r.Header.Get(key); got != want {
					t.Errorf("GET %s: %s = %q, want %q", tt.path, key, got, want)
				}
			}
		})
	}
}

func TestHandlerWithoutFrontEnd(t *testing.T) {
	h := newTestHandler(t, Config{Assets: fstest.MapFS{".gitignore": {}}, API: http.NotFoundHandler()})
	r := get(h, "/")
	if body := bodyOf(t, r); r.StatusCode != http.StatusServiceUnavailable || !strings.Contains(body, "make run") {
		t.Errorf("GET / = %d %q, want 503 and what to run", r.StatusCode, body)
	}
}

func TestHandlerRefusesACompressedFormAlone(t *testing.T) {
	_, err := NewHandler(Config{Assets: fstest.MapFS{"app.wasm.br": {}}})
	if err == nil || !strings.Contains(err.Error(), "app.wasm") {
		t.Errorf("NewHandler error = %v, want one that names app.wasm", err)
	}
}

func TestPageNeedsNothingInline(t *testing.T) {
	page := bodyOf(t, get(newTestHandler(t, Config{Assets: front()}), "/"))
	for _, inline := range []string{"<script>", "<style", " style=", " onclick=", "https://unpkg", "githubusercontent"} {
		if strings.Contains(page, inline) {
			t.Errorf("the page holds %q, which its own policy forbids", inline)
		}
	}
}

// loads finds what the document asks for, in order.
var loads = regexp.MustCompile(`<(?:link rel="(preload|stylesheet)"|script( defer)?) (?:href|src)="([^"?]*)\?`)

func TestOrderOfTheDocument(t *testing.T) {
	page := bodyOf(t, get(newTestHandler(t, Config{Assets: front()}), "/"))
	var order []string
	for _, m := range loads.FindAllStringSubmatch(page, -1) {
		order = append(order, strings.TrimSpace(m[1]+m[2]+" "+m[3]))
	}
	want := []string{"preload web/app.wasm", "web/boot.js", "stylesheet web/page.css", "defer wasm_exec.js", "defer app.js"}
	if !slices.Equal(order, want) {
		t.Errorf("the document asks for %q, want %q", order, want)
	}
	if !strings.Contains(page, `>Toewright</h1>`) || !strings.Contains(page, `id="app-wasm-loader"`) {
		t.Errorf("the document holds no page, or not what go-app's script looks for:\n%s", page)
	}
	if m := regexp.MustCompile(`<option[^>]* selected[^>]*>[^<]*`).FindAllString(page, -1); len(m) == 0 || strings.Contains(strings.Join(m, ""), `"false"`) {
		t.Errorf("options are selected that are not: %q", m)
	}
	if strings.Contains(page, "Content-Security-Policy") {
		t.Error("the document states a policy, which a header has already")
	}
}

func TestGoAppsScriptIsEdited(t *testing.T) {
	script := bodyOf(t, get(newTestHandler(t, Config{Assets: front()}), "/app.js"))
	for _, e := range appEdits {
		if strings.Contains(script, e.theirs) || !strings.Contains(script, e.ours) {
			t.Errorf("%q is not in the place of %q", e.ours, e.theirs)
		}
	}
	_, err := edited([]byte("another script"))
	if err == nil || !strings.Contains(err.Error(), "/app.js holds") {
		t.Errorf("edited of another script: %v, want an error that says what it lacks", err)
	}
}

// keptFiles finds the list of what the service worker keeps.
var keptFiles = regexp.MustCompile(`const files = (\{[^}]*\});`)

func TestTheWholePageIsKept(t *testing.T) {
	h := newTestHandler(t, Config{Assets: front()})
	m := keptFiles.FindStringSubmatch(bodyOf(t, get(h, "/app-worker.js")))
	if m == nil {
		t.Fatal("the service worker has no list")
	}
	var kept map[string]string
	if err := json.Unmarshal([]byte(m[1]), &kept); err != nil {
		t.Fatal(err)
	}
	for path, digest := range kept {
		r := get(h, "/"+strings.TrimPrefix(path, "./"))
		sum := fmt.Sprintf("%x", sha256.Sum256([]byte(bodyOf(t, r))))
		if r.StatusCode != http.StatusOK || !strings.HasPrefix(sum, digest) || len(digest) != 16 {
			t.Errorf("%s = %d of SHA-256 %s, listed as %s: nothing at all would be kept", path, r.StatusCode, sum, digest)
		}
	}
	page := bodyOf(t, get(h, "/"))
	for _, m := range regexp.MustCompile(`(?:href|src|data-(?:program|worker|glue))="([^"]*)"`).FindAllStringSubmatch(page, -1) {
		if kept[m[1]] == "" {
			t.Errorf("the document needs %s, which is not kept", m[1])
		}
	}
}

// TestOneVersionIsOneSet builds the page twice, and of other files: the name of the set and
// the script that keeps it change with each file and with nothing else.
func TestOneVersionIsOneSet(t *testing.T) {
	worker := func(files fstest.MapFS) string {
		return bodyOf(t, get(newTestHandler(t, Config{Assets: files}), "/app-worker.js"))
	}
	first := worker(front())
	for range 5 { // go-app writes attributes in any order
		if worker(front()) != first {
			t.Fatal("the same files make another set the second time: each start of a server would be a new version")
		}
	}
	setName := regexp.MustCompile(`const setName = prefix \+ "([0-9a-f]{16})"`)
	for name := range front() {
		if strings.HasPrefix(name, ".") || strings.HasSuffix(name, ".br") || strings.HasSuffix(name, ".gz") {
			continue
		}
		files := front()
		files[name] = &fstest.MapFile{Data: []byte(`{"other": true}`)}
		was, is := setName.FindStringSubmatch(first), setName.FindStringSubmatch(worker(files))
		if was == nil || is == nil || was[1] == is[1] {
			t.Errorf("with another %s the set is called %q, was %q", name, is, was)
		}
	}
}
