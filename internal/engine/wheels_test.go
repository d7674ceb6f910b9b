package engine

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"toewright/internal/study"
	"toewright/solver"
)

// twoWheeled visits each template with a short search, catalogue and series that ask
// for whatever judges cars, over a window whose ends are no multiple of its step.
func twoWheeled(t *testing.T, visit func(t *testing.T, d *study.Document)) {
	t.Helper()
	for _, tpl := range study.Templates() {
		t.Run(tpl.Key, func(t *testing.T) {
			d := tpl.Document()
			key := "tieRodOuterHeight"
			if solidAxle(d) {
				key = "dragLinkOuterHeight"
			}
			mm := d.Units.FromMillimetres
			d.Travel = &study.Travel{Bump: mm(37), Droop: mm(29), Step: mm(12)}
			d.Candidates, d.Readings, d.Advise = nil, nil, nil
			d.Search = &study.Search{
				Variables: []study.Variable{{Parameter: key, Min: mm(-25), Max: mm(25)}},
				Scenarios: []study.Scenario{{Name: "level"}, {Name: "leaning", Attitude: &study.Attitude{Roll: 2, Heave: mm(5)}, Weight: ptr(2.0)}},
			}
			d.Catalogue = []study.Part{
				{Slot: "a", Name: "low", Changes: study.Changes{key: mm(-7)}}, {Slot: "a", Name: "high", Changes: study.Changes{key: mm(6)}},
				{Slot: "b", Name: "ride", Changes: study.Changes{"rideHeight": mm(-15)}},
			}
			d.Tolerances = []study.Tolerance{{Parameter: key, PlusMinus: mm(2)}, {Parameter: "rideHeight", SD: mm(3), Varies: "car"}}
			d.Yield = &study.Yield{Limit: 0.4, Cars: 200}
			visit(t, d)
		})
	}
}

// solidAxle reports whether both wheels of a study are on one beam.
func solidAxle(d *study.Document) bool { return d.Suspension.Type == "solid-axle" }

func ptr[T any](x T) *T { return &x }

// writtenOut returns the study with its right side stated as the mirror image of the
// left; nil where it states it already.
func writtenOut(d *study.Document) *study.Document {
	if d.Suspension.Right != nil || solidAxle(d) {
		return nil
	}
	out := d.Clone()
	right := out.Suspension.Corner(study.Right)
	out.Suspension.Right = &right
	return out
}

// answers returns all that is answered of the cars of a study, as JSON, by one figure for
// each suspension.
func answers(t *testing.T, d *study.Document) map[string]string {
	t.Helper()
	ctx, out := context.Background(), map[string]string{}
	keep := func(name string, answer any, err error) {
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		text, err := json.Marshal(answer)
		if err != nil {
			t.Fatal(err)
		}
		out[name] = string(text)
	}
	figure := []string{"rms", "peak"}[len(d.Suspension.Type)%2]
	for _, side := range []string{"", "both", "left", "right"} {
		name := func(call string) string { return fmt.Sprintf("%s --figure %s --side %s", call, figure, side) }
		search, err := Search(ctx, d, SearchOptions{Minimise: figure, Side: side})
		keep(name("search"), search, err)
		shelf, err := Choose(ctx, d, ChooseOptions{Figure: figure, Side: side})
		keep(name("choose"), shelf, err)
		area, err := Map(ctx, d, MapOptions{Figure: figure, Side: side, X: d.Search.Variables[0].Parameter, Y: "rideHeight", Columns: new(4), Rows: new(3), Scenario: AllScenarios})
		keep(name("map"), area, err)
		series, err := Tolerance(ctx, d, ToleranceOptions{Figure: figure, Side: side})
		keep(name("tolerance"), series, err)
	}
	served, err := Compare(ctx, d, CompareOptions{})
	keep("compare", served, err)
	return out
}

// TestMirroredAsWrittenOut: a car whose right side is stated and the same car mirrored
// have the same answers, to the digit, and both wheels are judged where none is named.
func TestMirroredAsWrittenOut(t *testing.T) {
	twoWheeled(t, func(t *testing.T, d *study.Document) {
		got := answers(t, d)
		for name, text := range got {
			if both, ok := got[name+"both"]; ok && text != both {
				t.Errorf("%s: %s\nboth: %s", name, text, both)
			}
		}
		other := writtenOut(d)
		if other == nil {
			return
		}
		for name, text := range answers(t, other) {
			if got[name] != text {
				t.Errorf("%s\nmirrored:    %s\nwritten out: %s", name, got[name], text)
			}
		}
	})
}

