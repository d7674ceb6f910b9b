package calls

import "toewright/internal/engine"

func candidate(name *string) Option {
	return car(name, "candidate", "`name` of the one candidate wanted; base is the car as the file gives it")
}

func motion(m *string) Option {
	return word(m, "motion", "wheels that move: both, one with the other held, or left up and right down", "both", "left", "right", "roll")
}

func side(name *string) Option {
	return word(name, "side", "wheel that is judged; both, of which the worse counts, where not given", "left", "right", "both")
}

// limit is the toe change by which cars are judged, and limited the figure held against it.
func limit(degrees **float64, does string) Option {
	return optional(degrees, "limit", "largest toe change in `degrees` that "+does+", in place of the study's")
}

func limited(figure *string) Option {
	return word(figure, "figure", "figure held against the limit", "peak", "rms")
}

// seed is of what is drawn at random.
func seed(value **int, what string) Option {
	return count(value, "seed", "whole `number` that the "+what+" are drawn from, in place of the study's")
}

func attitude(a *engine.Attitude) []Option {
	return []Option{
		number(&a.Steer, "steer", "steering input: along the rack's axis in the file's units, or degrees of the pitman arm"),
		number(&a.Heave, "heave", "height from which travel is counted, in the file's units, bump positive"),
		number(&a.Roll, "roll", "body roll from which travel is counted, in degrees, positive lowers the right side"),
	}
}

// target are the options that name the wanted curve.
func target(of *string, slope **float64) []Option {
	return []Option{
		car(of, "target-of", "`name` of the candidate, or base, whose toe change is wanted, in place of the study's target"),
		optional(slope, "target-slope", "wanted toe change in degrees by unit of travel, in place of the study's target"),
	}
}
