package optimize_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"toewright/optimize"
	"toewright/optimize/nlp"
	"toewright/solver"
	"toewright/tools/validation"
)

// Sources of the references on cars.
const (
	sumSource = "JCGM 101:2008, 9.2: the sum of four quantities. Figures read in a text that quotes them and simulated anew with 4,000,000 draws; the rectangular case is exact, 2√3·(2-(3/5)^¼). " +
		"Ours: 400,000 draws, and the linear rule of JCGM 100."
	gaugeSource = "JCGM 100:2008, example H.1, end gauge: the components, in nm, that come of rectangular distributions, and all in quadrature with the four that the example states (25, 6.7, 5.8 and 3.9). " +
		"Read in a text that quotes it. The sum is that of components rounded to 0.1 nm; the example itself rounds it to 32."
	spreadSource = "The textbook double wishbone above, all 24 coordinates off at random by 0.5 mm (one standard deviation), static toe re-set by the rod. " +
		"Linear: recomputed by central differences of independent solvers. Drawn: 1,500 cars of an independent program, known to 2 %; ours are 4,000."
	optimumSource = "The textbook double wishbone above, toe change over ±50 mm in steps of 10 mm, static toe re-set by the rod; best places of the tie rod's balls. " +
		"Recomputed: scipy's least_squares from three starts."
	knownSource = "Invented cars of testdata/cases, steering arm and both tie rod balls free. All restarts of an independent optimiser over an independent kinematics ended there."
)

// TestValidationCars holds the part of docs/validation.md on tolerances and optima.
func TestValidationCars(t *testing.T) {
	validation.Hold(t, validation.Page, "cars", []validation.Reference{
		{Name: "Sum of four quantities", Source: sumSource, Claims: sumClaims},
		{Name: "End gauge: rectangular distributions", Source: gaugeSource, Claims: gaugeClaims},
		{Name: "Textbook double wishbone: all coordinates off", Source: spreadSource, Claims: spreadClaims},
		{Name: "Textbook double wishbone: best tie rod", Source: optimumSource, Claims: optimumClaims},
		{Name: "Known optima of three variables", Source: knownSource, Claims: knownClaims},
	})
}

// sumClaims draws sums of four.
func sumClaims(t *testing.T) []validation.Claim {
	normal, uniform := optimize.Distribution{Spread: 1}, optimize.Distribution{Shape: optimize.Uniform, Spread: math.Sqrt(3)}
	wide := optimize.Distribution{Shape: optimize.Uniform, Spread: 10 * math.Sqrt(3)}
	var cs []validation.Claim
	for _, tt := range []struct {
		name   string
		inputs [4]optimize.Distribution
		u, end float64 // standard uncertainty; half of the 95 % interval
		limit  float64 // of what is drawn
	}{
		{"9.2.2, normal", [4]optimize.Distribution{normal, normal, normal, normal}, 2, 3.92, 0.03},
		{"9.2.3, rectangular", [4]optimize.Distribution{uniform, uniform, uniform, uniform}, 2, 2 * math.Sqrt(3) * (2 - math.Pow(0.6, 0.25)), 0.03},
		{"9.2.4, one ten times as wide", [4]optimize.Distribution{uniform, uniform, uniform, wide}, 10.149, 17, 0.1},
	} {
		u, drawn, ends := sumOf(tt.inputs)
		cs = append(cs,
			validation.Claim{Figure: tt.name + ": u, linear", Want: tt.u, Got: u, Limit: 5e-4},
			validation.Claim{Figure: tt.name + ": u, drawn", Want: tt.u, Got: drawn, Limit: tt.limit},
			validation.Claim{Figure: tt.name + ": 95 % from", Want: -tt.end, Got: ends[0], Limit: tt.limit},
			validation.Claim{Figure: tt.name + ": 95 % to", Want: tt.end, Got: ends[1], Limit: tt.limit})
	}
	return cs
}