// unlike returns the study with the right wheel's rod some millimetres off, so that it
// bumps steers more at one end and less at the other.
func unlike(t *testing.T, d *study.Document) *study.Document {
	t.Helper()
	if solidAxle(d) {
		return d // unlike already
	}
	out := writtenOut(d)
	if out == nil {
		out = d.Clone()
	}
	points := out.Suspension.Right.Points
	at := points["tieRodInner"]
	points["tieRodInner"] = study.Vec3{at[0] + out.Units.FromMillimetres(11), at[1], at[2] + out.Units.FromMillimetres(13)}
	return out
}

// worse counts again: the larger of both wheels' own figures of a car of a study, by
// sweeps of its own; NaN where it does not reach the window.
func worse(t *testing.T, d *study.Document, changes study.Changes, a Attitude, figure string) float64 {
	t.Helper()
	one := d.Clone()
	one.Search, one.Candidates = nil, []study.Candidate{{Name: "x", Changes: changes}}
	r, err := Sweep(context.Background(), one, SweepOptions{Candidate: "x", Attitude: a})
	if err != nil {
		return math.NaN()
	}
	top := 0.0
	for _, s := range r.Sweeps {
		home, peak, sum := math.NaN(), 0.0, 0.0
		for _, p := range s.Positions {
			if p.Travel == 0 {
				home = p.Toe
			}
		}
		for _, p := range s.Positions {
			peak, sum = math.Max(peak, math.Abs(p.Toe-home)), sum+(p.Toe-home)*(p.Toe-home)
		}
		if s.Reach != nil {
			return math.NaN()
		}
		if figure == "rms" {
			peak = math.Sqrt(sum / float64(len(s.Positions)))
		}
		top = math.Max(top, peak)
	}
	return top
}

// TestWorseWheelEverywhere counts again what each call says of a car whose wheels are
// unlike: the larger of both wheels' own figures.
func TestWorseWheelEverywhere(t *testing.T) {
	near := func(a Number, b float64) bool { return math.Abs(float64(a)-b) <= 1e-9 }
	twoWheeled(t, func(t *testing.T, mirrored *study.Document) {
		d, ctx := unlike(t, mirrored), context.Background()
		key := d.Search.Variables[0].Parameter
		leaning := Attitude{Roll: 2, Heave: d.Units.FromMillimetres(5)}
		for _, figure := range []string{"rms", "peak"} {
			shelf, err := Choose(ctx, d, ChooseOptions{Figure: figure})
			if err != nil {
				t.Fatal(err)
			}
			for _, k := range shelf.Best {
				if w := (ToeFigures{Number(worse(t, d, k.Changes, Attitude{}, "rms")), Number(worse(t, d, k.Changes, Attitude{}, "peak"))}); !near(k.RMS, float64(w.RMS)) || !near(k.Peak, float64(w.Peak)) {
					t.Errorf("choose %v: %v, counted again %v", k.Changes, k.ToeFigures, w)
				}
			}
			area, err := Map(ctx, d, MapOptions{Figure: figure, X: key, Y: "rideHeight", Columns: new(3), Rows: new(2)})
			if err != nil {
				t.Fatal(err)
			}
			for j, row := range area.Cells {
				for i, cell := range row {
					at := study.Changes{key: area.X.Values[i], "rideHeight": area.Y.Values[j]}
					if w := worse(t, d, at, Attitude{}, figure); cell.Valid() && !near(cell, w) || !cell.Valid() && !math.IsNaN(w) {
						t.Errorf("map at %v: %s %v, counted again %.12f", at, figure, cell, w)
					}
				}
			}
			found, err := Search(ctx, d, SearchOptions{Minimise: figure})
			if err != nil {
				t.Fatal(err)
			}
			score := func(x float64) float64 {
				level, lean := worse(t, d, study.Changes{key: x}, Attitude{}, figure), worse(t, d, study.Changes{key: x}, leaning, figure)
				if figure == "rms" {
					return math.Sqrt((level*level + 2*lean*lean) / 3)
				}
				return (level + 2*lean) / 3
			}
			best := found.Best.Values[key]
			if !near(found.Optima[0].Value, score(best)) {
				t.Errorf("search at %g: %s %v, counted again %.12f", best, figure, found.Optima[0].Value, score(best))
			}
			for i := -50.0; i <= 50; i++ {
				x := d.Units.FromMillimetres(i / 2)
				if s := score(x); s < score(best)*(1-1e-6)-1e-9 {
					t.Errorf("search says %s %.9f at %g, but %g has %.9f", figure, score(best), best, x, s)
				}
			}
		}
	})
}

