package nlp

import (
	"fmt"
	"strings"
)

// Problem is what [Run] solves: make the objective of the model's residuals
// small within the variables' ranges, with every limit at most zero.
type Problem struct {
	Model     Model
	Variables []Variable // one for each of the model's variables
	Objective Objective
	// Start is the point from which improvement is counted and where the first
	// restart begins, moved into the ranges if it lies beyond. Nil means the
	// middle of each range.
	Start []float64
	// Also are further points from which searches begin.
	Also [][]float64
}

// ProblemError reports an input that no search can start from.
type ProblemError struct{ msg string }

func (e *ProblemError) Error() string { return "optimize: " + e.msg }

// ProblemErrorf returns a [*ProblemError]. An error among what is put into the format is
// quoted without the name of the package it comes from.
func ProblemErrorf(format string, args ...any) error {
	for i := range args {
		if err, ok := args[i].(error); ok {
			text := err.Error()
			if name, rest, found := strings.Cut(text, ": "); found && (name == "optimize" || name == "solver") {
				text = rest
			}
			args[i] = text
		}
	}
	return &ProblemError{fmt.Sprintf(format, args...)}
}

// check returns a [*ProblemError] for a problem that does not fit together.
func (p *Problem) check() error {
	if p.Model == nil {
		return ProblemErrorf("the problem has no model")
	}
	size := p.Model.Size()
	if err := size.check(); err != nil {
		return err
	}
	if len(p.Variables) != size.Variables {
		return ProblemErrorf("%d variables for a model of %d, want one for each", len(p.Variables), size.Variables)
	}
	for i, v := range p.Variables {
		if !v.valid() {
			return ProblemErrorf("variable %d (%s) has range %g to %g, want finite ends with the minimum below the maximum", i, v.Name, v.Min, v.Max)
		}
	}
	for _, x := range append([][]float64{p.Start}, p.Also...) {
		if x != nil && len(x) != size.Variables {
			return ProblemErrorf("start has %d values, want %d", len(x), size.Variables)
		}
	}
	return nil
}

// check returns a [*ProblemError] for a model that has nothing to solve.
func (s Size) check() error {
	if s.Variables < 1 || s.Residuals < 1 || s.Limits < 0 {
		return ProblemErrorf("model has %d variables, %d residuals and %d limits, want at least 1, 1 and 0", s.Variables, s.Residuals, s.Limits)
	}
	return nil
}

// unitStart returns Start in the unit box.
func (p *Problem) unitStart() []float64 { return p.unit(p.Start) }

// unit returns a point in the unit box, its middle for nil.
func (p *Problem) unit(x []float64) []float64 {
	u := make([]float64, len(p.Variables))
	for i, v := range p.Variables {
		u[i] = 0.5
		if x != nil {
			u[i] = v.ToUnit(x[i])
		}
	}
	return u
}
