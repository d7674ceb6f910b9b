package optimize

import "toewright/solver"

// Outlook is what the linear model of a series says of its cars, without building
// them: enough to set one set-up beside another.
type Outlook struct {
	// Nominal is the figure of the car as drawn; Percentile95 that which 95 of a
	// hundred cars do not exceed.
	Nominal, Percentile95 solver.Angle
	Yield                 float64 // share of the cars within the series' limit
}

// outlookCars is how many cars an outlook draws: their 95th percentile is uncertain
// by some 1 % of the spread.
const outlookCars = 10_000

// Outlook draws cars by the series' seed, the same for every series that has the
// same tolerances.
func (s *Series) Outlook(p *Spread) Outlook {
	xs, y := make([]float64, len(p.Errors)), make([]float64, len(p.Nominal))
	figures := make([]float64, outlookCars)
	pass := 0
	for n := range figures {
		s.draw(p.Errors, n, xs)
		p.linear(xs, y)
		figure := s.Figure(y)
		if figures[n] = figure.Radians(); figure <= s.Limit {
			pass++
		}
	}
	return Outlook{
		Nominal:      s.Figure(p.Nominal),
		Percentile95: solver.Angle(Quantiles(figures, 0.95)[0]),
		Yield:        float64(pass) / outlookCars,
	}
}