// TestYieldCountsCars builds a series anew by sweeps of its own and compares the share
// of cars both of whose wheels pass, and the figure's percentiles, with what Tolerance
// says, within what chance does to both.
func TestYieldCountsCars(t *testing.T) {
	if testing.Short() {
		t.Skip("builds thousands of cars one by one")
	}
	d := document(t, `"tolerances": [{"parameter": "tieRodOuter.z", "sd": 2}, {"parameter": "tieRodInner.z", "sd": 1.5}], "yield": {"limit": 0.75},`)
	sd := map[string]float64{"tieRodOuter.z": 2, "tieRodInner.z": 1.5}
	for _, figure := range []string{"rms", "peak"} {
		nominal := worse(t, d, nil, Attitude{}, figure)
		limit := 1.05 * nominal
		r, err := Tolerance(context.Background(), d, ToleranceOptions{Limit: new(limit), Figure: figure, Cars: new(20000)})
		if err != nil {
			t.Fatal(err)
		}
		const cars = 2000
		rng, pass := rand.New(rand.NewPCG(3, cars)), 0
		for range cars {
			changes := study.Changes{}
			for key, s := range sd {
				for _, side := range solver.Sides {
					changes[key+"@"+side.String()] = s * rng.NormFloat64()
				}
			}
			if worse(t, d, changes, Attitude{}, figure) <= limit {
				pass++
			}
		}
		share := float64(pass) / cars
		if chance := 4 * math.Sqrt(share*(1-share)/cars); !(math.Abs(share-float64(r.Yield.Share)) <= chance) {
			t.Errorf("%s: %.4f of the cars pass, counted again %.4f, chance %.4f", figure, float64(r.Yield.Share), share, chance)
		}
		if !(math.Abs(float64(r.Figure.Nominal)-nominal) <= 1e-9) {
			t.Errorf("%s of the car as drawn %.9f, counted again %.9f", figure, float64(r.Figure.Nominal), nominal)
		}
	}
}

// TestYieldWhereCarsFail: in a window that some cars do not reach, those fail, and a
// percentile that falls among them is none, with the reason. Counted again as the cars
// whose larger figure is one.
func TestYieldWhereCarsFail(t *testing.T) {
	d := document(t, `"tolerances": [{"parameter": "tieRodOuter.z", "sd": 6}, {"parameter": "lowerBallJoint.z", "sd": 6}], "yield": {"limit": 90},`)
	d.Travel = &study.Travel{Bump: 0, Droop: 400, Step: 10}
	r, err := Sweep(context.Background(), d, SweepOptions{Candidate: study.BaseName})
	if err != nil {
		t.Fatal(err)
	}
	d.Travel.Droop = *r.Sweeps[0].Reach.Droop - 0.5
	got, err := Tolerance(context.Background(), d, ToleranceOptions{Cars: new(3000)})
	if err != nil {
		t.Fatal(err)
	}
	if !(got.Failed > 300 && got.Failed < 2900) || got.Yield.Share != Number(3000-got.Failed)/3000 {
		t.Fatalf("%d of 3000 cars fail, %v pass a limit that none breaks", got.Failed, got.Yield.Share)
	}
	f := got.Figure
	for share, at := range map[float64]Number{0.5: f.Median, 0.9: f.Percentile90, 0.95: f.Percentile95, 0.99: f.Percentile99} {
		if built := share*2999 <= float64(3000-got.Failed-1); at.Valid() != built {
			t.Errorf("%d of 3000 cars fail: the %g point is %v", got.Failed, share, at)
		}
	}
	if f.Percentile99.Valid() || f.Problem == "" {
		t.Errorf("the 99 %% point is %v, said of it %q", f.Percentile99, f.Problem)
	}
}

// TestLimitOfZero: a limit of 0 is one, which no car on the road passes, and the car as
// drawn does not either.
func TestLimitOfZero(t *testing.T) {
	r, err := Tolerance(context.Background(), document(t, toleranced), ToleranceOptions{Limit: new(0.0), Cars: new(50)})
	if err != nil {
		t.Fatal(err)
	}
	if y := r.Yield; y.Limit != 0 || y.Share != 0 || y.AsDrawn {
		t.Errorf("yield %+v, want none of a limit of 0", y)
	}
	r, err = Tolerance(context.Background(), document(t, toleranced), ToleranceOptions{Limit: new(float64(r.Figure.Nominal)), Cars: new(50)})
	if err != nil {
		t.Fatal(err)
	}
	if !r.Yield.AsDrawn {
		t.Errorf("the car as drawn does not pass a limit of its own figure: %+v", r.Yield)
	}
}

