package engine

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"toewright/internal/study"
	"toewright/optimize/nlp"
	"toewright/solver"
)

// TestLimitSlopes holds the derivatives of every limit, on one side of the car and on
// both, in set-ups and by parameters of one wheel, against differences of its whole range
// of thousand times the step: those are taken at the place of the extreme alone.
func TestLimitSlopes(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for _, tt := range everyLimit {
		t.Run(tt.name, func(t *testing.T) {
			d := limitedStudy(t, fmt.Sprintf(tt.limit, 0.0))
			d.Vehicle.Wheelbase = 2500
			d.Search.Scenarios = []study.Scenario{{Name: "as drawn"}, {Name: "leaning", Attitude: &study.Attitude{Roll: 0.5, Heave: 5}}}
			d.Search.Variables[0].Parameter = "tieRodOuterHeight@left"
			s, err := newSearcher(d, &SearchOptions{})
			if err != nil {
				t.Fatal(err)
			}
			m := s.problem.Problem().Model
			size := m.Size()
			held := 0
			for range 3 {
				x := make([]float64, size.Variables)
				for k, f := range s.problem.Free {
					x[k] = f.Min + (0.2+0.6*random.Float64())*(f.Max-f.Min)
				}
				v := nlp.NewValues(size)
				if !m.Evaluate(x, &v) {
					continue // no such car
				}
				held++
				for k, f := range s.problem.Free {
					slopesAgree(t, m, x, k, 1e-3*(f.Max-f.Min), &v)
				}
			}
			if held == 0 {
				t.Error("no car was looked at")
			}
		})
	}
}

// exactSlope is how well a derivative that needs no differences of a car agrees with them, as
// a share of the largest in its row.
const exactSlope = 1e-6

// TestSlopesAreExact: limits on forces and on the steering have derivatives that need no
// differences: they agree with central ones, Richardson's extrapolation applied once, to what
// rounding leaves; of a corner and of a solid axle.
func TestSlopesAreExact(t *testing.T) {
	steering := []study.Limit{
		{Result: "ackermann", Max: new(1.0)}, {Result: "toeOutOnTurns", Max: new(1.0)}, {Result: "steeringRatio", Max: new(1.0)}, {Result: "turningCircle", Max: new(1.0)},
	}
	corner := limitedStudy(t, `{"result": "tieRodLoad", "max": 1}, {"result": "armTwist", "max": 1}, {"result": "armBend", "max": 1}, {"result": "studBending", "max": 1}`)
	corner.Vehicle.Wheelbase = 2500
	axle := loaded(t, study.Template{Key: "solid-axle-pitman"})
	axle.Search = &study.Search{
		Window: corner.Search.Window,
		Variables: []study.Variable{
			{Parameter: "tieRodOuterHeight", Min: -25, Max: 25}, {Parameter: "dragLinkOuterHeight", Min: -20, Max: 20}, {Parameter: "links.3.inner.z", Min: -10, Max: 10},
		},
		Limits: []study.Limit{{Result: "tieRodLoad", Max: new(1.0)}, {Result: "studBending", Max: new(1.0)}},
	}
	for _, d := range []*study.Document{corner, axle} {
		d.Search.Limits = append(d.Search.Limits, steering...)
		t.Run(d.Suspension.Type, func(t *testing.T) { exactSlopesAgree(t, d) })
	}
}

func exactSlopesAgree(t *testing.T, d *study.Document) {
	d.Search.Scenarios = []study.Scenario{{Name: "as drawn"}, {Name: "leaning", Changes: study.Changes{"caster": 6}, Attitude: &study.Attitude{Roll: 0.5, Heave: 5}}}
	s, err := newSearcher(d, &SearchOptions{})
	if err != nil {
		t.Fatal(err)
	}
	m := s.problem.Problem().Model
	size := m.Size()
	x := []float64{-7, 3, 2}
	v := nlp.NewValues(size)
	if !m.Evaluate(x, &v) {
		t.Fatal("no such car")
	}
	at := func(k int, h float64) []float64 {
		y := append([]float64(nil), x...)
		y[k] += h
		v := nlp.Values{R: make([]float64, size.Residuals), G: make([]float64, size.Limits)}
		if !m.Evaluate(y, &v) {
			t.Fatal("no such car")
		}
		return v.G
	}
	for k := range x {
		const h = 0.05
		a, b, c, e := at(k, h), at(k, -h), at(k, 2*h), at(k, -2*h)
		for row := range v.G {
			one, two := (a[row]-b[row])/(2*h), (c[row]-e[row])/(4*h)
			most := 0.0
			for j := range x {
				most = math.Max(most, math.Abs(v.JG.At(row, j)))
			}
			if got, want := v.JG.At(row, k), one+(one-two)/3; !(math.Abs(got-want) <= exactSlope*most) {
				t.Errorf("row %d, variable %d: slope %.10g, differences give %.10g", row, k, got, want)
			}
		}
	}
}

