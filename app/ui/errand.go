package ui

import (
	"encoding/json"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/study"
)

// errand is a job of a panel that brings a result R, and what came of it. It outlives the
// panel.
type errand[R any] struct {
	job    job
	result *R
	of     *study.Document // the study as shown when the job was started
	fault  string
}

// start calls a method, of the study as the bench shows it now. Done is called with a
// result; what went wrong is told beside the button.
func (e *errand[R]) start(b bench, method string, d *study.Document, options any, done func(app.Context, *R)) {
	of := b.document()
	e.result, e.fault = nil, ""
	e.job.start(b.Lasting, b.Caller, method, d, options, func(ctx app.Context, raw json.RawMessage, err error) {
		r, err := answerOf[R](raw, err)
		if err != nil {
			e.fault = plain(err)
			return
		}
		e.result, e.of = r, of
		done(ctx, r)
	})
}

// answerOf reads what a call brought; nil and the reason where it brought nothing.
func answerOf[R any](raw json.RawMessage, err error) (*R, error) {
	r := new(R)
	if err == nil {
		err = json.Unmarshal(raw, r)
	}
	if err != nil {
		return nil, err
	}
	return r, nil
}

// faultOf is what is said of an error; empty of none.
func faultOf(err error) string {
	if err == nil {
		return ""
	}
	return plain(err)
}

// refuse tells why the job cannot be started; what it brought before is gone.
func (e *errand[R]) refuse(err error) { e.result, e.fault = nil, plain(err) }

// run shows the button that starts the job: see [runOf].
func (e *errand[R]) run(id string, start app.HTMLButton) app.UI {
	return runOf(&e.job, id, "", e.fault, start)
}

// runOf shows the button that starts a job or, while it runs, how far it is and how good
// the best so far is; and what went wrong, if anything did.
func runOf(j *job, id, best, fault string, start app.HTMLButton) app.UI {
	return app.Section().Class("run").Body(
		app.If(j.running(), func() app.UI { return j.render(id, best) }).Else(func() app.UI { return start }),
		only(fault != "", func() app.UI { return app.P().Class("problem").Role("alert").Text(fault) }),
	)
}