// TestChooseListsWhatIsAsked: more combinations than a hundred, where there are.
func TestChooseListsWhatIsAsked(t *testing.T) {
	d := document(t, shelfOf(2))
	for _, most := range []int{1, 150, 500} {
		r, err := Choose(context.Background(), d, ChooseOptions{Most: &most})
		if err != nil {
			t.Fatal(err)
		}
		if want := min(most, r.Built); len(r.Best) != want {
			t.Errorf("most %d: %d listed of %d built, want %d", most, len(r.Best), r.Built, want)
		}
	}
}

// TestRobustClaimHolds: what a robust search claims of most cars is true of
// others within 3 %, and its answer is never worse for them by over 1 % than the values
// best for the car as drawn, whatever the suspension, sides, share and figure.
func TestRobustClaimHolds(t *testing.T) {
	if testing.Short() {
		t.Skip("builds some hundred thousand cars")
	}
	const cars = 12_000 // known to 1 %
	for i, tt := range []struct {
		template, figure string
		percentile       float64
		unlike, keepToe  bool
	}{
		{"double-wishbone-rack", "rms", 95, false, false},
		{"strut-rack", "peak", 90, true, false},
		{"multi-link-rack", "rms", 99, true, true},
		{"solid-axle-rack", "rms", 95, false, false},
	} {
		template := study.Template{Key: tt.template}
		d := template.Document()
		key, mm := "tieRodOuterHeight", d.Units.FromMillimetres
		if solidAxle(d) {
			key = "dragLinkOuterHeight"
		}
		d.Travel = &study.Travel{Bump: mm(35), Droop: mm(35), Step: mm(50)}
		d.Candidates, d.Yield = nil, &study.Yield{Limit: 1, KeepToe: tt.keepToe}
		d.Tolerances = []study.Tolerance{{Parameter: key, SD: mm(1.5)}, {Parameter: "tieRodInner.z", SD: mm(1)}, {Parameter: "tieRodInner.y", SD: mm(2), Varies: "car"}}
		if solidAxle(d) {
			d.Tolerances[1].Parameter, d.Tolerances[2].Parameter = "links.0.inner.z", "rideHeight"
		}
		d.Search = &study.Search{Minimise: tt.figure, Percentile: tt.percentile, Variables: []study.Variable{{Parameter: key, Min: mm(-25), Max: mm(25)}}}
		if tt.unlike {
			d = unlike(t, d)
		}
		found, err := Search(context.Background(), d, SearchOptions{})
		if err != nil {
			t.Fatalf("%s: %v", tt.template, err)
		}
		recount := func(name string, changes study.Changes) float64 {
			d.Candidates = []study.Candidate{{Name: name, Changes: changes}}
			r, err := NewToleranceRun(d, ToleranceOptions{Candidate: name, Cars: new(cars), Seed: new(1000 + i), Figure: tt.figure})
			if err != nil {
				t.Fatalf("%s: %v", tt.template, err)
			}
			c, err := r.Build(context.Background(), Whole)
			if err != nil {
				t.Fatal(err)
			}
			return c.Percentile(tt.percentile / 100).Degrees()
		}
		r := found.Robust
		robust, nominal := recount("robust", found.Best.Values), recount("nominal", r.NominalValues)
		if !(math.Abs(float64(r.Figure)-robust) <= 0.03*robust) || !(math.Abs(float64(r.Nominal)-nominal) <= 0.03*nominal) {
			t.Errorf("%s: claims %.5f, %.5f of the nominal values; of %d cars %.5f, %.5f", tt.template, float64(r.Figure), float64(r.Nominal), cars, robust, nominal)
		}
		if !(robust <= 1.01*nominal) {
			t.Errorf("%s: of %d cars %.5f, with the nominal values %.5f", tt.template, cars, robust, nominal)
		}
		if !(r.Low < r.Figure && r.Figure < r.High && r.High-r.Low < 0.06*r.Figure) {
			t.Errorf("%s: band %.5f to %.5f about %.5f", tt.template, float64(r.Low), float64(r.High), float64(r.Figure))
		}
	}
}
