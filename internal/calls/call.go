package calls

import (
	"context"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// Call is one question about a study.
type Call struct {
	Name    string   // of the command, the path and the worker's method
	Summary string   // one line, without a full stop
	Result  any      // a zero of the type that it is answered with
	Types   []string // media types of the [File] that it is answered with; nil of figures
	// New returns a request for it, with none of its options given.
	New func() *Request
}

// Request is a call that is being made ready: its options are set one by one or, as
// JSON, at once in Values.
type Request struct {
	Options []Option
	Values  any // points to the options as package engine has them
	// Ask answers the request for a study. Report, which may be nil, hears of the
	// progress of a call that takes long.
	Ask func(ctx context.Context, d *study.Document, report func(engine.Progress)) (any, error)
}

// call returns the entry of what do answers. Options, which may be nil, lists the options
// that a user sets; progress, which may be nil too, finds among them whom to report to.
func call[O, R any](name, summary string, do func(context.Context, *study.Document, O) (R, error), options func(*O) []Option, progress func(*O) *func(engine.Progress)) Call {
	var none R
	return Call{name, summary, none, nil, func() *Request {
		o := new(O)
		r := &Request{Values: o}
		if options != nil {
			r.Options = options(o)
		}
		r.Ask = func(ctx context.Context, d *study.Document, report func(engine.Progress)) (any, error) {
			if progress != nil {
				*progress(o) = report
			}
			answer, err := do(ctx, d, *o)
			return answer, engine.InUnits(err, d)
		}
		return r
	}}
}
