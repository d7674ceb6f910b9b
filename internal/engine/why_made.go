package engine

import (
	"math"

	"toewright/solver"
)

// made returns moves that can be made, of which the car's totals are whole steps, and the
// first part's moves between which every set-up keeps the limit with the others made. Where
// such moves are there, but no whole step lies among them, the moves stay exact.
func (m *mender) made(parts []solver.Change, exact []float64) (made []float64, bounds [2]float64, outside bool) {
	made = append([]float64(nil), exact...)
	step := m.step()
	if step > 0 {
		made = m.stepped(parts, exact, step)
	}
	bounds = m.within(parts, made)
	if step > 0 && bounds[0] <= bounds[1] && (made[0] < bounds[0] || made[0] > bounds[1]) {
		return append([]float64(nil), exact...), m.within(parts, exact), true
	}
	return made, bounds, false
}

// stepped returns the best of the moves next to exact ones that make the totals whole
// steps.
func (m *mender) stepped(parts []solver.Change, exact []float64, step float64) []float64 {
	best, least := append([]float64(nil), exact...), math.Inf(1)
	for corner := range 1 << len(parts) {
		values := append([]float64(nil), exact...)
		for k := range parts {
			now := m.total(parts[k])
			steps := math.Floor((now+exact[k])/step + stepSlack)
			if corner>>k&1 == 1 {
				steps++
			}
			values[k] = steps*step - now
		}
		served, _ := m.residuals(moved(parts, values))
		if served == nil {
			continue
		}
		if v := m.value(served); v < least {
			best, least = values, v
		}
	}
	return best
}

// stepSlack is the part of a step by which a total may miss a whole one.
const stepSlack = 1e-6

// within returns the moves of the first part, mm, between which every set-up keeps the
// limit with the other parts at values: from more to less where none does.
func (m *mender) within(parts []solver.Change, values []float64) [2]float64 {
	low, high := math.Inf(-1), math.Inf(1)
	l, ok := m.lineAt(parts, values)
	limit := solver.Deg(m.options.Limit).Radians()
	if !ok || !(limit > 0) {
		return [2]float64{1, -1}
	}
	for up, r := range l.at {
		for j, x := range r {
			rate := l.rates[0][up][j]
			if math.Abs(rate) < noRate {
				if math.Abs(x) > limit {
					return [2]float64{1, -1}
				}
				continue
			}
			a, b := values[0]+(-limit-x)/rate, values[0]+(limit-x)/rate
			low, high = max(low, min(a, b)), min(high, max(a, b))
		}
	}
	return [2]float64{low, high}
}

// noRate is a rate of toe by a ball's place, in radians by mm, that is none: at travel 0.
const noRate = 1e-12
