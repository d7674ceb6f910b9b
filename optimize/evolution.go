package optimize

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
)

const (
	// evolutionSpread is the first standard deviation of the samples, in the
	// unit box: most of them fall inside it.
	evolutionSpread = 0.3
	// brokenRank puts points that break a limit behind all others, as a
	// multiple of the value at the start.
	brokenRank = 1e6
)

// evolution looks for a good basin by CMA-ES.
type evolution struct {
	box    *unitBox
	scale  *scale
	values Values
	sample []float64 // scratch
	inside []float64 // scratch: the sample moved into the unit box
	broken float64   // added to the violation of points that break a limit
	report func()

	best  []float64 // best point, nil before there is one
	merit float64   // its merit
}

func newEvolution(box *unitBox, s *scale, start float64, report func()) *evolution {
	size := box.model.Size()
	rank := brokenRank * start
	if !(rank > 0) {
		rank = brokenRank
	}
	return &evolution{
		box: box, scale: s, values: newValues(size),
		sample: make([]float64, size.Variables), inside: make([]float64, size.Variables),
		broken: rank, report: report, merit: math.Inf(1),
	}
}

// run returns the best point of a run that starts in the middle of the box, or
// nil where the model could be evaluated at none.
func (e *evolution) run(evaluations int, seed uint64) []float64 {
	middle := make([]float64, len(e.box.variables))
	for j := range middle {
		middle[j] = 0.5
	}
	c := newCMAES(middle, evolutionSpread, rand.New(rand.NewPCG(seed, evolutionStream)))
	order, merits := make([]int, c.population), make([]float64, c.population)
	for ; evaluations >= c.population; evaluations -= c.population {
		for k := range merits {
			if e.box.stopped() != NotRun {
				return e.best
			}
			c.sample(k, e.sample)
			order[k], merits[k] = k, e.evaluate(e.sample)
		}
		slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(merits[i], merits[j]) })
		c.adapt(order)
	}
	return e.best
}

// evaluate returns the merit of a sample: that of the nearest point of the box,
// and more the farther the sample lies outside.
func (e *evolution) evaluate(sample []float64) float64 {
	excess := 0.0
	for j, v := range sample {
		e.inside[j] = clamp(v, 0, 1)
		excess += (v - e.inside[j]) * (v - e.inside[j])
	}
	e.report()
	if !e.box.evaluateValues(e.inside, &e.values) {
		return math.Inf(1)
	}
	merit := e.scale.value(e.values.R)
	if broken := e.values.violation(); broken > 0 {
		merit = e.broken + broken
	}
	if merit < e.merit {
		e.merit = merit
		e.best = append(e.best[:0], e.inside...)
	}
	return merit * (1 + excess)
}
