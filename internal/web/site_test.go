package web

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

// siteIn writes a site of a few bytes to a folder and returns what is in it, by path.
func siteIn(t *testing.T, folder string) map[string]string {
	t.Helper()
	if err := WriteSite(folder, front()); err != nil {
		t.Fatal(err)
	}
	files := map[string]string{}
	err := filepath.WalkDir(folder, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		name, _ := filepath.Rel(folder, path)
		files[filepath.ToSlash(name)] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func TestSiteIsWhole(t *testing.T) {
	files := siteIn(t, filepath.Join(t.TempDir(), "new", "folder"))
	for name, want := range map[string]string{
		"index.html":           "<body>",
		"app.js":               "toewright.arrival(showProgress)",
		"web/page.css":         "style",
		"app-worker.js":        `"./"`,
		"wasm_exec.js":         "Go",
		"manifest.webmanifest": "{}",
		"web/app.wasm":         "program",
		"web/app.wasm.br":      "brotli",
		"web/app.wasm.gz":      "gzip",
		"web/worker.js":        "worker",
		"index.html.gz":        "\x1f\x8b",
	} {
		if !strings.Contains(files[name], want) {
			t.Errorf("%s = %.80q, want it to hold %q", name, files[name], want)
		}
	}
}

// absolute finds a path from the host's root where a file is named.
var absolute = regexp.MustCompile(`(src|href)="/|register\(\s*"/`)

func TestSiteNamesNothingFromTheRoot(t *testing.T) {
	for name, text := range siteIn(t, t.TempDir()) {
		if at := absolute.FindString(text); at != "" {
			t.Errorf("%s holds %s, which works at the root of a host only", name, at)
		}
	}
}

func TestSiteStatesItsPolicy(t *testing.T) {
	page := siteIn(t, t.TempDir())["index.html"]
	for _, want := range []string{
		`<meta http-equiv="Content-Security-Policy" content="default-src &#39;none&#39;; script-src &#39;self&#39;`,
		`<meta name="referrer" content="no-referrer">`,
	} {
		if !strings.Contains(page, want) {
			t.Errorf("the document does not hold %s", want)
		}
	}
	if strings.Contains(page, "frame-ancestors") {
		t.Error("the document states frame-ancestors, which browsers refuse in a document")
	}
}

func TestSiteLeavesOtherFiles(t *testing.T) {
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "CNAME"), []byte("host"), 0o644); err != nil {
		t.Fatal(err)
	}
	siteIn(t, folder)
	if files := siteIn(t, folder); files["CNAME"] != "host" {
		t.Errorf("CNAME = %q after writing twice, want it as it was", files["CNAME"])
	}
}

func TestSiteOfNothing(t *testing.T) {
	err := WriteSite(t.TempDir(), fstest.MapFS{".gitignore": {}})
	if err == nil || !strings.Contains(err.Error(), "make build") {
		t.Errorf("WriteSite without a front end = %v, want what to run", err)
	}
}

func TestSiteInAPlaceThatIsAFile(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := WriteSite(file, front()); err == nil || !strings.Contains(err.Error(), file) {
		t.Errorf("WriteSite into a file = %v, want an error that names it", err)
	}
}
