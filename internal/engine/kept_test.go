package engine

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"toewright/internal/study"
)

// keptTolerance is how far, in degrees, the toe of a kept study may be from what the first
// version said of it: the solver has better starts since and ends elsewhere within its
// own accuracy.
const keptTolerance = 1e-7

// TestKeptStudiesAreTheSameCars opens study files that the first version wrote, and moves
// their cars: the toe at both ends is what it was then.
func TestKeptStudiesAreTheSameCars(t *testing.T) {
	const folder = "../../testdata/kept"
	text, err := os.ReadFile(folder + "/figures.json")
	if err != nil {
		t.Fatal(err)
	}
	var figures map[string]map[string][2][2]float64
	if err := json.Unmarshal(text, &figures); err != nil {
		t.Fatal(err)
	}
	paths, err := filepath.Glob(folder + "/studies/*.json")
	if err != nil || len(paths) != len(figures) {
		t.Fatalf("%d studies, %v, want the %d that have figures", len(paths), err, len(figures))
	}
	for _, path := range paths {
		name := strings.TrimSuffix(filepath.Base(path), ".json")
		t.Run(name, func(t *testing.T) { checkKept(t, path, figures[name]) })
	}
}

// checkKept sweeps the study in a file and compares the ends of its curves.
func checkKept(t *testing.T, path string, figures map[string][2][2]float64) {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	d, err := study.Decode(text)
	if err != nil {
		t.Fatal(err)
	}
	swept, err := Sweep(t.Context(), d, SweepOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if len(swept.Sweeps) != 2*len(figures) {
		t.Fatalf("%d sweeps of %d cars, want two each", len(swept.Sweeps), len(figures))
	}
	for i, s := range swept.Sweeps {
		want := figures[s.Candidate][i%2]
		got := [2]float64{s.Positions[0].Toe, s.Positions[len(s.Positions)-1].Toe}
		if !(math.Abs(got[0]-want[0]) <= keptTolerance && math.Abs(got[1]-want[1]) <= keptTolerance) {
			t.Errorf("%s, %s: toe at the ends = %v, want %v", s.Candidate, s.Side, got, want)
		}
	}
}
