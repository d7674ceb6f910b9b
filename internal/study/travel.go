package study

import "math"

// Travel is a window of wheel travel and the grid on it: the multiples of Step from the
// static ride height, 0, and both ends of the window whatever the step.
type Travel struct {
	Bump  float64 `json:"bump" rule:"required,notnegative"`  // Bump is the wheel's travel upward, positive.
	Droop float64 `json:"droop" rule:"required,notnegative"` // Droop is the wheel's travel downward, positive.
	Step  float64 `json:"step,omitzero" rule:"positive"`     // Step is 0 for that of [DefaultTravel].
}

// DefaultTravel returns the window that holds where a study states none: 50 mm
// or 2 in both ways, by 5 mm or 1/4 in.
func DefaultTravel(u Units) Travel {
	if u == Inch {
		return Travel{Bump: 2, Droop: 2, Step: 0.25}
	}
	return Travel{Bump: 50, Droop: 50, Step: 5}
}

// Window returns the study's window of travel with every default filled in.
func (d *Document) Window() Travel { return d.Travel.orElse(DefaultTravel(d.Units)) }

// SearchWindow returns the window over which a search judges a curve: that of
// the search where it states one, else the study's.
func (d *Document) SearchWindow() Travel {
	if d.Search == nil {
		return d.Window()
	}
	return d.Search.Window.orElse(d.Window())
}

// orElse returns t with what it does not state taken from other.
func (t *Travel) orElse(other Travel) Travel {
	if t == nil {
		return other
	}
	w := *t
	if w.Step == 0 {
		w.Step = other.Step
	}
	return w
}

// steps returns the number of grid steps in the window.
func (t Travel) steps() float64 {
	return math.Ceil(t.Bump/t.Step) + math.Ceil(t.Droop/t.Step)
}
