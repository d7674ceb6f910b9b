package optimize

import "toewright/solver"

// Halved says what holding one quantity twice as tightly would bring.
type Halved struct {
	Error int     // index among Spread.Errors
	Gain  float64 // of the yield: positive where it rises
}

// halvingCars is how many cars the effect of halving is judged on.
const halvingCars = 4000

// Halve estimates, by the linear model and the same draws throughout, how far the
// yield moves when each quantity's tolerance is halved by itself.
func (s *Series) Halve(p *Spread) []Halved {
	xs := make([]float64, len(p.Errors))
	pass := 0
	passHalved := make([]int, len(p.Errors))
	y, half := make([]float64, len(p.Nominal)), make([]float64, len(p.Nominal))
	for n := range halvingCars {
		s.draw(p.Errors, n, xs)
		p.linear(xs, y)
		if s.Figure(y) <= s.Limit {
			pass++
		}
		for k := range xs {
			if s.Figure(p.less(half, y, k, xs[k]/2)) <= s.Limit {
				passHalved[k]++
			}
		}
	}
	out := make([]Halved, len(p.Errors))
	for k := range out {
		out[k] = Halved{k, float64(passHalved[k]-pass) / halvingCars}
	}
	return out
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

// less sets z to the toe changes of a car whose quantity k is off by less than in y.
func (p *Spread) less(z, y []float64, k int, less float64) []float64 {
	for i, v := range y {
		z[i] = v - p.rates[i][k]*less
	}
	return z
}

// Figure returns the series' figure of a car with toe changes ordered as those of
// [Spread].
func (s *Series) Figure(change []float64) solver.Angle {
	return CarFigures(change, len(wheelsOf(s.Sides))).Of(s.Measure)
}
