package ui

import (
	"context"
	"encoding/json"
	"fmt"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// job is a call that runs in a worker. The zero job runs nothing.
type job struct {
	cancel   context.CancelFunc
	call     *call // the one whose answer is waited for
	stopping bool
	started  time.Time
	pace     pace
	progress engine.Progress
}

// call tells one call of a job from another.
type call struct{ method string }

// progressTime is the least time between two looks at a job. More would cost the page
// its time without being seen.
const progressTime = 250 * time.Millisecond

func (j *job) running() bool { return j.cancel != nil }

// stopID is the id of the button that stops a job, in the place of the one that starts it: the
// keyboard goes there and back.
func stopID(start string) string { return start + "-stop" }

// start calls a method. Done is called with its answer on the page's goroutine; ctx must
// last as long as the page.
func (j *job) start(ctx app.Context, caller Caller, method string, d *study.Document, options any, done func(app.Context, json.RawMessage, error)) {
	run, cancel := context.WithCancel(context.Background())
	from := focused()
	mine := &call{method}
	*j = job{cancel: cancel, call: mine, started: time.Now()}
	j.tick(ctx, mine)
	ctx.Defer(func(app.Context) { focusAs(stopID(from), true) })
	ctx.Async(func() {
		raw, err := caller.Call(run, method, d, options, j.listener(ctx, mine))
		cancel()
		ctx.Dispatch(func(ctx app.Context) {
			if j.call == mine {
				at := focused()
				*j = job{}
				done(ctx, raw, err)
				if at == "" || at == stopID(from) {
					ctx.Defer(func(app.Context) { focusAs(from, true) })
				}
			}
		})
	})
}

// tick has the page show how long the call has run, as long as it does not say how far it is.
func (j *job) tick(ctx app.Context, mine *call) {
	ctx.After(time.Second, func(ctx app.Context) {
		if j.call == mine {
			j.tick(ctx, mine)
		}
	})
}

// listener takes in reports of progress, not more of them than can be seen.
func (j *job) listener(ctx app.Context, mine *call) func(engine.Progress) {
	last := time.Now()
	return func(p engine.Progress) {
		if time.Since(last) < progressTime {
			return
		}
		last = time.Now()
		ctx.Dispatch(func(app.Context) {
			if j.call == mine {
				if !p.Best.Valid() {
					p.Best = j.progress.Best // of a stage that has none of its own yet
				}
				j.progress = p
				j.pace.look(p.Fraction, last.Sub(j.started))
			}
		})
	}
}

// stop asks the call to end with the best it has.
func (j *job) stop() {
	if j.running() {
		j.stopping = true
		j.cancel()
	}
}

// drop ends the call, whose answer nobody wants any more.
func (j *job) drop() {
	if j.running() {
		j.cancel()
	}
	*j = job{}
}

// text says how far the job is and how long it still takes.
func (j *job) text() string {
	if j.stopping {
		return "Stopping; the best so far is kept."
	}
	left, ok := j.pace.left()
	switch {
	case !(j.pace.done > 0):
		return "Under way for " + seconds(time.Since(j.started)) + "."
	case !ok:
		return fmt.Sprintf("%.0f %% after %s.", 100*j.pace.done, seconds(j.pace.at))
	}
	return fmt.Sprintf("%.0f %%, %s left.", 100*j.pace.done, about(left))
}

// about writes a time that is not known well.
func about(d time.Duration) string {
	if d < leastTold {
		return seconds(d)
	}
	return "about " + seconds(d)
}

// leastTold is the shortest time that is told in a number.
const leastTold = time.Second / 2

// seconds writes a time in whole seconds or, where it is long, in minutes.
func seconds(d time.Duration) string {
	s := int(d.Round(time.Second) / time.Second)
	switch {
	case d < leastTold:
		return "less than a second"
	case s < 90:
		return fmt.Sprintf("%d s", s)
	}
	return fmt.Sprintf("%d min", (s+30)/60)
}

// render shows the progress and the button that stops the job.
func (j *job) render(id, best string) app.UI {
	bar := app.Elem("progress").ID(id+"-progress").Attr("max", "1").Aria("label", "Progress")
	if j.pace.done > 0 { // else nobody knows how far it is
		bar = bar.Attr("value", fmt.Sprintf("%.3f", j.progress.Fraction))
	}
	return app.Div().Class("job").Body(
		bar,
		app.P().Aria("live", "polite").Text(j.text()),
		only(best != "", func() app.UI {
			return app.P().Class("outcome").Body(app.Strong().Class("figure").Text(best), app.Span().Class("note").Text("best so far"))
		}),
		button("Stop", func(app.Context, app.Event) { j.stop() }, id).ID(stopID(id)).Disabled(j.stopping),
	)
}
