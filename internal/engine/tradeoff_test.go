package engine

import (
	"cmp"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"toewright/internal/study"
	"toewright/optimize/nlp"
	"toewright/solver"
)

// demoStudies returns the invented cars, by name.
func demoStudies(t *testing.T) map[string]*study.Document {
	t.Helper()
	files, err := filepath.Glob("../../testdata/studies/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no demo studies: ", err)
	}
	out := map[string]*study.Document{}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		d, err := study.Decode(data)
		if err != nil {
			t.Fatal(err)
		}
		out[strings.TrimSuffix(filepath.Base(f), ".json")] = d
	}
	return out
}

// rivalTolerance is by how much, as a share, a rival with the same aim may be better:
// rounding at limits that bind.
const rivalTolerance = 1e-4

// TestTradeOffAgainstSearch holds each design of each demo car against the search's own
// with the design's aim as a limit of the study: none may be worse.
func TestTradeOffAgainstSearch(t *testing.T) {
	for name, d := range demoStudies(t) {
		for _, aim := range []string{"ackermann", "ratio"} {
			if d.Steering == nil || d.Steering.Type == "none" || (len(name)%2 == 0) == (aim == "ratio") {
				continue // has none, or is asked for the other
			}
			t.Run(name+" "+aim, func(t *testing.T) {
				t.Parallel()
				againstSearch(t, d, TradeOffOptions{Aim: aim, Designs: new(3)})
			})
		}
	}
}

func againstSearch(t *testing.T, d *study.Document, o TradeOffOptions) {
	t.Helper()
	d = levelled(d)
	r, err := TradeOff(t.Context(), d, o)
	if err != nil {
		t.Fatal(err)
	}
	for i, k := range r.Designs {
		if i == 0 {
			continue // the search itself
		}
		if !(k.Aim < r.Designs[i-1].Aim && k.Score > r.Designs[i-1].Score) {
			t.Errorf("design %d trades nothing: aim %g after %g, score %g after %g", i, k.Aim, r.Designs[i-1].Aim, k.Score, r.Designs[i-1].Score)
		}
		rival := searchOf(t, withAimAsLimit(d, r, float64(k.Aim)), SearchOptions{Seed: o.Seed})
		if len(rival.Conflict) > 0 {
			t.Errorf("aim %g: the search holds no %v", k.Aim, rival.Conflict)
			continue
		}
		if far := aimOf(t, d, &o, rival.Best.Values); far > float64(k.Aim)+1e-8 {
			continue // it looks at fewer hands than the aim does, or ends beside its limit
		}
		if best := rival.Optima[0].Value; !(float64(k.Score) <= float64(best)*(1+rivalTolerance)) {
			t.Errorf("aim %.4f: score %.7f deg at %v, but the search finds %.7f at %v", k.Aim, k.Score, k.Values, best, rival.Best.Values)
		}
	}
}

// TestAimsHaveSlopes holds the derivatives of each demo car's aims against differences, and
// one hand that stands for both against either.
func TestAimsHaveSlopes(t *testing.T) {
	both, one := 0, 0
	for name, d := range demoStudies(t) {
		if d.Steering == nil || d.Steering.Type == "none" {
			continue
		}
		for _, key := range []string{"ackermann", "ratio"} {
			t.Run(name+" "+key, func(t *testing.T) {
				s, aim := searchedAim(t, d, key)
				if key == "ackermann" && aim.Misses == 1 {
					one++
				} else if key == "ackermann" {
					both++
				}
				aimSlopesAgree(t, s, aim)
			})
		}
	}
	if one == 0 || both == 0 {
		t.Errorf("%d cars turn to either side alike and %d do not: want some of both", one, both)
	}
}

