package report

import (
	"flag"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"toewright/internal/study"
)

var update = flag.Bool("update", false, "rewrite the pages in testdata")

// TestGolden compares whole pages with those in testdata, to be looked at in a browser
// and printed when they change. A file there without a test is an orphan and fails.
// Readings are left out: their bands, drawn by chance, change a digit with each change
// of the solver's last one.
func TestGolden(t *testing.T) {
	tests := []struct {
		name    string
		study   *study.Document
		options Options
	}{
		{"spacers", car(t, "double-wishbone-rack"), Options{Candidate: "Spacers 12 mm"}},
		{"two-sided", twoSided(t), Options{}},
		{"inches", inInches(t), Options{}},
		{"drag-link", car(t, "solid-axle-pitman"), Options{}},
		{"base", car(t, "multi-link-rear"), Options{Candidate: study.BaseName}},
	}
	var names []string
	for _, tt := range tests {
		names = append(names, filepath.Join("testdata", tt.name+".html"))
		t.Run(tt.name, func(t *testing.T) {
			tt.study.Readings = nil
			tt.options.Date, tt.options.Version = "1 March 2000", "v0"
			golden(t, tt.name, written(t, gathered(t, tt.study, tt.options)))
		})
	}
	files, err := filepath.Glob("testdata/*")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		if !slices.Contains(names, file) {
			t.Errorf("%s belongs to no test", file)
		}
	}
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name+".html")
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs; look at it in a browser and run go test -update", file)
	}
}
