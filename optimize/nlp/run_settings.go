package nlp

// Settings tune [Run]. The zero value, and nil, work.
type Settings struct {
	// Seed of the restarts; every value, 0 too, is a seed of its own. The same
	// seed gives the same result.
	Seed uint64
	// Restarts is how many local searches start from points spread over the
	// box. 0 means 24, or 8 for each variable where that is more; at most 96. Where
	// few of them end at the best value, up to four times as many are made.
	Restarts int
	// Evaluations is how often the model may be evaluated in all. 0 means 500
	// for each restart.
	Evaluations int
	// Iterations is how many steps one local search may make. 0 means 100.
	Iterations int
	// Known are searches of the same problem, seed and restarts that [Polish] has made.
	Known []Polished
	// Made, if not nil, returns the search from a start where somebody else makes it, once
	// it is made; false where the run is to make it, and where it was called off.
	Made func(start int) (Polished, bool)
	// Progress, if not nil, is called at every step, many times a millisecond
	// for a quick model, and must return soon.
	Progress func(Progress)
}

// Progress says how far a run has come.
type Progress struct {
	Evaluations int     // of the model, so far
	Best        float64 // objective of the best point so far; +Inf before there is one
	Fraction    float64 // of the work done, from 0 to 1
	// X are the values of the best point so far; nil before there is one, and where a search
	// does not say. They are not to be changed.
	X []float64
}

// Within returns settings of which the progress is that of a part of the work of s: from
// one fraction of it to another. Nil stays nil.
func (s *Settings) Within(from, to float64) *Settings {
	if s == nil || s.Progress == nil {
		return s
	}
	out := *s
	out.Progress = func(p Progress) {
		p.Fraction = from + (to-from)*p.Fraction
		s.Progress(p)
	}
	return &out
}

const (
	leastRestarts       = 24
	mostRestarts        = 96
	restartsPerVariable = 8

	evaluationsPerRestart = 500
	defaultIterations     = 100
)

// WithDefaults returns a copy of s, which may be nil, with the defaults for a
// number of variables put in.
func (s *Settings) WithDefaults(variables int) Settings {
	var out Settings
	if s != nil {
		out = *s
	}
	if out.Restarts <= 0 {
		out.Restarts = min(max(leastRestarts, restartsPerVariable*variables), mostRestarts)
	}
	if out.Evaluations <= 0 {
		out.Evaluations = evaluationsPerRestart * out.Restarts
	}
	if out.Iterations <= 0 {
		out.Iterations = defaultIterations
	}
	if out.Progress == nil {
		out.Progress = func(Progress) {}
	}
	return out
}
