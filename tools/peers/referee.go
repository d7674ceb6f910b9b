//go:build unix

package main

import (
	"context"
	"fmt"
	"math"
	"slices"

	"toewright/optimize"
	"toewright/solver"
	"toewright/tools/referee"
)

// refereeStarts is from how many points each of gonum's methods starts.
const refereeStarts = 8

// looking is what a method came to over all problems.
type looking struct {
	name       string
	cars       []float64 // of each problem
	seconds    float64
	above      []float64 // by how much it ended above ours, deg
	found      int       // problems where it ended at ours or below, to a millionth of a degree
	below      float64   // the most by which it ended below ours, deg
	unanswered int       // problems where it found no car that holds the limits
}

// end takes down where a problem's search ended beside ours, deg.
func (l *looking) end(figure, ours float64, cars int) {
	l.cars = append(l.cars, float64(cars))
	if math.IsInf(figure, 1) {
		l.unanswered++
		return
	}
	l.above, l.below = append(l.above, figure-ours), math.Max(l.below, ours-figure)
	if figure-ours <= 1e-6 {
		l.found++
	}
}

// median returns the middle of numbers, NaN of none.
func median(xs []float64) float64 {
	if len(xs) == 0 {
		return math.NaN()
	}
	return slices.Sorted(slices.Values(xs))[len(xs)/2]
}

// refereed compares our searches with those of gonum's methods on every problem of the
// referee.
func refereed(ctx context.Context, _ *bench, p *page) error {
	problems, err := referee.Problems("testdata/studies")
	if err != nil {
		return err
	}
	p.section("Searches by gonum's methods", fmt.Sprintf(`The %d searches of tools/referee: every demo study, 1 to 7 variables, rms and peak, a third
with limits. Ours has exact derivatives and its usual restarts; gonum's methods start from %d
points, take BFGS's slopes by differences, and pay for limits by a penalty. `+"`make bench`"+` fails where
one of them ends below ours.`, len(problems), refereeStarts))
	all := make([]looking, 1+len(referee.Methods))
	all[0].name = "ours"
	for i := range problems {
		before := processorTime()
		a, err := optimize.SearchToe(ctx, problems[i].Search, nil)
		if err != nil {
			return err
		}
		all[0].seconds += (processorTime() - before).Seconds()
		ours := solver.Angle(a.Result.Value).Degrees()
		all[0].end(ours, ours, a.Result.Evaluations)
		for m := range referee.Methods {
			l := &all[1+m]
			l.name = referee.Methods[m].Name
			before = processorTime()
			figure, cars := problems[i].Least(m, refereeStarts, 1)
			l.seconds += (processorTime() - before).Seconds()
			l.end(solver.Angle(figure).Degrees(), ours, cars)
		}
	}
	t := table{header: []string{"Method", "cars, median", "processor time of all, s", "ends at ours", "above ours, median", "at worst", "below ours at most", "no answer"}}
	for i := range all {
		l := &all[i]
		t.row(l.name, fmt.Sprintf("%.0f", median(l.cars)), digits(l.seconds), fmt.Sprintf("%d of %d", l.found, len(problems)),
			fmt.Sprintf("%.6f deg", median(l.above)), fmt.Sprintf("%.4f deg", slices.Max(l.above)), fmt.Sprintf("%.1e deg", l.below), fmt.Sprint(l.unanswered))
	}
	p.table(&t)
	return nil
}
