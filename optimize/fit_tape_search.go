package optimize

import (
	"context"
	"math"

	"gonum.org/v1/gonum/mat"

	"toewright/optimize/nlp"
)

// reconsiderations bounds how often a fit is begun anew from places found by search.
const reconsiderations = 3

// reconsider looks for a better choice of what a tape's slips are. Leaving out one
// measure at a time can end where a point stands far off and sound measures were left out
// for it. So each point of a measure left out is placed anew with one or two of its
// measures set aside, all else held: where that agrees with more of them, the fit begins
// there again, and is kept if it leaves out less.
func (m *gaugeModel) reconsider(ctx context.Context, e nlp.Estimate) (nlp.Estimate, error) {
	for range reconsiderations {
		x, used := append([]float64(nil), e.X...), append([]bool(nil), m.used...)
		if !m.replace(ctx, x, used) {
			break
		}
		was := m.used
		m.used = used
		again, err := m.settle(ctx, x)
		if err != nil {
			return e, err
		}
		better := m.toll(&again, m.used) < m.toll(&e, was)
		if !better {
			m.used = was
			break
		}
		e = again
	}
	return e, nil
}

// toll is what a choice of measures costs: the chi-square, and for each left out as much
// as the largest that may stay in.
func (m *gaugeModel) toll(e *nlp.Estimate, used []bool) float64 {
	sum, c := e.ChiSquare, critical(len(used))
	for _, u := range used {
		if !u {
			sum += c * c
		}
	}
	return sum
}

// replace moves the points of the measures left out to where more of their measures agree,
// and sets which do. It reports whether any moved.
func (m *gaugeModel) replace(ctx context.Context, x []float64, used []bool) (moved bool) {
	seen := map[[3]int]bool{}
	for i := range m.tape.measures {
		if m.used[m.tape.first+i] {
			continue
		}
		for _, end := range m.tape.ends[i] {
			if end.still() || seen[end.by] {
				continue
			}
			seen[end.by] = true
			if p := m.newTapedPlace(end.by, x); p.search(ctx) {
				moved = true
				p.take(used)
			}
		}
	}
	return moved
}

// tapedPlace is the model of one point's measures, all other points held: its residuals
// are those of the measures, 0 for the ones set aside.
type tapedPlace struct {
	tape   *tapeRows
	point  []int // its variables
	rows   []int // its measures
	sds    []float64
	x      []float64 // of all variables
	aside  [2]int    // measures set aside, -1 for none
	level  float64   // the square beyond which a residual costs no more
	values nlp.Values
}

func (m *gaugeModel) newTapedPlace(by [3]int, x []float64) *tapedPlace {
	p := &tapedPlace{tape: m.tape, x: x, aside: [2]int{-1, -1}}
	for _, k := range by {
		if k >= 0 {
			p.point, p.sds = append(p.point, k), append(p.sds, m.unknowns[k].SD)
		}
	}
	for i := range m.tape.ends {
		if m.tape.ends[i][0].by == by || m.tape.ends[i][1].by == by {
			p.rows = append(p.rows, i)
		}
	}
	c := critical(len(m.used))
	p.level = c * c
	p.values = nlp.Values{R: make([]float64, len(p.rows)), JR: mat.NewDense(1, len(x), nil)}
	return p
}

// Size implements [nlp.Model].
func (p *tapedPlace) Size() nlp.Size {
	return nlp.Size{Variables: len(p.point), Residuals: len(p.rows)}
}

// Evaluate implements [nlp.Model].
func (p *tapedPlace) Evaluate(at []float64, v *nlp.Values) bool {
	for j, k := range p.point {
		p.x[k] = at[j]
	}
	row := p.values.JR.RawRowView(0)
	for i, r := range p.rows {
		v.R[i] = p.tape.residual(r, p.x, row)
		if p.aside[0] == i || p.aside[1] == i {
			v.R[i] = 0
			clear(row)
		}
		if v.JR != nil {
			for j, k := range p.point {
				v.JR.Set(i, j, row[k])
			}
		}
		clear(row)
	}
	return true
}

// cost returns what the point's measures cost where it stands, none set aside: the square
// of each residual up to the level.
func (p *tapedPlace) cost() float64 {
	sum := 0.0
	for _, r := range p.rows {
		off := p.tape.residual(r, p.x, nil)
		sum += math.Min(off*off, p.level)
	}
	return sum
}

// search places the point with every one and two of its measures set aside, and leaves it
// where they cost least. It reports whether that is less than where it stood, by a measure.
func (p *tapedPlace) search(ctx context.Context) bool {
	was := p.at()
	least, best := p.cost()-p.level/2, was
	for a := range p.rows {
		for b := a; b < len(p.rows); b++ {
			p.aside = [2]int{a, b}
			for _, start := range [][]float64{was, make([]float64, len(was))} {
				r := nlp.Readings{Model: p, Start: start, Priors: make([]nlp.Prior, len(was))}
				for j, sd := range p.sds {
					r.Priors[j].SD = sd
				}
				e, err := nlp.LeastSquares(ctx, r, nil)
				if err != nil {
					continue
				}
				p.put(e.X)
				if c := p.cost(); c < least {
					least, best = c, e.X
				}
			}
		}
	}
	p.put(best)
	return &best[0] != &was[0]
}

func (p *tapedPlace) at() []float64 {
	var out []float64
	for _, k := range p.point {
		out = append(out, p.x[k])
	}
	return out
}

func (p *tapedPlace) put(at []float64) {
	for j, k := range p.point {
		p.x[k] = at[j]
	}
}

// take uses the measures that agree with where the point stands, and no others of it.
func (p *tapedPlace) take(used []bool) {
	for _, r := range p.rows {
		off := p.tape.residual(r, p.x, nil)
		used[p.tape.first+r] = off*off <= p.level
	}
}
