package main

import (
	"bytes"
	"compress/gzip"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/andybalholm/brotli"
)

// script is long and even enough to be worth compressing.
var script = strings.Repeat("let toe = 0;\n", 200)

// write puts files, as name and content, into a new folder and returns their paths.
func write(t *testing.T, files map[string]string) []string {
	t.Helper()
	folder := t.TempDir()
	var paths []string
	for name, content := range files {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
		paths = append(paths, path)
	}
	return paths
}

func list(t *testing.T, folder string) []string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

func TestFill(t *testing.T) {
	keep := map[string]string{".gitignore": "*"}
	tests := []struct {
		name   string
		before map[string]string
		files  map[string]string
		quick  bool
		want   []string
	}{
		{
			name:  "all forms",
			files: map[string]string{"a.js": script},
			want:  []string{".gitignore", "a.js", "a.js.br", "a.js.gz"},
		},
		{
			name:  "quick leaves Brotli out",
			files: map[string]string{"a.js": script}, quick: true,
			want: []string{".gitignore", "a.js", "a.js.gz"},
		},
		{
			name:  "packed files as they are",
			files: map[string]string{"a.png": script},
			want:  []string{".gitignore", "a.png"},
		},
		{
			name:   "others are removed",
			before: map[string]string{"old.js": "x", "old.js.br": "x"},
			files:  map[string]string{"a.png": script},
			want:   []string{".gitignore", "a.png"},
		},
		{
			name:   "quick keeps the Brotli form of the same content",
			before: map[string]string{"a.js": script, "a.js.br": "x", "a.js.gz": "x"},
			files:  map[string]string{"a.js": script}, quick: true,
			want: []string{".gitignore", "a.js", "a.js.br", "a.js.gz"},
		},
		{
			name:   "quick removes the Brotli form of other content",
			before: map[string]string{"a.js": "old", "a.js.br": "x", "a.js.gz": "x"},
			files:  map[string]string{"a.js": script}, quick: true,
			want: []string{".gitignore", "a.js", "a.js.gz"},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			out := filepath.Dir(write(t, keep)[0])
			for name, content := range tt.before {
				if err := os.WriteFile(filepath.Join(out, name), []byte(content), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			if err := fill(out, write(t, tt.files), tt.quick); err != nil {
				t.Fatal(err)
			}
			if got := list(t, out); !slices.Equal(got, tt.want) {
				t.Errorf("fill leaves %v, want %v", got, tt.want)
			}
		})
	}
}

func TestFillCompletesWhatQuickLeftOut(t *testing.T) {
	out, files := t.TempDir(), write(t, map[string]string{"a.js": script})
	for _, quick := range []bool{true, false} {
		if err := fill(out, files, quick); err != nil {
			t.Fatal(err)
		}
	}
	if got, want := list(t, out), []string{"a.js", "a.js.br", "a.js.gz"}; !slices.Equal(got, want) {
		t.Errorf("folder after quick and full = %v, want %v", got, want)
	}
}

func TestFillLeavesTheUnchangedAlone(t *testing.T) {
	out, files := t.TempDir(), write(t, map[string]string{"a.js": script})
	if err := fill(out, files, false); err != nil {
		t.Fatal(err)
	}
	long := time.Unix(1e9, 0)
	form := filepath.Join(out, "a.js.br")
	if err := os.Chtimes(form, long, long); err != nil {
		t.Fatal(err)
	}
	if err := fill(out, files, false); err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat(form)
	if err != nil || !info.ModTime().Equal(long) {
		t.Errorf("the Brotli form was written anew: %v, %v", info.ModTime(), err)
	}
}

func TestFillMissingFile(t *testing.T) {
	err := fill(t.TempDir(), []string{filepath.Join(t.TempDir(), "none.js")}, false)
	if err == nil || !strings.Contains(err.Error(), "none.js") {
		t.Errorf("fill error = %v, want one that names none.js", err)
	}
}

func TestFormsUnpackToTheFile(t *testing.T) {
	tests := []struct {
		form   form
		reader func(io.Reader) (io.Reader, error)
	}{
		{brotliForm, func(r io.Reader) (io.Reader, error) { return brotli.NewReader(r), nil }},
		{gzipForm, func(r io.Reader) (io.Reader, error) { return gzip.NewReader(r) }},
	}
	for _, tt := range tests {
		small, err := tt.form.compress([]byte(script))
		if err != nil {
			t.Fatal(err)
		}
		r, err := tt.reader(bytes.NewReader(small))
		if err != nil {
			t.Fatal(err)
		}
		if got, err := io.ReadAll(r); err != nil || string(got) != script || len(small) >= len(script) {
			t.Errorf("%s: %d bytes unpack to %d, %v, want the %d of the file from fewer",
				tt.form.suffix, len(small), len(got), err, len(script))
		}
	}
}