func aimSlopesAgree(t *testing.T, s *searcher, aim *secondAim) {
	t.Helper()
	var changes []solver.Change
	for i := range s.problem.Free {
		f := &s.problem.Free[i]
		c := solver.Change{Parameter: f.Parameter, Sides: f.Sides, Value: 0.3*f.Min + 0.7*f.Max}
		changes = append(changes, c)
	}
	measured := func(k int, h float64, exact bool) (misses []float64, rates [][]float64) {
		at := slices.Clone(changes)
		at[k].Value += h
		x, err := s.base.Assemble(at, solver.HoldAll)
		if err != nil {
			t.Fatal(err)
		}
		var by *solver.Tangents
		if exact {
			if by, err = x.Tangents(changes); err != nil {
				t.Fatal(err)
			}
		}
		misses = make([]float64, aim.Misses)
		for range misses {
			rates = append(rates, make([]float64, len(changes)))
		}
		if aim.Of(x, solver.NewWorkspace(), misses, by, rates) != exact {
			t.Fatalf("derivatives: %t, want %t", !exact, exact)
		}
		for side := range solver.Sides { // a hand that is not looked at is as this one
			if aim.Name == "ackermann" {
				turn, err := turnOf(x, s.ws, solver.Side(side), solver.Attitude{})
				if err != nil {
					t.Fatal(err)
				}
				near(t, "off from the percentage asked for", misses[min(side, aim.Misses-1)], float64(ackermann(x, turn))-UsualAckermann, 1e-9)
			}
		}
		return misses, rates
	}
	_, rates := measured(0, 0, true)
	for k := range changes {
		h := 1e-3 * (s.problem.Free[k].Max - s.problem.Free[k].Min)
		up, _ := measured(k, h, false)
		down, _ := measured(k, -h, false)
		for i := range up {
			want := (up[i] - down[i]) / (2 * h)
			if got := rates[i][k]; !(math.Abs(got-want) <= 1e-4*math.Abs(want)+1e-6) {
				t.Errorf("miss %d by %s: slope %g, differences give %g", i, changes[k].Parameter.Key, got, want)
			}
		}
	}
}

// levelled returns a study whose set-ups have no attitudes: a limit counts in them, and an
// aim is of the car straight and level.
func levelled(d *study.Document) *study.Document {
	out := d.Clone()
	for i := range out.Search.Scenarios {
		out.Search.Scenarios[i].Attitude = nil
	}
	return out
}

// aimOf returns the aim of a car with changes.
func aimOf(t *testing.T, d *study.Document, o *TradeOffOptions, changes study.Changes) float64 {
	t.Helper()
	s, err := newSearcher(d, &SearchOptions{})
	if err != nil {
		t.Fatal(err)
	}
	aim, err := s.aim(o)
	if err != nil {
		t.Fatal(err)
	}
	return aim.shown(s.problem.AimAt(&aim.Aim, s.point(changes)))
}

// withAimAsLimit returns a study whose search has an aim as a limit.
func withAimAsLimit(d *study.Document, r *TradeOffResult, aim float64) *study.Document {
	goal, off := float64(r.Goal.Value), aim
	l := study.Limit{Result: "ackermann"}
	if r.Aim == "ratio" {
		l.Result = "steeringRatio"
		off *= goal / 100
	}
	l.Min, l.Max = new(goal-off), new(goal+off)
	if *l.Min < 0 && r.Aim == "ratio" {
		l.Min = nil
	}
	out := d.Clone()
	out.Search.Limits = append(out.Search.Limits, l)
	return out
}

// TestTradeOffFromStock looks all about the base car, at each design's distance and
// nearer, for parts that hold the limits and are better.
func TestTradeOffFromStock(t *testing.T) {
	for name, d := range demoStudies(t) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			r, err := TradeOff(t.Context(), d, TradeOffOptions{Aim: "stock", Designs: new(3)})
			if err != nil {
				t.Fatal(err)
			}
			s, err := newSearcher(d, &SearchOptions{})
			if err != nil {
				t.Fatal(err)
			}
			for _, k := range r.Designs {
				radius := d.Units.Millimetres(float64(k.Aim))
				if best, at := leastWithin(s, radius); best < float64(k.Score)*(1-rivalTolerance) {
					t.Errorf("within %g mm of stock: score %.7f deg at %v, but %.7f at %v", radius, k.Score, k.Values, best, at)
				}
			}
			if last := r.Designs[len(r.Designs)-1]; !(last.Aim <= 1e-9) {
				t.Errorf("the last design is %g %s from stock, want the stock car", last.Aim, r.AimUnit)
			}
		})
	}
}

