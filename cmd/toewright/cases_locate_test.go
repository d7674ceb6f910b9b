package main

import (
	"bytes"
	"math"
	"strings"
	"testing"
)

// locateTolerance is how far a location may be from that of the independent least squares
// of testdata/cases, in standard deviations, and a standard deviation as a share: both
// solve the same equations, and stop within less of their solution.
const locateTolerance = 1e-4

// locatedCase is a place with its standard deviations, of an answer or of a case.
type locatedCase struct {
	Value, Ours, True [3]float64
	SD                [3]float64
	Settled           bool
}

// toeCase is a toe change likewise.
type toeCase struct{ Value, Ours, True, SD float64 }

// locateAnswer is what the command prints.
type locateAnswer struct {
	Points, Marks    map[string]locatedCase
	Toe              map[string]map[string]toeCase
	DegreesOfFreedom int
	Outliers         []struct {
		Measure, Of     string
		Value, Expected float64
	}
}

// TestCasesByLocate holds simulated jobs of tape, level and plumb line against an
// independent least squares (testdata/cases, tp*) and against the car that was taped.
func TestCasesByLocate(t *testing.T) { eachFile(t, called("tp"), checkLocateCase) }

// locateCase is a case of testdata/cases.
type locateCase struct {
	Expected struct {
		Points, Marks map[string]locatedCase
		Toe           map[string]map[string]toeCase
		Slip          *struct {
			From, To     string
			Value, Right float64
		}
	}
}

func checkLocateCase(t *testing.T, c *locateCase, file string) {
	var got locateAnswer
	ask(t, &got, "locate", file)
	if len(got.Points) != len(c.Expected.Points) {
		t.Errorf("%d points, want %d", len(got.Points), len(c.Expected.Points))
	}
	for name, want := range c.Expected.Points {
		sameLocation(t, name, got.Points[name], want)
		if got.Points[name].Settled != want.Settled {
			t.Errorf("%s: settled is %t, want %t", name, got.Points[name].Settled, want.Settled)
		}
	}
	for name, want := range c.Expected.Marks {
		sameLocation(t, "mark "+name, got.Marks[name], want)
	}
	for side, ends := range c.Expected.Toe {
		for end, want := range ends {
			g := got.Toe[side][end]
			if !(math.Abs(g.Value-want.Ours) <= locateTolerance*want.SD) || !(math.Abs(g.SD/want.SD-1) <= locateTolerance) {
				t.Errorf("%s %s: toe %.6f with sd %.6f, want %.6f with %.6f deg", side, end, g.Value, g.SD, want.Ours, want.SD)
			}
			if off := math.Abs(g.Value - want.True); !(off <= 4*g.SD) {
				t.Errorf("%s %s: toe is off the true car's by %.3f deg, its sd %.3f", side, end, off, g.SD)
			}
		}
	}
	slip := c.Expected.Slip
	switch {
	case slip == nil && len(got.Outliers) > 0:
		t.Errorf("sound measures were left out: %+v", got.Outliers)
	case slip == nil:
	case len(got.Outliers) != 1 || got.Outliers[0].Value != slip.Value || math.Abs(got.Outliers[0].Expected-slip.Right) > 2 ||
		!strings.Contains(got.Outliers[0].Of, slip.From) || !strings.Contains(got.Outliers[0].Of, slip.To):
		t.Errorf("outliers %+v, want the slip %+v", got.Outliers, slip)
	}
	checkApplied(t, file, &got)
}

// sameLocation compares a place with that of a case.
func sameLocation(t *testing.T, name string, got, want locatedCase) {
	t.Helper()
	for k := range got.Value {
		if !(math.Abs(got.Value[k]-want.Ours[k]) <= locateTolerance*want.SD[k]) || !(math.Abs(got.SD[k]/want.SD[k]-1) <= locateTolerance) {
			t.Errorf("%s: %v with sd %v, want %v with %v", name, got.Value, got.SD, want.Ours, want.SD)
			return
		}
	}
}

// checkApplied sweeps the study with its points located: its toe is that of the location.
func checkApplied(t *testing.T, file string, l *locateAnswer) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	if code := run([]string{"locate", file, "--apply"}, strings.NewReader(""), &stdout, &stderr); code != exitDone {
		t.Fatalf("locate --apply: exit %d, %s", code, stderr.String())
	}
	out := stdout.String()
	var swept struct {
		Sweeps []struct {
			Side      string
			Positions []struct{ Travel, Toe float64 }
		}
	}
	located := writeFile(t, []byte(out))
	ask(t, &swept, "sweep", located)
	for _, s := range swept.Sweeps {
		at := map[float64]float64{}
		for _, p := range s.Positions {
			at[p.Travel] = p.Toe
		}
		last := s.Positions[len(s.Positions)-1]
		if want, ok := l.Toe[s.Side]; ok && !(math.Abs(last.Toe-at[0]-want["bump"].Value) <= 1e-9) {
			t.Errorf("%s: the located car's toe changes by %.9f deg at full bump, want %.9f", s.Side, last.Toe-at[0], want["bump"].Value)
		}
	}
	if !strings.Contains(out, `"tape"`) {
		t.Error("the study does not say that its points were taped")
	}
}
