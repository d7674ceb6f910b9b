package optimize

import "toewright/solver"

// halvingCars is how many cars the effect of halving is judged on.
const halvingCars = 4000

// Halve estimates, by the linear model and the same draws throughout, by how much the
// yield rises when each of the series' tolerances is halved by itself.
func (s *Series) Halve(p *Spread) []float64 {
	xs := make([]float64, len(p.Errors))
	y, half := make([]float64, len(p.Nominal)), make([]float64, len(p.Nominal))
	gains := make([]float64, len(s.Tolerances))
	for n := range halvingCars {
		s.draw(p.Errors, n, xs)
		p.linear(xs, y)
		passes := s.Figure(y) <= s.Limit
		for k := range gains {
			if p.halved(half, y, xs, k); passes != (s.Figure(half) <= s.Limit) {
				gains[k] += gain(passes) / halvingCars
			}
		}
	}
	return gains
}

// gain is what a car that changes sides adds to the yield.
func gain(passed bool) float64 {
	if passed {
		return -1
	}
	return 1
}

// linear sets y to the toe changes of a car that is off by xs.
func (p *Spread) linear(xs, y []float64) {
	for i, row := range p.rates {
		y[i] = p.Nominal[i]
		for k, r := range row {
			y[i] += r * xs[k]
		}
	}
}

// halved sets z to the toe changes y of a car that is off by xs, were it off by half of
// what comes of tolerance k.
func (p *Spread) halved(z, y, xs []float64, k int) {
	copy(z, y)
	for e := range p.Errors {
		if p.Errors[e].stated != k {
			continue
		}
		for i := range z {
			z[i] -= p.rates[i][e] * xs[e] / 2
		}
	}
}

// Figure returns the series' figure of a car with toe changes ordered as those of
// [Spread].
func (s *Series) Figure(change []float64) solver.Angle {
	return CarFigures(change, len(wheelsOf(s.Sides))).Of(s.Measure)
}