// leastWithin returns the least score, degrees, among points of a ball about the base
// car that hold the limits.
func leastWithin(s *searcher, radius float64) (float64, []float64) {
	o := s.problem.Problem()
	best, at := math.Inf(1), []float64(nil)
	size := o.Model.Size()
	v := nlp.Values{R: make([]float64, size.Residuals), G: make([]float64, size.Limits)}
	const around, along = 120, 3
	for i := range around {
		for j := range around {
			if len(o.Variables) == 2 && j > 0 || j%9 > 0 {
				continue
			}
			a, b := 2*math.Pi*float64(i)/around, math.Pi*float64(j)/around
			for k := 1; k <= along; k++ {
				x := []float64{math.Cos(a) * math.Cos(b), math.Sin(a) * math.Cos(b), math.Sin(b)}[:len(o.Variables)]
				for n := range x {
					x[n] = math.Max(o.Variables[n].Min, math.Min(o.Variables[n].Max, x[n]*radius*float64(k)/along))
				}
				if o.Model.Evaluate(x, &v) && held(v.G) {
					if f := solver.Angle(o.Objective.Value(v.R)).Degrees(); f < best {
						best, at = f, x
					}
				}
			}
		}
	}
	return best, at
}

// held reports whether all limits hold.
func held(g []float64) bool {
	for _, x := range g {
		if !(x <= 0) {
			return false
		}
	}
	return true
}

// TestTradeOffBindingLimit: where a limit of the study keeps the aim from its least the
// last design is the least that the limit allows, not left out.
func TestTradeOffBindingLimit(t *testing.T) {
	for _, tt := range []struct{ aim, limit string }{
		{"stock", `{"result": "steeringArmLength", "min": 130}`},
		{"stock", `{"result": "tieRodLength", "max": 352}`},
		{"ackermann", `{"result": "steeringArmLength", "min": 130}`},
		{"ratio", `{"result": "steeringArmLength", "min": 130}`},
	} {
		t.Run(tt.aim+" "+tt.limit, func(t *testing.T) {
			d := limitedStudy(t, tt.limit)
			r, err := TradeOff(t.Context(), d, TradeOffOptions{Aim: tt.aim, Designs: new(3)})
			if err != nil {
				t.Fatal(err)
			}
			least := leastAimOnGrid(t, d, tt.aim)
			if last := r.Designs[len(r.Designs)-1]; !(float64(last.Aim) <= least) {
				t.Errorf("ends at %.4f %s, but %.4f holds the limit", last.Aim, r.AimUnit, least)
			}
			for _, k := range r.Designs {
				if v := measured(t, d, k.Values); !within(&d.Search.Limits[0], v) {
					t.Errorf("%v has %.6g, breaks %s", k.Values, v, tt.limit)
				}
			}
		})
	}
}

// leastAimOnGrid returns the least aim of a grid of cars that hold the study's limits.
func leastAimOnGrid(t *testing.T, d *study.Document, key string) float64 {
	t.Helper()
	s, aim := searchedAim(t, d, key)
	p := s.problem.Problem()
	const steps = 8
	least := math.Inf(1)
	size := p.Model.Size()
	v := nlp.Values{R: make([]float64, size.Residuals), G: make([]float64, size.Limits)}
	var x [3]float64
	for i := range (steps + 1) * (steps + 1) * (steps + 1) {
		for n := range x {
			x[n] = p.Variables[n].Min + (p.Variables[n].Max-p.Variables[n].Min)*float64(i%(steps+1))/steps
			i /= steps + 1
		}
		if p.Model.Evaluate(x[:], &v) && held(v.G) {
			least = math.Min(least, s.problem.AimAt(&aim.Aim, x[:]))
		}
	}
	return aim.shown(least)
}

