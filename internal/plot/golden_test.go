package plot

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the pictures in testdata")

// TestGolden compares whole pictures with those in testdata, to be looked at in a
// browser when they change. A file there without a test is an orphan and fails.
func TestGolden(t *testing.T) {
	tests := []struct {
		name     string
		document Document
	}{
		{"chart", Document{"Toe through travel", "Five invented curves and readings.", White, chartScene()}},
		{"linkage", Document{"Front end", "An invented double wishbone.", Light, linkageScene()}},
		{"map", Document{"Valley", "An invented field of toe error.", Dark, mapScene()}},
		{"spread", Document{"Spread", "Invented contributors, yield, shelf and signs of all series.", White, spreadScene()}},
	}
	var names []string
	for _, tt := range tests {
		names = append(names, filepath.Join("testdata", tt.name+".svg"))
		t.Run(tt.name, func(t *testing.T) { golden(t, tt.name, tt.document.Append(nil)) })
	}
	files, err := filepath.Glob("testdata/*.svg")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		if !slices.Contains(names, file) {
			t.Errorf("%s belongs to no test", file)
		}
	}
}

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	file := filepath.Join("testdata", name+".svg")
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs from line %d on; look at it and run go test -update", file, firstDifference(got, want))
	}
}

// firstDifference returns the number of the first line that differs.
func firstDifference(a, b []byte) int {
	linesA, linesB := bytes.Split(a, []byte("\n")), bytes.Split(b, []byte("\n"))
	for i := range min(len(linesA), len(linesB)) {
		if !bytes.Equal(linesA[i], linesB[i]) {
			return i + 1
		}
	}
	return min(len(linesA), len(linesB)) + 1
}
