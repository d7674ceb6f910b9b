package ui

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/solver"
)

// controls are the sheet's own: how the wheels move and what is shown.
type controls struct {
	app.Compo

	Drawing *drawing
	Changed func(app.Context)

	open bool // what a narrow sheet keeps folded away is shown
}

// motions are the ways in which the wheels move together.
var motions = []choice{{"both", "Both wheels"}, {"left", "Left wheel"}, {"right", "Right wheel"}, {"roll", "Roll"}}

// faces are the views of a narrow sheet, in the order of [model.Face].
var faces = []choice{{"0", "Front view"}, {"1", "Plan view"}, {"2", "Side view"}, {"3", "Steering arm"}, {"4", "3D"}}

// Render shows the row of controls. A narrow sheet shows the first ones, and the rest
// when it is asked for.
func (c *controls) Render() app.UI {
	v := &c.Drawing.desk.View
	class := "controls"
	if c.open {
		class += " open"
	}
	return app.Div().Class(class).Role("toolbar").Aria("label", "Movement and views").Body(
		c.toggle("play", c.playWord(), c.Drawing.play.on, c.playOrStop),
		app.Button().Type("button").ID("level").Text("Level").Title("Both wheels at ride height, steering straight ahead").OnClick(c.level),
		app.Div().Class("face").Body(menu("face", "View", strconv.Itoa(int(v.Face)), faces, c.setFace)),
		app.Button().Type("button").ID("more").Class("toggle").Text("More").Aria("expanded", c.open).Aria("controls", "more-controls").
			OnClick(func(app.Context, app.Event) { c.open = !c.open }),
		app.Div().ID("more-controls").Class("more").Body(
			menu("motion", "Movement", v.Motion.String(), motions, c.setMotion),
			app.If(c.steers(), func() app.UI { return c.steer() }),
			app.Span().Class("spread"),
			c.toggle("orbit", "3D", v.Face == model.OrbitFace, (*model.View).Turn),
			c.toggle("instant", "Roll centre", v.Instant, func(v *model.View) { v.Instant = !v.Instant }).
				Title("Instant centres of both wheels, and the roll centre between them"),
			c.toggle("zoom", "Zoom", v.Zoomed, func(v *model.View) { v.Zoomed = !v.Zoomed }).
				Title("Toe scale of the selected car's curve; the others' show as far as they go"),
			c.toggle("alone", "Only selected", v.Alone, func(v *model.View) { v.Alone = !v.Alone }).
				Title("Curves of the base car and the selected one alone"),
		),
	)
}

func (c *controls) setFace(ctx app.Context, value string) {
	face, _ := strconv.Atoi(value) // the values are our own
	c.Drawing.desk.View.Face = model.Face(face)
	c.Changed(ctx)
}

// toggle is a button that stays pressed.
func (c *controls) toggle(id, text string, pressed bool, flip func(*model.View)) app.HTMLButton {
	return app.Button().Type("button").ID(id).Class("toggle").Text(text).Aria("pressed", pressed).
		OnClick(func(ctx app.Context, _ app.Event) {
			flip(&c.Drawing.desk.View)
			c.Changed(ctx)
		}, app.EventScope(id))
}

func (c *controls) playWord() string {
	if c.Drawing.play.on {
		return "Stop"
	}
	return "Play"
}

// playOrStop starts or stops the movement; a step of it for readers who want no
// animation.
func (c *controls) playOrStop(*model.View) {
	p := &c.Drawing.play
	switch {
	case p.on:
		p.stop()
	case wantsNoMotion():
		p.step(c.Drawing.desk)
	default:
		p.start()
	}
}

func (c *controls) level(ctx app.Context, _ app.Event) {
	c.Drawing.play.stop()
	c.Drawing.desk.View.Level()
	c.Changed(ctx)
}

func (c *controls) setMotion(ctx app.Context, value string) {
	m, err := solver.ParseMotion(value)
	if err == nil {
		v := &c.Drawing.desk.View
		v.Motion = m
		v.Lift(solver.Left, v.Travel[solver.Left])
	}
	c.Changed(ctx)
}

// gear returns the steering gear, nil where there is nothing to steer.
func (c *controls) gear() *solver.Gear {
	d := c.Drawing.desk.Session.Cars().Design
	if d == nil || d.Gear.Kind == solver.NoGear {
		return nil
	}
	return &d.Gear
}

func (c *controls) steers() bool { return c.gear() != nil }

// usualLock is how far the slider steers, in mm of a rack or degrees of a pitman arm.
const (
	usualRack   = 60.0
	usualPitman = 30.0
)

// steer is the slider of the steering input.
func (c *controls) steer() app.UI {
	most, value, unit := usualRack, c.Drawing.desk.View.Steer, "mm"
	if c.gear().Quantity() == solver.AngleQuantity {
		most, value, unit = usualPitman, solver.Angle(value).Degrees(), "°"
	}
	text := number.Decimal(value, 0) + " " + unit
	return app.Div().Class("steer").Body(
		app.Label().For("steer").Text("Steer"),
		app.Input().Type("range").ID("steer").Min(-most).Max(most).Step(1).Value(strconv.FormatFloat(value, 'f', 0, 64)).
			Aria("valuetext", text).OnInput(c.setSteer),
		app.Output().For("steer").Text(text),
	)
}

func (c *controls) setSteer(ctx app.Context, _ app.Event) {
	value, err := strconv.ParseFloat(ctx.JSSrc().Get("value").String(), 64)
	if err != nil {
		return
	}
	if c.gear().Quantity() == solver.AngleQuantity {
		value = solver.Deg(value).Radians()
	}
	c.Drawing.desk.View.Steer = value
	c.Changed(ctx)
}
