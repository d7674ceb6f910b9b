package ui

import (
	"fmt"
	"math"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/solver"
)

// bar shows the bounds within what is usual, and where the selected car stands. A pointer
// drags the bound that is nearer; the keyboard has the fields beside it.
func (v *variable) bar(p solver.Parameter, now float64) app.UI {
	low, high := v.span(p, now)
	least, most := v.bounds()
	at := func(x float64) float64 { return math.Round(1000*(x-low)/(high-low)) / 10 }
	scope := app.EventScope(v.Variable.Parameter)
	return app.Td().Class("bar").
		On("pointerdown", func(ctx app.Context, e app.Event) { v.hold(ctx, e, p, now) }, scope).
		On("pointermove", func(ctx app.Context, e app.Event) { v.drag(ctx, e, p, now) }, scope).
		On("pointerup", v.letGo, scope).On("pointercancel", v.letGo, scope).
		Body(app.Raw(fmt.Sprintf(`<svg class="bounds" viewBox="0 0 100 16" preserveAspectRatio="none" aria-hidden="true"><path class="whole" d="M0 8H100"/><path class="room" d="M%g 8H%[2]g"/><path class="ends" d="M%[1]g 3V13M%[2]g 3V13"/><path class="here" d="M%[3]g 1V15"/></svg>`,
			at(least), at(most), at(now))))
}

// span is from where to where the bar goes.
func (v *variable) span(p solver.Parameter, now float64) (low, high float64) {
	d := v.Bench.document()
	return min(d.FromSolver(p, p.Min), v.Variable.Min, now), max(d.FromSolver(p, p.Max), v.Variable.Max, now)
}

// under is the value under a pointer, in steps of what the shop can make or of a spacer,
// or of a tenth of a degree.
func (v *variable) under(ctx app.Context, e app.Event, p solver.Parameter, now float64) float64 {
	low, high := v.span(p, now)
	box := ctx.JSSrc().Call("getBoundingClientRect")
	share := (e.Get("clientX").Float() - box.Get("left").Float()) / box.Get("width").Float()
	step := v.Variable.Grid
	switch {
	case step > 0:
	case p.Quantity == solver.AngleQuantity:
		step = 0.1
	default:
		step = v.Bench.document().Units.FromMillimetres(v.Bench.Desk.Spacer())
	}
	x := math.Round((low+share*(high-low))/step) * step
	return max(low, min(x, high))
}

// bounds are those of the variable, with the one that is held where it is.
func (v *variable) bounds() (least, most float64) {
	least, most = v.Variable.Min, v.Variable.Max
	switch {
	case v.held < 0:
		least = v.to
	case v.held > 0:
		most = v.to
	}
	return least, most
}

// hold takes hold of the nearer bound.
func (v *variable) hold(ctx app.Context, e app.Event, p solver.Parameter, now float64) {
	if e.Get("button").Int() != 0 {
		return
	}
	b, x := &v.Variable, v.under(ctx, e, p, now)
	v.held, v.to = -1, b.Min
	if math.Abs(x-b.Max) < math.Abs(x-b.Min) {
		v.held, v.to = 1, b.Max
	}
	ctx.JSSrc().Call("setPointerCapture", e.Get("pointerId"))
	v.drag(ctx, e, p, now)
}

// drag moves the bound that is held, short of the other one.
func (v *variable) drag(ctx app.Context, e app.Event, p solver.Parameter, now float64) {
	if v.held == 0 {
		ctx.PreventUpdate()
		return
	}
	before := v.to
	v.to = v.under(ctx, e, p, now)
	if least, most := v.bounds(); !(least < most) {
		v.to = before
	}
}

// letGo takes over what was dragged.
func (v *variable) letGo(ctx app.Context, _ app.Event) {
	least, most := v.bounds()
	if v.held = 0; least == v.Variable.Min && most == v.Variable.Max {
		return
	}
	v.Bench.edit(ctx, func() error { return v.Bench.session().SetBounds(v.Variable.Parameter, least, most) })
}
