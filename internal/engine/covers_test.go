package engine

import (
	"math"
	"strings"
	"testing"

	"toewright/internal/study"
)

// coverStudies are every template with a part on, as the file has it, in inches, and with
// unlike sides where the suspension has sides.
func coverStudies(t *testing.T) map[string]*study.Document {
	t.Helper()
	out := map[string]*study.Document{}
	for _, template := range study.Templates() {
		d := template.Document()
		if d.Search != nil {
			d.Search.Target, d.Search.TargetRight = nil, nil
		}
		d.Candidates = []study.Candidate{{Name: "part", Changes: study.Changes{"tieRodOuterHeight": d.Units.FromMillimetres(4)}}}
		out[template.Key] = d
		if d.Suspension.Common == nil {
			unlike := d.Clone()
			right := unlike.Suspension.Left.Mirrored()
			at := right.Points["tieRodOuter"]
			at[2] += d.Units.FromMillimetres(2)
			right.Points["tieRodOuter"] = at
			unlike.Suspension.Right = &right
			out[template.Key+", unlike sides"] = unlike
		}
	}
	return out
}

// worseFigure is what compare, which knows nothing of intervals, has of the car with one
// more change: the larger of its wheels' figures; NaN where there is none.
func worseFigure(t *testing.T, d *study.Document, figure, key string, value float64) float64 {
	t.Helper()
	d = d.Clone()
	d.Search = nil // the window is the travel
	d.Candidates[0].Changes[key] = value
	r, err := Compare(t.Context(), d, CompareOptions{Candidate: "part"})
	if err != nil {
		return math.NaN()
	}
	worst := 0.0
	for i := range r.Cars {
		c := &r.Cars[i]
		if c.Candidate != "part" {
			continue
		}
		if c.Reach != nil {
			return math.NaN()
		}
		worst = math.Max(worst, float64(map[string]Number{"peak": c.Peak, "rms": c.RMS}[figure]))
	}
	return worst
}

// TestCoversHolds asks compare at both ends and between: within the interval the limit is
// held, just beyond it is not, whatever the suspension, the figure and the sides.
func TestCoversHolds(t *testing.T) {
	for name, d := range coverStudies(t) {
		for _, figure := range []string{"peak", "rms"} {
			if strings.Contains(name, "unlike") == (figure == "peak") {
				continue // unlike sides by rms, like ones by peak
			}
			t.Run(name+" "+figure, func(t *testing.T) {
				d := d.Clone()
				is := worseFigure(t, d, figure, "rideHeight", 0)
				limit := 1.5*is + 0.01
				r, err := Covers(t.Context(), d, CoversOptions{Candidate: "part", Limit: &limit, Figure: figure})
				if err != nil {
					t.Fatal(err)
				}
				if len(r.Covers) < 3 || math.Abs(float64(r.Is)-is) > 1e-9 {
					t.Fatalf("%d intervals about %v, want those of the set-up about %v", len(r.Covers), r.Is, is)
				}
				for _, c := range r.Covers {
					checkCover(t, d, figure, limit, &c)
				}
			})
		}
	}
}

func checkCover(t *testing.T, d *study.Document, figure string, limit float64, c *Cover) {
	t.Helper()
	const within, beyond = 1e-6, 1e-4 // of the parameter's unit
	low, high := float64(c.Low), float64(c.High)
	if !(low <= float64(c.Own) && float64(c.Own) <= high) {
		t.Fatalf("%s: %v to %v is not about %v (%s)", c.Parameter, low, high, c.Own, c.Problem)
	}
	for i := range 4 {
		x := low + within + (high-low-2*within)*float64(i)/3
		if f := worseFigure(t, d, figure, c.Parameter, x); !(f <= limit) {
			t.Errorf("%s = %v: %s %v, over the limit %v, within %v to %v", c.Parameter, x, figure, f, limit, low, high)
		}
	}
	for _, end := range []struct {
		x    float64
		kind string
	}{{low - beyond, c.LowEnd}, {high + beyond, c.HighEnd}} {
		f := worseFigure(t, d, figure, c.Parameter, end.x)
		switch {
		case end.kind == "limit" && !(f > limit), end.kind == "lock" && !math.IsNaN(f):
			t.Errorf("%s = %v: %s %v, want it beyond the %s %v", c.Parameter, end.x, figure, f, end.kind, limit)
		case end.kind == "":
			t.Errorf("%s: no end is named", c.Parameter)
		}
	}
}

// TestCoversRefuses names what is missing or wrong, and says why there is no interval.
func TestCoversRefuses(t *testing.T) {
	d := document(t, "")
	_, err := Covers(t.Context(), d, CoversOptions{})
	wantError(t, err, Wrong, "limit", "yield.limit")
	limit := -1.0
	_, err = Covers(t.Context(), d, CoversOptions{Limit: &limit})
	wantError(t, err, Wrong, "limit", "0 or more")
	limit = 0
	r, err := Covers(t.Context(), d, CoversOptions{Limit: &limit, By: "caster"})
	if err != nil || r.Covers[0].Low.Valid() || !strings.Contains(r.Covers[0].Problem, "more than the limit") {
		t.Errorf("%+v, %v; want no interval and why", r, err)
	}
	_, err = Covers(t.Context(), d, CoversOptions{Limit: &limit, By: "caster,caster"})
	wantError(t, err, Wrong, "by", "twice")
	_, err = Covers(t.Context(), d, CoversOptions{Limit: &limit, By: "castor"})
	wantError(t, err, Wrong, "by", "castor")
}

// TestCoversBySide: one side's own value gives way and the other's stays.
func TestCoversBySide(t *testing.T) {
	d := document(t, "")
	d.Candidates[0].Changes = study.Changes{"rideHeight": 3}
	limit := 0.4
	r, err := Covers(t.Context(), d, CoversOptions{Candidate: "low ball", Limit: &limit, By: "rideHeight@left, caster@right"})
	if err != nil || len(r.Covers) != 2 || float64(r.Covers[0].Own) != 3 {
		t.Fatalf("%+v, %v; want the left's own ride height 3 and the right's caster", r, err)
	}
	c := &r.Covers[0]
	d.Candidates[0] = study.Candidate{Name: "part", Changes: study.Changes{"rideHeight@right": 3}}
	if c.HighEnd == "limit" {
		checkCover(t, d, "peak", limit, c)
	}
}
