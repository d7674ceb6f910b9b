package engine

import (
	"math"
	"testing"

	"toewright/internal/study"
	"toewright/solver"
)

// whyStudy is the document of a template without its candidates but one, with changes.
func whyStudy(key string, changes study.Changes) *study.Document {
	d := study.Template{Key: key}.Document()
	d.Candidates = []study.Candidate{{Name: "car", Changes: changes}}
	return d
}

// causeOf returns the cause of a shape.
func causeOf(t *testing.T, s *WhySide, shape string) *Cause {
	t.Helper()
	for i := range s.Causes {
		if s.Causes[i].Shape == shape {
			return &s.Causes[i]
		}
	}
	t.Fatalf("no cause of shape %s among %+v", shape, s.Causes)
	return nil
}

// TestWhyIsTheSolversDiagnosis: shares and moves of a car without set-ups are those that the
// solver finds by Newton's method with exact derivatives.
func TestWhyIsTheSolversDiagnosis(t *testing.T) {
	for _, key := range []string{"double-wishbone-rack", "strut-rack", "double-wishbone-rear", "solid-axle-pitman"} {
		d := whyStudy(key, nil)
		got, err := Why(t.Context(), d, WhyOptions{})
		if err != nil {
			t.Fatal(err)
		}
		want, err := Diagnose(t.Context(), d, DiagnoseOptions{Candidate: study.BaseName})
		if err != nil {
			t.Fatal(err)
		}
		if len(got.Sides) != 1 || got.Sides[0].Side != "both" || len(got.Sides[0].SetUps) != 1 {
			t.Fatalf("%s: %+v, want both wheels at once, in one set-up", key, got.Sides)
		}
		slope := causeOf(t, &got.Sides[0], SlopeShape)
		design, _ := d.Design()
		height, _ := solver.MendingParts(design)
		wanted := 0.0
		for _, value := range want.Cars[0].Remedies[0].Changes {
			wanted = value
		}
		slack := 0.02 // mm
		if key == "solid-axle-pitman" {
			slack = 1 // the worse of both wheels is judged here, the left one there
		}
		if slope.Moves[0].Parameter != height || math.Abs(float64(slope.Moves[0].Exact)-wanted) > slack {
			t.Errorf("%s: move %+v, want %s by %g", key, slope.Moves[0], height, wanted)
		}
		if math.Abs(float64(slope.Share-want.Cars[0].SlopeShare)) > 1e-6 && math.Abs(float64(slope.Share-want.Cars[1].SlopeShare)) > 1e-6 {
			t.Errorf("%s: slope is %g of the mean square, want %g", key, slope.Share, want.Cars[0].SlopeShare)
		}
	}
}

// served returns the score and peaks of a car with changes, by the call that says how cars
// serve their set-ups.
func served(t *testing.T, d *study.Document, changes study.Changes) (score float64, peaks []Number) {
	t.Helper()
	next := *d
	next.Candidates = []study.Candidate{{Name: "car", Changes: changes}}
	r, err := SetUps(t.Context(), &next, SetUpsOptions{Candidate: "car"})
	if err != nil {
		t.Fatal(err)
	}
	for i := range r.Scenarios {
		peaks = append(peaks, r.Scenarios[i].Peak)
	}
	return float64(r.Score), peaks
}

// TestWhyServesAllSetUps: the move is the best for all set-ups together, whatever figure is
// made small, and its peaks are those of the car that it makes.
func TestWhyServesAllSetUps(t *testing.T) {
	for _, tt := range []struct{ minimise, combine string }{{"rms", ""}, {"rms", "worst"}, {"peak", ""}, {"peak", "worst"}} {
		d := whyStudy("double-wishbone-centre-link", study.Changes{"tieRodInnerHeight": 0.1})
		d.Search.Minimise, d.Search.Combine = tt.minimise, tt.combine
		got, err := Why(t.Context(), d, WhyOptions{Candidate: "car"})
		if err != nil {
			t.Fatal(err)
		}
		for _, shape := range []string{SlopeShape, CurvatureShape} {
			c := causeOf(t, &got.Sides[0], shape)
			score, peaks := served(t, d, c.Changes)
			for i := range peaks {
				if math.Abs(float64(peaks[i]-c.Peaks[i])) > 1e-9 {
					t.Errorf("%+v, %s: peak of set-up %d is %v, the car that it makes has %v", tt, shape, i, c.Peaks[i], peaks[i])
				}
			}
			for _, m := range c.Moves {
				for _, by := range []float64{-0.01, 0.01} { // in
					aside := study.Changes{}
					for key, value := range c.Changes {
						aside[key] = value
					}
					aside[m.Parameter] += by
					if worse, _ := served(t, d, aside); worse < score-1e-5 {
						t.Errorf("%+v, %s: %s by %g more gives %g, better than %g", tt, shape, m.Parameter, by, worse, score)
					}
				}
			}
		}
	}
}

