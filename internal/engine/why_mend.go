package engine

import (
	"math"

	"toewright/solver"
)

// mender looks for moves of a car's parts that bring its toe nearer to the target in
// all set-ups at once.
type mender struct {
	*setUps
	axle      *solver.Axle
	selection solver.Selection
	options   WhyOptions
}

// everySetUp stands for all set-ups at once.
const everySetUp = -1

// parts returns the parameters of some keys, at the sides judged; none that the car lacks.
func (m *mender) parts(keys []string) (list []solver.Change) {
	for _, key := range keys {
		p, _, err := solver.FindParameter(m.design, key)
		if err != nil {
			return nil
		}
		c := solver.Change{Parameter: p}
		if p.Sided() {
			c.Sides = m.selection
		}
		list = append(list, c)
	}
	return list
}

// moved returns parts at values.
func moved(parts []solver.Change, values []float64) []solver.Change {
	out := append([]solver.Change(nil), parts...)
	for i := range out {
		out[i].Value = values[i]
	}
	return out
}

// file returns an amount of a part in file units.
func (m *mender) file(p solver.Change, mm float64) float64 { return m.doc.FromSolver(p.Parameter, mm) }

// step returns that of what can be made, mm.
func (m *mender) step() float64 { return m.doc.Units.Millimetres(m.options.Step) }

// total returns what the car changes of a part already, mm; of a part that it changes
// unlike at both sides, of the first.
func (m *mender) total(p solver.Change) float64 {
	for _, c := range m.axle.Changes() {
		if c.Parameter.Key == p.Parameter.Key && (c.Sides == p.Sides || c.Sides == solver.BothSides || p.Sides == solver.BothSides) {
			return c.Value
		}
	}
	return 0
}

// residuals returns the toe changes less target of each set-up with the car's parts moved;
// nil, and why, where one cannot be served.
func (m *mender) residuals(moves []solver.Change) (list [][]float64, problem string) {
	changes := append(append([]solver.Change(nil), m.axle.Changes()...), moves...)
	for i := range m.list {
		r, part := m.serveOne(&m.list[i], changes, m.axle.Hold())
		if part == nil {
			return nil, r.Problem
		}
		list = append(list, part)
	}
	return list, ""
}

// value returns the figure that is minimised over all set-ups.
func (m *mender) value(list [][]float64) float64 {
	var all []float64
	for _, r := range list {
		all = append(all, r...)
	}
	return m.all.Value(all)
}

const (
	// rateStep is the step by which rates are taken, mm.
	rateStep = 0.25
	// mendSteps bounds how often the car is solved anew at what its rates promise.
	mendSteps = 4
	// arrived is the last step of moves that have arrived, mm: a hundredth of what a shop
	// can hold.
	arrived = 1e-3
)

// line is the residuals of all set-ups at some moves, and their rates.
type line struct {
	at    [][]float64
	rates [][][]float64 // by part and set-up
}

// lineAt returns the residuals at values and their rates there; false where a set-up cannot
// be served.
func (m *mender) lineAt(parts []solver.Change, values []float64) (l line, ok bool) {
	if l.at, _ = m.residuals(moved(parts, values)); l.at == nil {
		return l, false
	}
	for k := range parts {
		aside := append([]float64(nil), values...)
		aside[k] += rateStep
		next, _ := m.residuals(moved(parts, aside))
		if next == nil {
			return l, false
		}
		for i := range next {
			for j := range next[i] {
				next[i][j] = (next[i][j] - l.at[i][j]) / rateStep
			}
		}
		l.rates = append(l.rates, next)
	}
	return l, true
}

// best returns the moves that serve all set-ups the best, or the i-th alone, within the
// parameters' usual bounds, mm. The toe of a wheel goes nearly straight with a ball's place:
// what is best of the straight lines is looked for among them, and the lines are drawn anew
// there.
func (m *mender) best(parts []solver.Change, i int) []float64 {
	values := make([]float64, len(parts))
	for range mendSteps {
		l, ok := m.lineAt(parts, values)
		if !ok {
			break
		}
		next := m.bestOf(&l, parts, values, i)
		far := 0.0
		for k := range next {
			far = max(far, math.Abs(next[k]-values[k]))
		}
		values = next
		if far < arrived {
			break
		}
	}
	return values
}

// bestOf returns the values at which straight lines through from come to the least.
func (m *mender) bestOf(l *line, parts []solver.Change, from []float64, i int) []float64 {
	values := append([]float64(nil), from...)
	var least func(k int) float64
	least = func(k int) float64 {
		if k == len(parts) {
			return m.lineValue(l, from, values, i)
		}
		now := m.total(parts[k])
		low, high := parts[k].Parameter.Min-now, parts[k].Parameter.Max-now
		return golden(low, high, arrived/4, func(x float64) float64 {
			values[k] = x
			return least(k + 1)
		}, &values[k])
	}
	least(0)
	return values
}

// lineValue returns the figure of straight lines at values.
func (m *mender) lineValue(l *line, from, values []float64, i int) float64 {
	var all []float64
	for up, r := range l.at {
		if i != everySetUp && i != up {
			continue
		}
		for j, x := range r {
			for k := range l.rates {
				x += l.rates[k][up][j] * (values[k] - from[k])
			}
			all = append(all, x)
		}
	}
	if i == everySetUp {
		return m.all.Value(all)
	}
	return m.o.Value(all)
}

// wants returns how far each set-up by itself wants a part moved, mm; none where there is
// but one set-up.
func (m *mender) wants(part []solver.Change) (list []float64) {
	if len(m.list) < 2 {
		return nil
	}
	for i := range m.list {
		list = append(list, m.best(part, i)[0])
	}
	return list
}

// golden returns the least value of a function with one valley, and where it lies, to a
// width, by the golden section.
func golden(low, high, width float64, f func(float64) float64, at *float64) float64 {
	ratio := (math.Sqrt(5) - 1) / 2
	a, b := high-ratio*(high-low), low+ratio*(high-low)
	fa, fb := f(a), f(b)
	for high-low > width {
		if fa <= fb {
			high, b, fb = b, a, fa
			a = high - ratio*(high-low)
			fa = f(a)
		} else {
			low, a, fa = a, b, fb
			b = low + ratio*(high-low)
			fb = f(b)
		}
	}
	*at = (low + high) / 2
	return f(*at)
}
