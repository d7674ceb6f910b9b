package nlp

import (
	"cmp"
	"math"
	"slices"
	"sort"
)

const (
	// Agreement is the relative difference within which two values of the
	// objective are called the same.
	Agreement = 1e-6
	// agreementFloor is the same as a fraction of the largest value at which a
	// restart began, for objectives that go to zero.
	agreementFloor = 1e-9
	// sameSpot is the largest difference in any variable, as a fraction of its
	// range, within which two answers are called one optimum.
	sameSpot = 0.01
	// tie is the relative difference of two optima that only rounding sets
	// apart; of these the one nearest to the start is the answer.
	tie = 1e-9
	// LimitSlack is by how much a limit of a model in a good scale may be missed and
	// still count as held: far below what a shop can measure, far above rounding.
	LimitSlack = 1e-6
)

// Result is what [Run] found.
type Result struct {
	Optimum        // the best point; all zero where there is none
	Status  Status // of the run: Converged where all searches ran and the best converged

	// Start is the objective at [Problem.Start], NaN where the model cannot be
	// evaluated there.
	Start float64

	Evaluations int       // of the model
	Agreeing    int       // searches that ended at the best value, within 1e-6 of it
	Searches    int       // local searches that ran to their end
	Optima      []Optimum // distinct places where they ended, best first
}

// Optimum is one place where local searches ended.
type Optimum struct {
	X         []float64 // in the units of the variables
	Value     float64   // of the objective
	Violation float64   // of the limits: the largest, or 0 where all are at most 0
	Bounds    []Bound   // for each variable, the end of its range where it lies
	Searches  int       // how many ended here
}

// better orders locals by how far limits are broken, then by value.
func better(a, b local) int {
	return cmp.Or(cmp.Compare(a.breach(), b.breach()), cmp.Compare(a.value, b.value))
}

// breach returns the breach of the largest limit that is broken, -1 where all are held.
func (l local) breach() float64 {
	if !l.broken {
		return -1
	}
	return Breach(l.violation)
}

// Breach counts by how much a limit is broken in steps of what still counts as held:
// where that is the same, a limit that no variable moves say, points differ by their
// value and not by rounding.
func Breach(violation float64) float64 { return math.Round(violation / LimitSlack) }

// finished reports whether a local search ended by itself.
func (l local) finished() bool { return l.status != Cancelled && l.status != EvaluationLimit }

// optimum describes l in the units of the variables.
func (l local) optimum(variables []Variable) Optimum {
	o := Optimum{
		X: make([]float64, len(l.u)), Bounds: make([]Bound, len(l.u)),
		Value: l.value, Violation: l.violation,
	}
	for j, v := range variables {
		o.X[j] = v.FromUnit(l.u[j])
		o.Bounds[j] = boundAt(l.u[j])
	}
	return o
}

// summarise sets the best point, the counts and the optima from all searches.
// Largest is the objective at the worst point where one began.
func (r *Result) summarise(found []local, p *Problem, largest float64) {
	if len(found) == 0 {
		return
	}
	sort.SliceStable(found, func(i, j int) bool { return better(found[i], found[j]) < 0 })
	best := found[0]
	r.Optimum = best.optimum(p.Variables)
	if spots := r.group(found, p.Variables); len(spots) > 0 && best.finished() {
		k := nearest(spots, p.unitStart(), best.value*(1+tie))
		moveToFront(r.Optima, k)
		r.Optimum = r.Optima[0]
	}
	r.Agreeing = agreeing(found, largest)
}

// agreeing counts the searches that ended at the best value. Largest is the
// objective at the worst point where one began.
func agreeing(found []local, largest float64) int {
	best, n := slices.MinFunc(found, better), 0
	for _, l := range found {
		if l.finished() && l.breach() == best.breach() && l.value-best.value <= Agreement*best.value+agreementFloor*largest {
			n++
		}
	}
	return n
}

// group sets the optima and counts the searches that ended at each. It returns
// the first search that ended at each.
func (r *Result) group(found []local, variables []Variable) []local {
	var spots []local
	for _, l := range found {
		if !l.finished() {
			continue
		}
		r.Searches++
		k := slices.IndexFunc(spots, func(s local) bool { return distance(s.u, l.u) <= sameSpot })
		if k < 0 {
			k = len(spots)
			spots = append(spots, l)
			r.Optima = append(r.Optima, l.optimum(variables))
		}
		r.Optima[k].Searches++
	}
	return spots
}

// nearest returns the index of the spot nearest to start among those that are
// as good as the first and at most a value.
func nearest(spots []local, start []float64, value float64) int {
	best := 0
	for k, s := range spots {
		if s.breach() == spots[0].breach() && s.value <= value && distance(s.u, start) < distance(spots[best].u, start) {
			best = k
		}
	}
	return best
}

// moveToFront makes element k the first and keeps the order of the others.
func moveToFront(optima []Optimum, k int) {
	chosen := optima[k]
	copy(optima[1:k+1], optima[:k])
	optima[0] = chosen
}