// sumOf returns the standard deviation of a sum by the linear rule and as drawn, and
// the ends of its 95 % interval.
func sumOf(inputs [4]optimize.Distribution) (linear, drawn float64, ends []float64) {
	r := rand.New(rand.NewPCG(1, 2))
	sums := make([]float64, sampleSize)
	for i := range sums {
		for _, d := range inputs {
			sums[i] += d.Draw(r)
		}
		drawn += sums[i] * sums[i]
	}
	for _, d := range inputs {
		linear = math.Hypot(linear, d.SD())
	}
	return linear, math.Sqrt(drawn / sampleSize), nlp.Quantiles(sums, 0.025, 0.975)
}

// gaugeClaims are the components of an end gauge of 50.000623 mm at 0.1 K from 20 °C,
// of a thermal expansion of 11.5e-6/K.
func gaugeClaims(*testing.T) []validation.Claim {
	const length, expansion, off = 50_000_623, 11.5e-6, 0.1 // nm, 1/K, K
	rectangular := func(half float64) float64 { return optimize.Distribution{Shape: optimize.Uniform, Spread: half}.SD() }
	temperature, expansions := length*expansion*rectangular(0.05), length*off*rectangular(1e-6)
	sum := 0.0
	for _, u := range []float64{temperature, expansions, 25, 6.7, 5.8, 3.9} {
		sum = math.Hypot(sum, u)
	}
	return []validation.Claim{
		{Figure: "difference of temperatures, ±0.05 K", Unit: "nm", Want: 16.599, Got: temperature, Limit: 1e-3},
		{Figure: "difference of expansions, ±1e-6/K", Unit: "nm", Want: 2.88679, Got: expansions, Limit: 1e-4},
		{Figure: "combined", Unit: "nm", Want: 31.671, Got: sum, Limit: 1e-2},
	}
}

// spreadClaims are standard deviations of the toe at the ends of the window.
func spreadClaims(t *testing.T) []validation.Claim {
	p, c := countCars(t, textbookSeries(t), cars(4000))
	band := c.Band(0.15865525393145707, 0.8413447460685429) // one standard deviation each way
	drawn := func(i int) float64 { return solver.Angle((band[1][i] - band[0][i]) / 2).Degrees() }
	linear := func(i int) float64 { return solver.Angle(p.SD[i]).Degrees() }
	first, last := 0, len(p.SD)-1
	return []validation.Claim{
		{Figure: "toe at -50 mm, linear", Unit: "deg", Want: 0.062122, Got: linear(first), Limit: 1e-6},
		{Figure: "toe at 0 mm, linear", Unit: "deg", Want: 0, Got: linear(last / 2), Limit: 1e-6},
		{Figure: "toe at +50 mm, linear", Unit: "deg", Want: 0.049604, Got: linear(last), Limit: 1e-6},
		{Figure: "toe at -50 mm, drawn", Unit: "deg", Want: 0.0613, Got: drawn(first), Limit: 2.5e-3},
		{Figure: "toe at +50 mm, drawn", Unit: "deg", Want: 0.0485, Got: drawn(last), Limit: 2e-3},
	}
}