// slopesAgree holds the column of a variable against a difference.
func slopesAgree(t *testing.T, m nlp.Model, x []float64, k int, h float64, v *nlp.Values) {
	t.Helper()
	size := m.Size()
	var at [2]nlp.Values
	for i, sign := range [2]float64{1, -1} {
		y := append([]float64(nil), x...)
		y[k] += sign * h
		at[i] = nlp.Values{R: make([]float64, size.Residuals), G: make([]float64, size.Limits)}
		if !m.Evaluate(y, &at[i]) {
			return
		}
	}
	for row, g := range v.G {
		up, down := (at[0].G[row]-g)/h, (g-at[1].G[row])/h
		// The difference to either side bounds that of a curve that bends, or has a kink
		// where one wheel takes over from the other.
		slack := 0.02*(math.Abs(up)+math.Abs(down)) + 1e-6
		if got := v.JG.At(row, k); !(got >= math.Min(up, down)-slack && got <= math.Max(up, down)+slack) {
			t.Errorf("row %d, variable %d: slope %g, differences %g and %g", row, k, got, up, down)
		}
	}
}

// TestOneWheelStandsForBoth: where a limit looks at one wheel only, since the car is its
// own mirror image, the other gives the same to the last digit.
func TestOneWheelStandsForBoth(t *testing.T) {
	looked := 0
	rim := study.Limit{Result: "clearance", Of: "outer-ball", Min: new(0.0), Rim: &study.Rim{Radius: 170, Offset: 10}}
	plane := study.Limit{Result: "clearance", Of: "tie-rod", Min: new(0.0), Plane: &study.Plane{Point: [3]float64{10, 500, 90}, Normal: [3]float64{0.1, 1, -0.2}}}
	for name, d := range demoStudies(t) {
		for _, limit := range []study.Limit{{Result: "innerBallAngle", Max: new(10.0)}, {Result: "outerBallAngle", Max: new(10.0)}, rim, plane} {
			var found [2]float64
			for i, side := range []study.Side{study.Left, study.Right} {
				e := d.Clone()
				e.Search.Scenarios = nil
				limit.Side = side
				e.Search.Limits = []study.Limit{limit}
				s, err := newJudge(e, "")
				if err != nil {
					t.Fatal(err)
				}
				if !s.design.Mirrored() {
					break
				}
				l, err := s.limit(0)
				if err != nil {
					break // no such joint
				}
				base, err := s.byName(study.BaseName)
				if err != nil {
					t.Fatal(err)
				}
				found[i] = l.State(base.axle, solver.Attitude{}, s.ws).Value
				looked++
			}
			if found[0] != found[1] {
				t.Errorf("%s: %s is %v on the left and %v on the right", name, limit.Result, found[0], found[1])
			}
		}
	}
	if looked < 20 {
		t.Errorf("%d wheels were looked at, want most", looked)
	}
}

// limitsBenched are limits by what they cost.
func limitsBenched(d *study.Document) []struct {
	name   string
	limits []study.Limit
} {
	balls := []study.Limit{{Result: "outerBallAngle", Max: new(25.0)}, {Result: "innerBallAngle", Max: new(25.0)}}
	lock := []study.Limit{{Result: "outerBallAngle", Max: new(35.0), At: study.AtLock}, {Result: "innerBallAngle", Max: new(35.0), At: study.AtLock}}
	loads := []study.Limit{{Result: "tieRodLoad", Max: new(1950.0)}, {Result: "armTwist", Max: new(40.0)}, {Result: "armBend", Max: new(215.0)}, {Result: "studBending", Max: new(240.0)}}
	return []struct {
		name   string
		limits []study.Limit
	}{{"none", nil}, {"balls", balls}, {"loads", loads}, {"clearance", d.Search.Limits}, {"balls-at-lock", lock}, {"all", slices.Concat(balls, lock)}}
}

// benched is the demo car that is benched.
func benched() *study.Document {
	all := study.Templates()
	return all[slices.IndexFunc(all, func(t study.Template) bool { return t.Key == "double-wishbone-rack" })].Document()
}

// inSixSetUps returns the demo car with six set-ups and variables without grids.
func inSixSetUps() *study.Document {
	d := benched()
	for i := range d.Search.Variables {
		d.Search.Variables[i].Grid, d.Search.Variables[i].Sizes = 0, nil
	}
	d.Search.Scenarios = []study.Scenario{
		{Name: "as drawn"}, {Name: "low", Changes: study.Changes{"rideHeight": -10}}, {Name: "high", Changes: study.Changes{"rideHeight": 10}},
		{Name: "caster", Changes: study.Changes{"caster": 5}}, {Name: "toe", Changes: study.Changes{"toe": 0.2}}, {Name: "camber", Changes: study.Changes{"camber": -1.5}},
	}
	return d
}

// BenchmarkLimits searches for six set-ups with limits, and without any.
func BenchmarkLimits(b *testing.B) {
	d := inSixSetUps()
	for _, bb := range limitsBenched(d) {
		b.Run(bb.name, func(b *testing.B) {
			e := d.Clone()
			e.Search.Limits = bb.limits
			for b.Loop() {
				if _, err := Search(b.Context(), e, SearchOptions{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkShelf tries some 9,000 combinations with limits, and without any.
func BenchmarkShelf(b *testing.B) {
	d := benched()
	d.Catalogue = nil
	for i := range 20 {
		for _, key := range []string{"tieRodOuterHeight", "steeringArmLength", "tieRodInnerHeight"} {
			d.Catalogue = append(d.Catalogue, study.Part{Slot: key, Name: fmt.Sprint(key, i), Price: float64(7 * i % 11), Changes: study.Changes{key: float64(i-10) * 0.9}})
		}
	}
	for _, bb := range limitsBenched(d) {
		b.Run(bb.name, func(b *testing.B) {
			e := d.Clone()
			e.Search.Limits = bb.limits
			for b.Loop() {
				if _, err := Choose(b.Context(), e, ChooseOptions{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
