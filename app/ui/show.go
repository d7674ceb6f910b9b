package ui

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/scene"
	"toewright/internal/plot"
	"toewright/internal/study"
	"toewright/solver"
)

// show lays the reference and the selected car beside each other over the whole screen, both
// moving, for a customer or a camera.
type show struct {
	app.Compo
	Panels  *Panels
	Version uint64 // of the desk, so that go-app renders it anew

	of     *study.Document // that the rest is of
	list   []*model.Car
	moving []*scene.Moving // those of the list
	alike  bool            // both wheels of all of them do the same
	cars   string          // markup of the cars, with what is painted empty
	costs  string          // markup of the estimates
	fault  string

	nodes  elements // that are painted, once they are on the page
	joined bool
	stood  [2]float64 // travel of the wheels before
	deaf   func()     // ends the listening to keys
}

// The elements of the view that are known by name.
const (
	showID       = "show"
	showTravelID = "show-travel"
)

// showPaper is the size of a car's picture; the page draws it as large as there is room.
var showPaper = scene.Size{Width: 640, Height: 280}

// showButton opens the view.
func showButton(b bench, id, text string) app.UI {
	return button(text, func(ctx app.Context, _ app.Event) { b.Show(ctx) }).ID(id).Title("Before and after, over the whole screen")
}

// showCars opens the view. It moves by itself, unless the reader wants no motion.
func (p *Panels) showCars(ctx app.Context) {
	if p.Drawing == nil {
		return
	}
	p.menu = ""
	p.cover(showOver)(ctx)
	if !wantsNoMotion() {
		p.Drawing.play.start()
	}
}

// OnMount takes the screen.
func (s *show) OnMount(ctx app.Context) {
	s.stood = s.Panels.Desk.View.Travel
	s.Panels.Drawing.over = s.paint
	s.deaf = listen("keydown", func(e app.Value) { s.key(ctx, e) })
	ctx.Defer(func(ctx app.Context) {
		app.Window().Get("toewright").Call("cover", showID)
		s.join(ctx)
	})
}

// OnUpdate finds the elements anew, which may be others.
func (s *show) OnUpdate(ctx app.Context) { ctx.Defer(s.join) }

// OnDismount gives the sheet its frames back.
func (s *show) OnDismount() {
	s.deaf()
	s.Panels.Drawing.over = nil
	s.Panels.Drawing.request()
}

// close ends the view.
func (s *show) close(app.Context, app.Event) { app.Window().GetElementByID(showID).Call("close") }

// leave follows the end of the view, however it came: the wheels are where they were, and the
// keyboard too.
func (s *show) leave(ctx app.Context, _ app.Event) {
	s.Panels.Drawing.play.stop()
	s.Panels.Desk.View.Travel = s.stood
	s.Panels.uncover(ctx)
	s.Panels.Changed(ctx)
}

// take takes the cars as they stand, unless it has them.
func (s *show) take(b bench) {
	n, anew := b.numbers(), s.of != b.document()
	if anew {
		s.of, s.costs = b.document(), ""
		s.fault = faultOf(s.place(b))
	}
	alike := b.Desk.View.Motion == solver.BothWheels
	for _, car := range s.list {
		alike = alike && n.Alike(car)
	}
	if anew || alike != s.alike {
		s.alike, s.joined = alike, false
		s.cars = s.markup(n)
	}
}

// place places the cars, and estimates what they cost.
func (s *show) place(b bench) error {
	s.moving, s.list = nil, nil
	if err := b.cars().Err; err != nil {
		return err
	}
	before, after := b.reference(), b.Desk.Selected()
	s.list = []*model.Car{before, after}
	if after == before {
		s.list = s.list[:1]
	}
	var under *scene.Moving
	for _, car := range s.list {
		m, err := scene.NewMoving(car, under, b.cars().Travels, showPaper)
		if err != nil {
			return err
		}
		s.moving, under = append(s.moving, m), m
	}
	if after == before {
		return nil
	}
	list, err := b.Desk.Costs(before, after)
	if err == nil {
		s.costs = costTable(list)
	}
	return err
}

