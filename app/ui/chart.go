package ui

import (
	"encoding/json"
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/worker"
	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

// chart is the map of the toe change over two parameters.
type chart struct {
	app.Compo
	Bench bench
	State *charting
}

// charting is a map that is drawn, or the last one. It outlives the panel.
type charting struct {
	job    job
	x, y   string // parameters; empty for the first two that the search frees
	result *engine.MapResult
	of     *study.Document
	fault  string
}

// Render shows what is laid along the axes, and the map.
func (c *chart) Render() app.UI {
	x, y := c.axes()
	list := c.parameters()
	return app.Section().Class("block").Body(
		app.H2().Text("Map of what lies about it"),
		app.P().Class("note").Text("The toe change over two parameters: heights of outer and inner ball make up for each other along a valley. Touch a place to go there."),
		app.Div().Class("row").Body(
			menu("map-x", "Across", x, list, func(_ app.Context, key string) { c.State.x = key }),
			menu("map-y", "Upward", y, list, func(_ app.Context, key string) { c.State.y = key }),
		),
		app.If(c.State.job.running(), func() app.UI { return c.State.job.render("map", "") }).
			Else(func() app.UI { return button("Draw the map", c.start).ID("map").Disabled(x == y) }),
		app.If(c.State.fault != "", func() app.UI { return app.P().Class("problem").Role("alert").Text(c.State.fault) }),
		app.If(c.State.result != nil, func() app.UI {
			return &chartPicture{Bench: c.Bench, Result: c.State.result, Stale: c.State.of != c.Bench.document()}
		}),
	)
}

// axes returns the parameters of the axes.
func (c *chart) axes() (x, y string) {
	free := model.SearchOf(c.Bench.document(), c.Bench.cars().Design).Variables
	keys := append([]string{}, model.MainParameters...)
	for i, v := range free {
		keys = slices.Insert(keys, i, v.Parameter)
	}
	keys = slices.DeleteFunc(keys, func(key string) bool {
		_, _, err := solver.FindParameter(c.Bench.cars().Design, key)
		return err != nil
	})
	x, y = c.State.x, c.State.y
	for _, key := range keys {
		switch {
		case x == "" && key != y:
			x = key
		case y == "" && key != x:
			y = key
		}
	}
	return x, y
}

// parameters lists what can be laid along an axis.
func (c *chart) parameters() []choice {
	var list []choice
	for _, p := range solver.Parameters(c.Bench.cars().Design) {
		list = append(list, choice{p.Key, p.Label})
	}
	return list
}

// start draws the map in a worker, about the selected car.
func (c *chart) start(app.Context, app.Event) {
	x, y := c.axes()
	doc := model.WithSearch(c.Bench.document(), c.Bench.cars().Design)
	shown := c.Bench.document()
	c.State.fault = ""
	o := engine.MapOptions{X: x, Y: y, Candidate: c.Bench.Desk.Selected().Name}
	c.State.job.start(c.Bench.Lasting, c.Bench.Caller, worker.Map, worker.Params[engine.MapOptions]{Study: doc, Options: o},
		func(_ app.Context, raw json.RawMessage, err error) {
			r := new(engine.MapResult)
			if err == nil {
				err = json.Unmarshal(raw, r)
			}
			if err != nil {
				c.State.fault = plain(err)
				return
			}
			c.State.result, c.State.of = r, shown
		})
}
