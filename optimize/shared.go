package optimize

import "toewright/optimize/nlp"

// What the numerical core calls by the same names: see there.
type (
	// Measure says how the toe changes of a wheel become one number.
	Measure = nlp.Measure
	// Across says how the figures of several set-ups become one.
	Across = nlp.Across
	// Settings tune a search.
	Settings = nlp.Settings
	// Progress says how far a search has come.
	Progress = nlp.Progress
)

// The measures, and the ways across set-ups.
const (
	RMS   = nlp.RMS
	Peak  = nlp.Peak
	Mean  = nlp.Mean
	Worst = nlp.Worst
)
