package engine

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"toewright/internal/study"
)

// tapedAnswer is what an independent least squares says of a simulated job.
type tapedAnswer struct {
	Points, Marks    map[string]LocatedMark
	ChiSquare        float64
	DegreesOfFreedom int
	Slips            []string
	Toe              map[string]LocatedToe
}

// How well two least squares agree, in mm, in a share of a standard deviation, and in
// degrees: what scipy leaves of its convergence and its differences.
const (
	tapedPlace, tapedShare, tapedToe = 1e-4, 1e-5, 1e-5
)

// TestLocateAsScipyDoes holds simulated jobs of every kind of suspension, in mm and inches, with
// slips and without, against tools/tapes/tapes.py: scipy's least squares with the slips left out
// by who made them, and toe by a knuckle of its own. Of the solid axle it has no toe.
func TestLocateAsScipyDoes(t *testing.T) {
	files, err := filepath.Glob("../../testdata/taped/*.json")
	if err != nil || len(files) < 5 {
		t.Fatalf("%d jobs, %v", len(files), err)
	}
	toes := 0
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			d, want := tapedJob(t, file)
			got, err := Locate(t.Context(), d, LocateOptions{})
			if err != nil {
				t.Fatal(err)
			}
			var named []string
			for _, o := range got.Outliers {
				named = append(named, o.Measure)
			}
			slices.Sort(named)
			if !slices.Equal(named, want.Slips) || got.DegreesOfFreedom != want.DegreesOfFreedom || !(math.Abs(got.ChiSquare-want.ChiSquare) <= 1e-4) {
				t.Errorf("slips %v, chi-square %.5f of %d, want %v, %.5f of %d", named, got.ChiSquare, got.DegreesOfFreedom, want.Slips, want.ChiSquare, want.DegreesOfFreedom)
			}
			if len(got.Points) != len(want.Points) || len(want.Marks) > 0 && len(got.Marks) != len(want.Marks) {
				t.Fatalf("%d points and %d marks, want %d and %d", len(got.Points), len(got.Marks), len(want.Points), len(want.Marks))
			}
			for name, w := range want.Points {
				samePlace(t, d, name, got.Points[name].LocatedMark, w)
			}
			for name, w := range want.Marks {
				samePlace(t, d, name, got.Marks[name], w)
			}
			for side, w := range want.Toe {
				toes++
				g := got.Toe[side]
				sameEnd(t, side+" bump", g.Bump, w.Bump)
				sameEnd(t, side+" droop", g.Droop, w.Droop)
			}
		})
	}
	if toes != 5 {
		t.Errorf("the toe of %d sides was looked at, want 5", toes)
	}
}

func tapedJob(t *testing.T, file string) (*study.Document, *tapedAnswer) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var c struct {
		Study    json.RawMessage
		Expected tapedAnswer
	}
	if err := json.Unmarshal(text, &c); err != nil {
		t.Fatal(err)
	}
	d, err := study.Decode(c.Study)
	if err != nil {
		t.Fatal(err)
	}
	return d, &c.Expected
}

func samePlace(t *testing.T, d *study.Document, name string, got, want LocatedMark) {
	t.Helper()
	for k := range want.Value {
		if off := d.Units.Millimetres(got.Value[k] - want.Value[k]); !(math.Abs(off) <= tapedPlace) || !(math.Abs(got.SD[k]-want.SD[k]) <= tapedShare*want.SD[k]) {
			t.Errorf("%s, coordinate %d: %.7f, standard deviation %.7f, want %.7f and %.7f", name, k, got.Value[k], got.SD[k], want.Value[k], want.SD[k])
		}
	}
}

func sameEnd(t *testing.T, what string, got, want ToeEnd) {
	t.Helper()
	if !(math.Abs(float64(got.Value-want.Value)) <= tapedToe) || !(math.Abs(float64(got.SD-want.SD)) <= tapedToe) {
		t.Errorf("%s: toe change %.7f, standard deviation %.7f deg, want %.7f and %.7f", what, got.Value, got.SD, want.Value, want.SD)
	}
}
