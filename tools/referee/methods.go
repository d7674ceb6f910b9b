package referee

import (
	"math"
	"math/rand/v2"

	gonum "gonum.org/v1/gonum/optimize"

	"toewright/optimize/nlp"
)

// Methods are gonum's, as they are asked.
var Methods = []struct {
	Name string
	new  func(seed uint64) gonum.Method
}{
	{"NelderMead", func(uint64) gonum.Method { return &gonum.NelderMead{SimplexSize: 0.1} }},
	{"BFGS", func(uint64) gonum.Method { return &gonum.BFGS{} }},
	{"CmaEsChol", func(seed uint64) gonum.Method {
		return &gonum.CmaEsChol{InitStepSize: 0.3, Src: rand.NewPCG(seed, 1)}
	}},
}

// penalty is the cost of a limit broken by its scale, as a multiple of the figure at
// the start.
const penalty = 100

// rival is a problem as gonum's methods know it: without bounds or limits. A point is
// folded into the box, and broken limits cost.
type rival struct {
	p     nlp.Problem
	v     nlp.Values
	x     []float64
	start float64

	best  float64 // figure of the best point that holds all limits, radians
	calls int
}

// newRival returns a problem for gonum's methods.
func newRival(p *Problem) *rival {
	r := &rival{p: p.Search.Problem(), best: math.Inf(1), x: make([]float64, len(p.Search.Free)), start: 1}
	size := r.p.Model.Size()
	r.v = nlp.Values{R: make([]float64, size.Residuals), G: make([]float64, size.Limits)}
	if r.p.Model.Evaluate(r.p.Start, &r.v) {
		r.start = r.p.Objective.Value(r.v.R)
	}
	return r
}

// heldWithin is by how much of its scale a limit may be broken, as ours may.
const heldWithin = 1e-6

// value returns the figure at a point of the unit box, with what broken limits cost; it
// keeps the best point that holds them.
func (r *rival) value(u []float64) float64 {
	for k, v := range r.p.Variables {
		r.x[k] = v.Min + (v.Max-v.Min)*folded(u[k])
	}
	r.calls++
	if !r.p.Model.Evaluate(r.x, &r.v) {
		return math.Inf(1)
	}
	figure, broken := r.p.Objective.Value(r.v.R), 0.0
	for _, g := range r.v.G {
		broken = math.Max(broken, g)
	}
	if broken <= heldWithin {
		r.best = math.Min(r.best, figure)
	}
	return (figure + penalty*r.start*math.Max(0, broken)) / r.start
}

// folded returns a number in the unit interval, mirrored at its ends.
func folded(u float64) float64 {
	u = math.Abs(math.Mod(u, 2))
	if u > 1 {
		return 2 - u
	}
	return u
}

// gradient is that of value, by central differences.
func (r *rival) gradient(g, u []float64) {
	const step = 1e-6
	at := append([]float64(nil), u...)
	for k := range u {
		at[k] = u[k] + step
		up := r.value(at)
		at[k] = u[k] - step
		g[k] = (up - r.value(at)) / (2 * step)
		at[k] = u[k]
	}
}

// Least returns the least figure, radians, that a method finds from so many starts,
// and after how many cars.
func (p *Problem) Least(method, starts int, seed uint64) (figure float64, cars int) {
	r := newRival(p)
	rng := rand.New(rand.NewPCG(seed, uint64(method)))
	settings := gonum.Settings{FuncEvaluations: 2000, MajorIterations: 300}
	for i := range starts {
		u := make([]float64, len(r.x))
		for k := range u {
			u[k] = rng.Float64()
		}
		problem := gonum.Problem{Func: r.value, Grad: r.gradient}
		// A start without a car is an error, and one start less.
		_, _ = gonum.Minimize(problem, u, &settings, Methods[method].new(seed+uint64(i)))
	}
	return r.best, r.calls
}
