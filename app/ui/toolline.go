package ui

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// toolLine is the stage's own: which cars it shows, how the wheels move and what is seen.
type toolLine struct {
	Panels *Panels
	Desk   *model.Desk
	Play   *player
}

// viewMenu is the key of the menu of the views.
const viewMenu = "view"

// motions are the ways in which the wheels move together.
var motions = []choice{{"both", "Both"}, {"roll", "Roll"}, {"left", "Left"}, {"right", "Right"}}

// motionsOf are the ways worth choosing from: of wheels that are alike one alone moves as
// the other does.
func motionsOf(d *study.Document, now solver.Motion) []choice {
	if d.Suspension.Right == nil && now != solver.RightWheel {
		return motions[:3]
	}
	return motions
}

// faces are the views of a narrow stage, in the order of [model.Face].
var faces = []choice{{"0", "Rear view"}, {"1", "Plan view"}, {"2", "Side view"}, {"3", "Steering arm"}, {"4", "3D"}}

// line is the row of it. A narrow one keeps motion and steering in the menu of the views.
func (t toolLine) line() app.UI {
	class := "view-box"
	if t.Panels.menu == viewMenu {
		class += " open"
	}
	return app.Div().Class("tool-line").Role("toolbar").Aria("label", "Cars, movement and views").Body(
		t.cars(),
		t.toggle("play", t.playWord(), t.Play.on, t.playOrStop),
		app.Div().Class("dropdown view-menu").Body(
			app.Button().Type("button").ID(viewMenu).Class("bare").Aria("expanded", t.Panels.menu == viewMenu).Aria("controls", "view-box").
				OnClick(func(app.Context, app.Event) { t.Panels.toggleMenu(viewMenu) }).
				Body(app.Text("View"), app.Span().Class("caret").Aria("hidden", true).Text("▾")),
			app.Div().ID("view-box").Class(class).Body(
				app.Div().Class("face").Body(menu("face", "View", strconv.Itoa(int(t.Desk.View.Face)), faces, t.setFace)),
				t.motion(""), only(t.steers(), t.steer), only(t.Panels.stands, t.views),
			),
		),
	)
}

// cars say which car is shown and against which.
func (t toolLine) cars() app.UI {
	v := &t.Desk.View
	list := yardstickChoices(t.Desk.Session.Cars())
	at := func(value string) int {
		i, _ := strconv.Atoi(value) // the values are our own
		return i
	}
	return app.Div().Class("cars-shown").Body(
		badge(v.Car),
		menu("selected", "Selected car", strconv.Itoa(v.Car), list, func(ctx app.Context, value string) {
			t.Desk.Select(at(value))
			t.Panels.Changed(ctx)
		}),
		app.Div().Class("against").Body(
			app.Span().Class("note").Text("against"),
			badge(v.Yardstick),
			menu("reference", "Reference", strconv.Itoa(v.Yardstick), list, func(ctx app.Context, value string) {
				t.Panels.refer(ctx, at(value))
			}),
		),
	)
}

// refer makes a car the reference.
func (p *Panels) refer(ctx app.Context, car int) {
	p.bench().edit(ctx, func() error { return p.Desk.SetYardstick(car) })
}

// motion is how the wheels move together, with a prefix to its buttons' ids.
func (t toolLine) motion(prefix string) app.UI {
	list := motionsOf(t.Desk.Session.Document(), t.Desk.View.Motion)
	return app.Div().Class("segments motion").Role("group").Aria("label", "Movement").Body(
		app.Range(list).Slice(func(i int) app.UI {
			m := list[i]
			return app.Button().Type("button").ID(prefix+"motion-"+m.Value).Text(m.Text).Aria("pressed", m.Value == t.Desk.View.Motion.String()).
				OnClick(func(ctx app.Context, _ app.Event) { t.setMotion(ctx, m.Value) }, app.EventScope(m.Value))
		}),
	)
}

