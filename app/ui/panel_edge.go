package ui

import (
	"math"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// panelEdge is the left edge of the panel, which a pointer or the arrow keys move.
type panelEdge struct {
	app.Compo

	width float64 // of the panel, CSS pixels
	held  bool
}

// Least widths of the panel and of the stage beside it, and the step of an arrow key, in
// CSS pixels.
const (
	leastPanel = 360.0
	leastStage = 480.0
	edgeStep   = 16.0
)

// OnMount looks how wide the panel is by its style.
func (e *panelEdge) OnMount(ctx app.Context) {
	ctx.Defer(func(ctx app.Context) {
		e.width = panelWidth()
		ctx.Update()
	})
}

// panelWidth returns the width of the panel on the screen, 0 where there is none.
func panelWidth() float64 {
	side := app.Window().Get("document").Call("querySelector", ".side")
	if !side.Truthy() {
		return 0
	}
	return side.Call("getBoundingClientRect").Get("width").Float()
}

// Render draws the edge.
func (e *panelEdge) Render() app.UI {
	return app.Div().ID("panel-edge").Class("panel-edge").Role("separator").TabIndex(0).
		Aria("orientation", "vertical").Aria("label", "Width of the panel").Aria("controls", "panel").
		Aria("valuenow", strconv.FormatFloat(e.width, 'f', 0, 64)).
		OnKeyDown(e.key).
		On("pointerdown", e.take).On("pointermove", e.follow).On("pointerup", e.drop).On("pointercancel", e.drop)
}

func (e *panelEdge) take(ctx app.Context, event app.Event) {
	ctx.JSSrc().Call("setPointerCapture", event.Get("pointerId"))
	event.PreventDefault()
	e.held = true
}

func (e *panelEdge) follow(ctx app.Context, event app.Event) {
	ctx.PreventUpdate()
	if e.held {
		e.set(app.Window().Get("innerWidth").Float() - event.Get("clientX").Float())
	}
}

func (e *panelEdge) drop(app.Context, app.Event) { e.held = false }

// key moves the edge by a step.
func (e *panelEdge) key(ctx app.Context, event app.Event) {
	by := map[string]float64{"ArrowLeft": edgeStep, "ArrowRight": -edgeStep}[event.Get("key").String()]
	if by == 0 {
		ctx.PreventUpdate()
		return
	}
	event.PreventDefault()
	e.set(panelWidth() + by)
}

// set gives the panel a width, as far as it and the stage have room.
func (e *panelEdge) set(width float64) {
	most := math.Max(leastPanel, app.Window().Get("innerWidth").Float()-leastStage)
	e.width = math.Min(most, math.Max(leastPanel, math.Round(width)))
	style := app.Window().Get("document").Get("documentElement").Get("style")
	style.Call("setProperty", "--panel-own", strconv.FormatFloat(e.width, 'f', 0, 64)+"px")
}