// sides are those whose figures are shown: one where both wheels do the same.
func (s *show) sides() []solver.Side {
	if s.alike {
		return solver.Sides[:1]
	}
	return solver.Sides[:]
}

// Render shows the cars, what moves them, and what they cost.
func (s *show) Render() app.UI {
	b := s.Panels.bench()
	s.take(b)
	t := s.tools()
	return app.Elem("dialog").ID(showID).Class("show").Aria("label", "Before and after").
		On("close", s.leave).On("pointerdown", s.drag).On("pointermove", s.drag).Body(
		app.Div().Class("show-box panels").Body(
			app.Div().Class("show-scroll").Body(
				app.Div().Class("show-head").Body(
					app.H2().Text("Toe change"),
					app.Details().Body(app.Summary().ID("show-unit").Text(b.numbers().ToeUnit()), display{b}.toe(), t.motion("show-")),
					button("Close", s.close).ID("show-close"),
				),
				only(s.fault != "", func() app.UI { return app.P().Class("problem").Text(s.fault) }),
				app.Raw(s.cars),
				only(s.costs != "", func() app.UI { return app.Raw(s.costs) }),
				app.P().Class("caution").Text(b.Desk.Caution()),
			),
			app.Div().Class("show-travel").Body(
				t.toggle("show-play", t.playWord(), t.Play.on, t.playOrStop).AutoFocus(true),
				app.Input().Type("range").ID(showTravelID).Class("painted").Aria("label", "Travel").Attr("step", "any").
					Min(travelAt(b.Desk, -1)).Max(travelAt(b.Desk, 1)).OnInput(s.slide),
				app.Strong().Class("painted"),
			),
		),
	)
}

// tools are those of the sheet, on the same wheels.
func (s *show) tools() toolLine { return toolLine{s.Panels, s.Panels.Desk, &s.Panels.Drawing.play} }

// markup writes the cars. What is painted stands in the order of [show.paint].
func (s *show) markup(n model.Numbers) string {
	b := []byte(`<div class="show-cars">`)
	for i, m := range s.moving {
		name := plot.AppendEscaped(nil, carName(s.list[i]))
		b = fmt.Appendf(b, `<section class="show-car"><h3>%s%s%s</h3><svg class="drawing" viewBox="0 0 %g %g" role="img" aria-label="%[3]s, rear view of axle">`,
			badgeMarkup(s.list[i].Index), [...]string{"Before: ", "After: "}[i], name, showPaper.Width, showPaper.Height)
		for _, class := range scene.MovingClasses {
			b = fmt.Appendf(b, `<path class="painted %s"/>`, class)
		}
		b = append(b, `</svg><div class="show-figures">`...)
		for _, side := range s.sides() {
			whose := side.String()
			if s.alike {
				whose = "left = right"
			}
			b = fmt.Appendf(b, `<div><strong class="painted"></strong><small>%s, %s; toe <span class="painted"></span></small></div>`, whose, n.ToeMark())
		}
		b = fmt.Appendf(b, `</div><p class="note">Farthest over the travel: %s</p></section>`, n.ToeText(m.Farthest()))
	}
	return string(append(b, "</div>"...))
}

// costTable writes the estimates.
func costTable(list []model.Cost) string {
	b := []byte(`<table class="figures show-costs"><caption>Estimates: kinematic, without tyre or driver; the worse wheel</caption>` +
		`<thead><tr><td></td><th scope="col">Before</th><th scope="col">After</th><td></td></tr></thead><tbody>`)
	for _, k := range list {
		b = fmt.Appendf(b, `<tr><th scope="row">%s, %s</th><td>%s</td><td>%s</td><td>%s</td></tr>`, k.Label, k.Unit, k.Before, k.After, k.Saves)
	}
	return string(append(b, "</tbody></table>"...))
}