// TestWhySaysWhereSetUpsPullApart: at the best height for all, each set-up wants another:
// no move is made of it.
func TestWhySaysWhereSetUpsPullApart(t *testing.T) {
	d := whyStudy("double-wishbone-centre-link", nil)
	first, err := Why(t.Context(), d, WhyOptions{Candidate: "car"})
	if err != nil {
		t.Fatal(err)
	}
	best := causeOf(t, &first.Sides[0], SlopeShape)
	if len(best.Wants) > 0 || best.Changes == nil {
		t.Fatalf("%+v, want a move of a car on which all set-ups want the ball lower", best)
	}
	d.Candidates[0].Changes = best.Changes
	got, err := Why(t.Context(), d, WhyOptions{Candidate: "car"})
	if err != nil {
		t.Fatal(err)
	}
	c := causeOf(t, &got.Sides[0], SlopeShape)
	if len(c.Wants) != 3 || !(c.Wants[0] < 0 && c.Wants[2] > 0) || c.Changes != nil || len(c.Moves) > 0 {
		t.Errorf("%+v, want the first set-up to want the ball lower, the last higher, and no move", c)
	}
}

// TestWhyOfUnlikeSides: each side is explained by itself, and a move of one leaves the other
// as it is.
func TestWhyOfUnlikeSides(t *testing.T) {
	d := whyStudy("double-wishbone-rack", study.Changes{"tieRodOuterHeight@left": -6, "tieRodOuterHeight@right": -9})
	got, err := Why(t.Context(), d, WhyOptions{Candidate: "car", Step: 1})
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Sides) != 2 {
		t.Fatalf("%d sides, want two", len(got.Sides))
	}
	for i, want := range []study.Changes{
		{"tieRodOuterHeight@left": -12, "tieRodOuterHeight@right": -9},
		{"tieRodOuterHeight@left": -6, "tieRodOuterHeight@right": -12},
	} {
		c := causeOf(t, &got.Sides[i], SlopeShape).Changes
		if len(c) != 2 {
			t.Fatalf("%s: changes %v, want %v", got.Sides[i].Side, c, want)
		}
		for key, value := range want {
			if math.Abs(c[key]-value) > 1e-9 {
				t.Errorf("%s: %s by %g, want %g", got.Sides[i].Side, key, c[key], value)
			}
		}
	}
}

// TestWhySplitsAPlainChange: a car whose sides differ otherwise keeps its plain change on the
// side that is not moved.
func TestWhySplitsAPlainChange(t *testing.T) {
	d := whyStudy("double-wishbone-rack", study.Changes{"tieRodOuterHeight": -4, "tieRodInnerHeight@left": 3})
	got, err := Why(t.Context(), d, WhyOptions{Candidate: "car", Step: 1})
	if err != nil {
		t.Fatal(err)
	}
	c := causeOf(t, &got.Sides[0], SlopeShape).Changes
	if _, plain := c["tieRodOuterHeight"]; plain || c["tieRodOuterHeight@right"] != -4 || !(c["tieRodOuterHeight@left"] < -4) {
		t.Errorf("changes %v, want the left ball lower than -4 and the right one at -4", c)
	}
}

// TestWhyRoundsToWholeSpacers: totals are whole steps where such a step keeps the limit, and
// the move stays exact, and says so, where none does.
func TestWhyRoundsToWholeSpacers(t *testing.T) {
	for _, tt := range []struct {
		step, limit float64
		outside     bool
	}{{1, 0.1, false}, {1, 0.05, false}, {5, 0.05, true}, {5, 0, false}} {
		d := whyStudy("double-wishbone-rack", study.Changes{"tieRodOuterHeight": -1.5})
		got, err := Why(t.Context(), d, WhyOptions{Candidate: "car", Step: tt.step, Limit: tt.limit})
		if err != nil {
			t.Fatal(err)
		}
		m := causeOf(t, &got.Sides[0], SlopeShape).Moves[0]
		whole := math.Abs(math.Remainder(float64(m.Total), tt.step)) < 1e-9
		if m.Outside != tt.outside || whole == tt.outside || math.Abs(-1.5+float64(m.Made-m.Total)) > 1e-9 {
			t.Errorf("%+v: %+v, want whole steps unless they lie outside", tt, m)
		}
		if tt.limit > 0 && (m.Made < m.Low || m.Made > m.High) {
			t.Errorf("%+v: made %g does not lie between %g and %g", tt, m.Made, m.Low, m.High)
		}
		if tt.limit > 0 {
			checkBound(t, d, float64(m.Total-m.Made+m.High), tt.limit)
		}
	}
}

// checkBound holds that a car whose balls stand at the end of what keeps a limit just does.
func checkBound(t *testing.T, d *study.Document, height, limit float64) {
	t.Helper()
	d.Search.Scenarios = []study.Scenario{{Name: "as it stands"}}
	if _, peaks := served(t, d, study.Changes{"tieRodOuterHeight": height}); math.Abs(float64(peaks[0])-limit) > limit/50 {
		t.Errorf("at the end of what keeps %g deg, %g mm, the peak is %v", limit, height, peaks[0])
	}
}