// optimumClaims moves one or two coordinates of the textbook's tie rod.
func optimumClaims(t *testing.T) []validation.Claim {
	base := textbook(t)
	rms, width := curveFigures(t, base, nil)
	cs := []validation.Claim{
		{Figure: "as it is: rms", Unit: "deg", Want: 0.083455, Got: rms, Limit: 1e-6},
		{Figure: "as it is: peak to peak", Unit: "deg", Want: 0.265815, Got: width, Limit: 1e-6},
	}
	for _, tt := range []struct {
		name       string
		keys       []string
		move       []float64 // mm
		rms, width float64   // deg
	}{
		{"outer z", []string{"tieRodOuter.z"}, []float64{1.9701}, 0.001974, 0.004464},
		{"inner z", []string{"tieRodInner.z"}, []float64{-2.0789}, 0.005248, 0.010686},
		{"inner z and y", []string{"tieRodInner.z", "tieRodInner.y"}, []float64{-1.7479, -2.0167}, 0.000497, 0.001530},
	} {
		p := &optimize.ToeSearch{Base: base, Measure: optimize.RMS, Judge: solver.LeftOnly, Travels: fifty(t)}
		for _, key := range tt.keys {
			q, _, err := solver.FindParameter(base.Design(), key)
			if err != nil {
				t.Fatal(err)
			}
			p.Free = append(p.Free, optimize.Free{Parameter: q, Min: -10, Max: 10})
		}
		a, err := optimize.SearchToe(context.Background(), p, nil)
		if err != nil {
			t.Fatal(err)
		}
		var changes []solver.Change
		for i, f := range p.Free {
			changes = append(changes, solver.Change{Parameter: f.Parameter, Value: a.Values[i]})
			cs = append(cs, validation.Claim{Figure: tt.name + ": " + tt.keys[i], Unit: "mm", Want: tt.move[i], Got: a.Values[i], Limit: 5e-4})
		}
		rms, width := curveFigures(t, base, changes)
		cs = append(cs,
			validation.Claim{Figure: tt.name + ": rms", Unit: "deg", Want: tt.rms, Got: rms, Limit: 1e-6},
			validation.Claim{Figure: tt.name + ": peak to peak", Unit: "deg", Want: tt.width, Got: width, Limit: 2e-6})
	}
	return cs
}

// fifty returns the travels ±50 mm in steps of 10 mm.
func fifty(t *testing.T) []float64 {
	travels, err := solver.Grid(50, 50, 10)
	if err != nil {
		t.Fatal(err)
	}
	return travels
}

// curveFigures returns root mean square and width, deg, of the left toe over fifty.
func curveFigures(t *testing.T, base *solver.Assembler, changes []solver.Change) (rms, width float64) {
	car, err := base.Assemble(changes, solver.HoldAll)
	if err != nil {
		t.Fatal(err)
	}
	var out [2]solver.Curve
	if err := car.Sweep(solver.NewWorkspace(), &solver.SweepInput{Travels: fifty(t)}, &out); err != nil {
		t.Fatal(err)
	}
	low, high, sum := math.Inf(1), math.Inf(-1), 0.0
	for _, p := range out[solver.Left].Positions {
		toe := p.Toe.Degrees()
		low, high, sum = min(low, toe), max(high, toe), sum+toe*toe
	}
	return math.Sqrt(sum / float64(len(fifty(t)))), high - low
}

// knownClaims searches the cases' optima by both measures.
func knownClaims(t *testing.T) []validation.Claim {
	var cs []validation.Claim
	for _, name := range []string{"dw01_saloon_rear_steer", "dw05_antidive_skewed_axes", "dw11_small_racer_front_steer"} {
		base, c := loadSearchCase(t, name+".json")
		for _, tt := range []struct {
			measure     optimize.Measure
			start, best float64
		}{
			{optimize.RMS, c.Search.Start.RMS, c.Search.Best.RMS.Value},
			{optimize.Peak, c.Search.Start.Peak, c.Search.Best.Peak.Value},
		} {
			a, err := optimize.SearchToe(context.Background(), c.problem(t, base, tt.measure), nil)
			if err != nil {
				t.Fatal(err)
			}
			figure := fmt.Sprintf("%s, %v", name, tt.measure)
			cs = append(cs,
				validation.Claim{Figure: figure + ", as it is", Unit: "deg", Want: tt.start, Got: a.Start.Of(tt.measure).Degrees(), Limit: 1e-6},
				validation.Claim{Figure: figure + ", best", Unit: "deg", Want: tt.best, Got: a.Best.Of(tt.measure).Degrees(), Limit: 1e-6})
		}
	}
	return cs
}
