package browsertest

import (
	"net/http"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"toewright/internal/web"
)

// plainHost serves the files of a site under a path as any host may, with no header
// of ours.
func plainHost(t *testing.T, path string) http.Handler {
	t.Helper()
	folder := t.TempDir()
	if err := web.WriteSite(folder, nil); err != nil {
		t.Fatal(err)
	}
	return http.StripPrefix(path, http.FileServer(http.Dir(folder)))
}

// untyped makes a host say of the program only that it is bytes.
func untyped(host http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if strings.HasSuffix(r.URL.Path, ".wasm") {
			w.Header().Set("Content-Type", "application/octet-stream")
		}
		host.ServeHTTP(w, r)
	})
}

func TestSiteOnAPlainHost(t *testing.T) {
	plain := func(host http.Handler) http.Handler { return host }
	tests := []struct {
		name, path string
		host       func(http.Handler) http.Handler
	}{
		{"at its root", "", plain},
		{"under a path with a space", "/my tools/toe", plain},
		{"that does not know the program's type", "/toe", untyped},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			page := Open(t, Options{
				Web:     web.Config{BasePath: tt.path},
				Handler: tt.host(plainHost(t, tt.path)),
			})
			page.WaitText("#solver", "ready")
			page.WaitOfflineReady()
			page.Offline()
			page.Reload()
			page.WaitText("#solver", "ready")
			page.Do(chromedp.Navigate(page.Origin() + tt.path + "/index.html?from=home"))
			page.WaitRunning()
			page.WaitText("#solver", "ready")
		})
	}
}
