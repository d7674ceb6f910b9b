package engine

import (
	"math"
	"testing"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/optimize/nlp"
	"toewright/solver"
)

// rounder rounds answers of a study's search and counts grid points itself.
type rounder struct {
	*searcher
	x   []float64 // answer without grids
	all nlp.Problem
	v   nlp.Values
}

func newRounder(t *testing.T, d *study.Document) *rounder {
	t.Helper()
	s, err := newSearcher(d, &SearchOptions{})
	if err != nil {
		t.Fatal(err)
	}
	a, err := optimize.SearchToe(t.Context(), &s.problem, nil)
	if err != nil || a.Values == nil {
		t.Fatal(err, a)
	}
	r := &rounder{searcher: s, x: a.Values}
	bare := s.problem
	bare.Limits = nil
	r.all = bare.Problem()
	r.v.R = make([]float64, r.all.Model.Size().Residuals)
	return r
}

// score returns the figure minimised at x, radians; NaN where there is no such car.
func (r *rounder) score(x []float64) float64 {
	if !r.all.Model.Evaluate(x, &r.v) {
		return math.NaN()
	}
	return r.all.Objective.Value(r.v.R)
}

// held reports whether the cars at x hold all limits.
func (r *rounder) held(x []float64) bool {
	_, _, states := r.problem.Figures(x)
	for _, s := range states {
		if !s.Held {
			return false
		}
	}
	return true
}

// values lists the grid values of variable k within its bounds, mm or radians.
func (r *rounder) values(k int, g *optimize.Grid) (out []float64) {
	f := &r.problem.Free[k]
	if len(g.Sizes) > 0 {
		for _, v := range g.Sizes {
			if v >= f.Min && v <= f.Max {
				out = append(out, v)
			}
		}
		return out
	}
	for i := math.Ceil(f.Min/g.Step - 1e-9); i <= math.Floor(f.Max/g.Step+1e-9); i++ {
		out = append(out, i*g.Step)
	}
	return out
}

// better returns a grid point that is better than a score and holds the limits; nil
// where there is none. Only points next to the valley are looked at: for all values of
// the other variables, those of the last one near its best there.
func (r *rounder) better(grids []optimize.Grid, score float64) []float64 {
	x, last := make([]float64, len(grids)), len(grids)-1
	var found []float64
	var along func(k int)
	along = func(k int) {
		if found != nil {
			return
		}
		values := r.values(k, &grids[k])
		for _, v := range values {
			x[k] = v
			if k < last {
				along(k + 1)
			} else if s := r.score(x); s < score*(1-1e-9) && r.held(x) {
				found = append([]float64(nil), x...)
			}
			if found != nil {
				return
			}
		}
	}
	along(0)
	return found
}

// gridsOf are what a shop can make, by variable.
func gridsOf(d *study.Document, n int) map[string][]optimize.Grid {
	unit := d.Units.Millimetres(1)
	coarse, fine := 1.0, 0.5
	if unit > 1 {
		coarse, fine = unit/16, unit/32
	}
	same := func(step float64) (out []optimize.Grid) {
		for range n {
			out = append(out, optimize.Grid{Step: step})
		}
		return out
	}
	sizes := same(coarse)
	sizes[0] = optimize.Grid{Sizes: []float64{-18.7, -11, -6.35, -3.175, 0, 2, 3.175, 5.5, 9, 12.7, 21}}
	out := map[string][]optimize.Grid{"coarse": same(coarse), "sizes": sizes}
	if v := d.Search.Variables; n == 2 && (v[0].Max-v[0].Min)/fine <= 120 {
		out["fine"] = same(fine)
	}
	return out
}

// TestRoundingAgainstAllPoints holds rounded answers of each demo car against all points
// of its grids: none that holds the limits is better.
func TestRoundingAgainstAllPoints(t *testing.T) {
	for name, d := range demoStudies(t) {
		if !steersByLengths(d) {
			continue
		}
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			r := newRounder(t, d)
			for which, grids := range gridsOf(d, len(r.x)) {
				got, err := r.problem.Round(t.Context(), r.x, grids, nil)
				if err != nil {
					t.Errorf("%s: %v", which, err)
					continue
				}
				score := r.score(got.Values)
				if !got.Held || !r.held(got.Values) {
					t.Errorf("%s: %v breaks a limit", which, got.Values)
				}
				if at := r.better(grids, score); at != nil {
					t.Errorf("%s: %v has %.7g rad, but %v has %.7g (proved %v)", which, got.Values, score, at, r.score(at), got.Proved)
				}
			}
		})
	}
}

// steersByLengths reports whether all variables of the study's search are lengths.
func steersByLengths(d *study.Document) bool {
	design, err := d.Design()
	if err != nil {
		return false
	}
	for _, v := range d.Search.Variables {
		p, _, err := solver.FindParameter(design, v.Parameter)
		if err != nil || p.Quantity != solver.LengthQuantity {
			return false
		}
	}
	return true
}

// TestFinerGridIsNoWorse: a grid that contains another never gives a worse answer, over
// whole and odd ratios, fine enough that not all points can be tried.
func TestFinerGridIsNoWorse(t *testing.T) {
	for name, d := range demoStudies(t) {
		if !steersByLengths(d) {
			continue
		}
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			r := newRounder(t, d)
			for _, chain := range [][]float64{{4, 1, 0.25}, {3, 0.15}, {25.4 / 16, 25.4 / 64}} {
				before, was := math.Inf(1), 0.0
				for _, step := range chain {
					grids := make([]optimize.Grid, len(r.x))
					for i := range grids {
						grids[i].Step = step
					}
					got, err := r.problem.Round(t.Context(), r.x, grids, nil)
					if err != nil {
						t.Fatal(err)
					}
					now := r.score(got.Values)
					if !got.Held {
						now = math.Inf(1)
					}
					if !(now <= before*(1+1e-9)) {
						t.Errorf("steps of %g mm give %.7g rad, those of %g mm %.7g", step, now, was, before)
					}
					before, was = now, step
				}
				if exact := r.score(r.x); !(before >= exact*(1-1e-6)-1e-12) {
					t.Errorf("the finest grid gives %.7g rad, the answer without grids %.7g", before, exact)
				}
			}
		})
	}
}
