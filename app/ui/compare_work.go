package ui

import (
	"context"
	"errors"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// comparing is what the step Compare shows and how. Figures that take longer than a frame
// are asked of the workers, car by car, and those of a series last, when nobody edits. It
// outlives the panel.
type comparing struct {
	order       model.CompareOrder
	differences bool
	rows        map[string]bool // those that were chosen or left out, by key
	choosing    bool            // the list of rows is open
	pinned      [2]string       // names of the cars that are laid over each other; empty follows
	laid        bool            // on a phone, the drawing is open

	known map[answerKey]*model.CarAnswer
	runs  map[runKey]context.CancelFunc
	quiet bool // nobody has edited for a while
	at    *study.Document
	waits int // counts the waits for quiet
}

// answerKey tells a car's solution, and that of the car whose curve is wanted.
type answerKey struct{ car, target engine.Solution }

// runKey is a call that is under way.
type runKey struct {
	answerKey
	method string
}

// key returns what the answers about a car hold for.
func (c *comparing) key(b bench, car *model.Car) answerKey {
	k := answerKey{car: car.Solution()}
	if i := b.session().TargetCar(); i >= 0 {
		if of := b.cars().At(i); of != nil {
			k.target = of.Solution()
		}
	}
	return k
}

// answers returns what is known of each car, by its index.
func (c *comparing) answers(b bench) map[int]*model.CarAnswer {
	out := map[int]*model.CarAnswer{}
	for _, car := range b.cars().List {
		if a := c.known[c.key(b, car)]; a != nil {
			out[car.Index] = a
		}
	}
	return out
}

// follow asks for what is not known yet of the cars as they stand, the selected one first,
// and calls off what was asked of cars that have changed.
func (c *comparing) follow(b bench) {
	if b.cars().Err != nil {
		c.stop()
		return
	}
	if doc := b.document(); doc != c.at {
		c.at, c.quiet = doc, false
		c.rest(b)
	}
	c.forget(b)
	for _, ask := range []func(bench, *model.Car, *model.CarAnswer) bool{c.compare, c.loads, c.series} {
		if !c.askAll(b, ask) {
			return
		}
	}
}

// rest waits until nobody has edited for a while.
func (c *comparing) rest(b bench) {
	c.waits++
	mine := c.waits
	b.Lasting.After(settled, func(ctx app.Context) {
		if c.waits == mine {
			c.quiet = true
			c.follow(b)
		}
		ctx.PreventUpdate()
	})
}

// forget drops the answers about cars that are gone or have changed, and calls off what is
// asked of them.
func (c *comparing) forget(b bench) {
	current := map[answerKey]bool{}
	for _, car := range b.cars().List {
		current[c.key(b, car)] = true
	}
	for k := range c.known {
		if !current[k] {
			delete(c.known, k)
		}
	}
	for k, cancel := range c.runs {
		if !current[k.answerKey] {
			cancel()
			delete(c.runs, k)
		}
	}
}

// stop calls off all that is under way.
func (c *comparing) stop() {
	for k, cancel := range c.runs {
		cancel()
		delete(c.runs, k)
	}
	c.at = nil // what is not known yet is asked for when the panel is opened again
	c.waits++
}

// askAll asks for one kind of answer of all cars, as many at once as there are workers. It
// reports whether nothing of the kind is still to come.
func (c *comparing) askAll(b bench, ask func(bench, *model.Car, *model.CarAnswer) bool) bool {
	list := b.cars().List
	if s := b.Desk.Selected(); s != nil {
		list = append([]*model.Car{s}, list...)
	}
	all := true
	for _, car := range list {
		if car.Err == nil {
			all = ask(b, car, c.answer(c.key(b, car))) && all
		}
	}
	return all
}

// answer returns what is known of a key, to be filled.
func (c *comparing) answer(k answerKey) *model.CarAnswer {
	if c.known == nil {
		c.known, c.runs = map[answerKey]*model.CarAnswer{}, map[runKey]context.CancelFunc{}
	}
	if c.known[k] == nil {
		c.known[k] = &model.CarAnswer{}
	}
	return c.known[k]
}

// compare asks for a car's figures, set-ups and limits.
func (c *comparing) compare(b bench, car *model.Car, a *model.CarAnswer) bool {
	if a.Sides != nil || a.CompareFault != "" {
		return true
	}
	o := engine.CompareOptions{Candidate: car.Name, Yardstick: car.Name}
	ask(c, b, car, calls.Compare, o, &a.CompareFault, func(r *engine.CompareResult) {
		a.Sides = r.Cars
		if len(r.Served) > 0 {
			a.Served = &r.Served[0]
		}
	})
	return false
}

// loads asks for the forces under the study's load cases.
func (c *comparing) loads(b bench, car *model.Car, a *model.CarAnswer) bool {
	if a.Loads != nil || a.LoadsFault != "" || b.document().ReadyForLoads() != nil {
		return true
	}
	ask(c, b, car, calls.Loads, engine.LoadsOptions{Candidate: car.Name}, &a.LoadsFault, func(r *engine.LoadsResult) { a.Loads = r })
	return false
}

// series asks for the share of cars that pass within the tolerances, while nobody edits.
func (c *comparing) series(b bench, car *model.Car, a *model.CarAnswer) bool {
	if a.Series != nil || a.SeriesFault != "" || len(b.document().Tolerances) == 0 || !c.quiet {
		return true
	}
	if len(c.runs) > 0 {
		return false // one by one: all workers build each series
	}
	limit := model.YieldOf(b.document()).Limit
	ask(c, b, car, calls.Tolerance, engine.ToleranceOptions{Candidate: car.Name, Limit: &limit}, &a.SeriesFault, func(r *engine.ToleranceResult) { a.Series = r })
	return false
}

// ask makes a call about a car, unless it is under way or all workers are busy with the like.
func ask[R any](c *comparing, b bench, car *model.Car, method string, o any, fault *string, take func(*R)) {
	k := runKey{c.key(b, car), method}
	if c.runs[k] != nil || len(c.runs) >= max(b.Caller.Size(), 1) {
		return
	}
	run, cancel := context.WithCancel(context.Background())
	c.runs[k] = cancel
	doc := b.document()
	b.Lasting.Async(func() {
		raw, err := b.Caller.Call(run, method, doc, o, nil)
		gone := run.Err() != nil
		cancel()
		b.Lasting.Dispatch(func(ctx app.Context) {
			if gone { // what has come of it is of a car that is no more
				ctx.PreventUpdate()
				return
			}
			delete(c.runs, k)
			r, err := answerOf[R](raw, err)
			switch {
			case err == nil:
				take(r)
			case !errors.Is(err, context.Canceled):
				*fault = plain(err)
			}
			c.follow(b)
		})
	})
}