// TestTradeOffKeepsItsGoal: what an aim is counted from stands in the answer, and 0 is
// 0.
func TestTradeOffKeepsItsGoal(t *testing.T) {
	d := limitedStudy(t, "")
	for _, want := range []float64{0, 40, 100, -20} {
		r, err := TradeOff(t.Context(), d, TradeOffOptions{Aim: "ackermann", Ackermann: &want, Designs: new(3)})
		if err != nil {
			t.Fatal(err)
		}
		if float64(r.Goal.Value) != want || r.Goal.Unit != "%" {
			t.Errorf("goal %+v, want %g %%", r.Goal, want)
		}
		for _, k := range r.Designs {
			c, err := Compare(t.Context(), withCandidate(d, k.Values), CompareOptions{Candidate: "design"})
			if err != nil {
				t.Fatal(err)
			}
			far := 0.0
			for _, car := range c.Cars {
				far = math.Max(far, math.Abs(float64(car.Ackermann)-want))
			}
			near(t, "off from the percentage asked for", float64(k.Aim), far, 1e-6)
		}
	}
	bad := math.NaN()
	_, err := TradeOff(t.Context(), d, TradeOffOptions{Aim: "ackermann", Ackermann: &bad})
	wantError(t, err, Wrong, "ackermann", "is not a percentage")
}

// withCandidate returns a study with a candidate called design.
func withCandidate(d *study.Document, changes study.Changes) *study.Document {
	out := d.Clone()
	out.Candidates = append(out.Candidates, study.Candidate{Name: "design", Changes: changes})
	return out
}

// TestTradeOffNeedsAGear: an aim that the car does not have is refused, not answered
// with one design.
func TestTradeOffNeedsAGear(t *testing.T) {
	rear := demoStudies(t)["double-wishbone-rear"]
	for _, aim := range []string{"ackermann", "ratio"} {
		_, err := TradeOff(t.Context(), rear, TradeOffOptions{Aim: aim})
		wantError(t, err, Wrong, "aim", "steering gear")
	}
	bare := limitedStudy(t, "")
	bare.Vehicle.Wheelbase = 0
	_, err := TradeOff(t.Context(), bare, TradeOffOptions{Aim: "ackermann"})
	wantError(t, err, Wrong, "vehicle.wheelbase", "wheelbase")
}

// TestTradeOffTellsItsDesigns: while it runs a trade-off tells what it has found, from the
// least toe change on, ever more of it, and in the end no more than it answers with.
func TestTradeOffTellsItsDesigns(t *testing.T) {
	d := demoStudies(t)["strut-rack"]
	var told []*TradeOffResult
	r, err := TradeOff(t.Context(), d, TradeOffOptions{Designs: new(4), Progress: func(p Progress) {
		if p.Designs != nil && (len(told) == 0 || told[len(told)-1] != p.Designs) {
			told = append(told, p.Designs)
		}
	}})
	if err != nil || len(r.Designs) < 3 {
		t.Fatalf("%+v, %v, want a front", r, err)
	}
	if len(told) < 3 {
		t.Fatalf("told %d times of what it has, want at least 3", len(told))
	}
	for i, part := range told {
		byScore := func(a, b TradeOffPoint) int { return cmp.Compare(a.Score, b.Score) }
		if !part.Stopped || !slices.IsSortedFunc(part.Designs, byScore) || part.Aim != r.Aim {
			t.Errorf("telling %d: %+v, want a part of the answer, the least toe change first", i, part)
		}
		if i > 0 && len(part.Designs) < len(told[i-1].Designs) {
			t.Errorf("telling %d has %d designs, the one before %d", i, len(part.Designs), len(told[i-1].Designs))
		}
		if got, want := part.Designs[0].Score, r.Designs[0].Score; got != want {
			t.Errorf("telling %d begins with %g, the answer with %g", i, got, want)
		}
	}
}

// searchedAim returns the search of a study, and a second aim of it.
func searchedAim(t *testing.T, d *study.Document, key string) (*searcher, *secondAim) {
	t.Helper()
	s, err := newSearcher(d, &SearchOptions{})
	if err != nil {
		t.Fatal(err)
	}
	aim, err := s.aim(&TradeOffOptions{Aim: key})
	if err != nil {
		t.Fatal(err)
	}
	return s, aim
}
