package optimize

import (
	"math"
)

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
	y := make([]float64, len(p.Nominal))
	for n := range halvingCars {
		s.draw(p.Errors, n, xs)
		p.linear(xs, y)
		if s.figure(y) <= float64(s.Limit) {
			pass++
		}
		for k := range xs {
			if s.figureLess(p, y, k, xs[k]/2) <= float64(s.Limit) {
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

// figure returns the peak or the root mean square of toe changes.
func (s *Series) figure(y []float64) float64 {
	peak, sum := 0.0, 0.0
	for _, v := range y {
		peak = math.Max(peak, math.Abs(v))
		sum += v * v
	}
	if s.Measure == Peak {
		return peak
	}
	return math.Sqrt(sum / float64(len(y)))
}

// figureLess returns the figure of a car whose quantity k is off by less than
// in y.
func (s *Series) figureLess(p *Spread, y []float64, k int, less float64) float64 {
	peak, sum := 0.0, 0.0
	for i, v := range y {
		v -= p.rates[i][k] * less
		peak = math.Max(peak, math.Abs(v))
		sum += v * v
	}
	if s.Measure == Peak {
		return peak
	}
	return math.Sqrt(sum / float64(len(y)))
}
