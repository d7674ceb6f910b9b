package nlp

import "errors"

// Status says how a search or an estimate ended.
type Status uint8

// The ways to end. Only Converged is not early.
const (
	NotRun          Status = iota // the zero value: nothing has been tried
	Converged                     // a minimum, to the tolerance of the method
	Stalled                       // no step improves, yet the tolerance is not met
	IterationLimit                // the iterations ran out
	EvaluationLimit               // the evaluations ran out
	Cancelled                     // the context ended; the best so far is kept
	Infeasible                    // no point found holds all limits
	NotEvaluable                  // the model could be evaluated at no starting point
	RankDeficient                 // the data leave some direction undetermined
)

var statuses = [...]struct {
	name string
	err  error
}{
	NotRun:          {"not run", errors.New("optimize: not run")},
	Converged:       {"converged", nil},
	Stalled:         {"stalled", errors.New("optimize: no step improves the objective, but it has not converged")},
	IterationLimit:  {"iteration limit", errors.New("optimize: stopped at the iteration limit before convergence")},
	EvaluationLimit: {"evaluation limit", errors.New("optimize: stopped at the evaluation limit before convergence")},
	Cancelled:       {"cancelled", errors.New("optimize: cancelled before convergence")},
	Infeasible:      {"infeasible", errors.New("optimize: no point within the bounds was found to hold all limits")},
	NotEvaluable:    {"not evaluable", errors.New("optimize: the model can be evaluated at none of the starting points")},
	RankDeficient:   {"rank deficient", errors.New("optimize: the data leave at least one direction undetermined; give a prior or free fewer parameters")},
}

// String returns the name of the status in lower case.
func (s Status) String() string {
	if int(s) >= len(statuses) {
		return "unknown status"
	}
	return statuses[s].name
}

// Early reports whether the run ended without a minimum that can be trusted.
func (s Status) Early() bool { return s != Converged }

// Err returns nil for [Converged] and for every other status an error that says
// what happened.
func (s Status) Err() error {
	if int(s) >= len(statuses) {
		return errors.New("optimize: unknown status")
	}
	return statuses[s].err
}