// views are what is seen.
func (t toolLine) views() app.UI {
	v := &t.Desk.View
	return app.Div().Class("views").Body(
		app.Button().Type("button").ID("level").Text("Level").Title("Both wheels at ride height, steering straight ahead").OnClick(t.level),
		t.toggle("orbit", "3D", v.Face == model.OrbitFace, (*model.View).Turn).Title("The car from any side"),
		t.toggle("instant", "Roll centre", v.Instant, func(v *model.View) { v.Instant = !v.Instant }).
			Title("Instant centres of both wheels, and the roll centre between them"),
		t.toggle("zoom", "Zoom", v.Zoomed, func(v *model.View) { v.Zoomed = !v.Zoomed }).
			Title("Toe scale of the selected car's curve; the others' show as far as they go"),
		only(len(t.Desk.Session.Document().Loads) > 0, t.load),
		only(t.narrowTurns(), func() app.UI {
			return t.toggle("right-wheel", "Right wheel", v.Side == solver.Right, (*model.View).OtherSide).
				Title("The chart of the right wheel in place of the left one's")
		}),
		t.toggle("alone", "Selected and reference", v.Alone, func(v *model.View) { v.Alone = !v.Alone }).
			Title("Curves of the reference and the selected car alone"),
	)
}

// load is the load case whose forces are drawn.
func (t toolLine) load() app.UI {
	list := []choice{{"0", "none"}}
	for i, c := range t.Desk.Session.Document().Loads {
		list = append(list, choice{strconv.Itoa(i + 1), c.Name})
	}
	return menu("load-shown", "Forces of", strconv.Itoa(t.Desk.View.Load), list, func(ctx app.Context, value string) {
		i, _ := strconv.Atoi(value) // the values are our own
		t.Desk.ShowLoad(i)
		t.Panels.Changed(ctx)
	})
}

// narrowTurns reports whether a narrow stage has a chart of one wheel alone.
func (t toolLine) narrowTurns() bool { return t.Panels.Drawing.stage.OneWheel() }

func (t toolLine) setFace(ctx app.Context, value string) {
	face, _ := strconv.Atoi(value) // the values are our own
	t.Desk.View.Face = model.Face(face)
	t.Panels.Changed(ctx)
}

// toggle is a button that stays pressed.
func (t toolLine) toggle(id, text string, pressed bool, flip func(*model.View)) app.HTMLButton {
	return app.Button().Type("button").ID(id).Text(text).Aria("pressed", pressed).
		OnClick(func(ctx app.Context, _ app.Event) {
			flip(&t.Desk.View)
			t.Panels.Changed(ctx)
		}, app.EventScope(id))
}

func (t toolLine) playWord() string {
	if t.Play.on {
		return "Stop"
	}
	return "Play"
}

// playOrStop starts or stops the movement; a step of it for readers who want no
// animation.
func (t toolLine) playOrStop(*model.View) {
	switch {
	case t.Play.on:
		t.Play.stop()
	case wantsNoMotion():
		t.Play.step(t.Desk)
	default:
		t.Play.start()
	}
}

func (t toolLine) level(ctx app.Context, _ app.Event) {
	t.Play.stop()
	t.Desk.View.Level()
	t.Panels.Changed(ctx)
}

func (t toolLine) setMotion(ctx app.Context, value string) {
	if m, err := solver.ParseMotion(value); err == nil {
		t.Desk.View.Move(m)
	}
	t.Panels.Changed(ctx)
}

// gear returns the steering gear, nil where there is nothing to steer.
func (t toolLine) gear() *solver.Gear {
	d := t.Desk.Session.Cars().Design
	if d == nil || d.Gear.Kind == solver.NoGear {
		return nil
	}
	return &d.Gear
}

func (t toolLine) steers() bool { return t.gear() != nil }

// usualLock is how far the slider steers, in mm of a rack or degrees of a pitman arm.
const (
	usualRack   = 60.0
	usualPitman = 30.0
)

// steer is the slider of the steering input.
func (t toolLine) steer() app.UI {
	most, value, unit := usualRack, t.Desk.View.Steer, "mm"
	if t.gear().Quantity() == solver.AngleQuantity {
		most, value, unit = usualPitman, solver.Angle(value).Degrees(), "°"
	}
	text := number.Decimal(value, 0) + " " + unit
	return app.Div().Class("steer").Body(
		app.Label().For("steer").Text("Steer"),
		app.Input().Type("range").ID("steer").Min(-most).Max(most).Step(1).Value(strconv.FormatFloat(value, 'f', 0, 64)).
			Aria("valuetext", text).OnInput(t.setSteer),
		app.Output().For("steer").Text(text),
	)
}

func (t toolLine) setSteer(ctx app.Context, _ app.Event) {
	value, err := strconv.ParseFloat(ctx.JSSrc().Get("value").String(), 64)
	if err != nil {
		return
	}
	if t.gear().Quantity() == solver.AngleQuantity {
		value = solver.Deg(value).Radians()
	}
	t.Desk.View.Steer = value
	t.Panels.Changed(ctx)
}
