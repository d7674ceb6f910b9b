package ui

import (
	"math"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/solver"
)

// join finds the elements that are painted, and paints.
func (s *show) join(app.Context) {
	s.nodes, s.joined = findElements("#show .painted"), true
	s.Panels.Drawing.request()
}

// paint brings the cars to where the wheels stand. It is done in the frames of the sheet, which
// lies beneath and is not painted meanwhile.
func (s *show) paint() {
	if !s.joined {
		return
	}
	d := s.Panels.Drawing
	n, at := s.Panels.bench().numbers(), d.desk.View.Travel[movedSide(d.desk)]
	words, c, node := n.TravelWords(d.hand.snap(at, !d.play.on)), s.nodes.changes, 0
	spoken := words
	for i, m := range s.moving {
		err := m.To(d.desk.View.Travel)
		for _, path := range m.Paths() {
			c, node = c.path(node, path), node+1
		}
		spoken += "; " + carName(s.list[i])
		for _, side := range s.sides() {
			toe, change := m.Toe(side)
			if err != nil { // it stands still
				toe, change = solver.Angle(math.NaN()), solver.Angle(math.NaN())
			}
			text := n.ToeNumber(change)
			c = c.set(node, "", text).set(node+1, "", n.ToeNumber(toe))
			spoken, node = spoken+" "+text, node+2
		}
	}
	c = c.set(node, "value", attribute(at)).set(node+1, "", words)
	if !d.play.on { // else a reader would hear no end of it
		c = c.set(node, "aria-valuetext", spoken)
	}
	s.nodes.changes = c
	s.nodes.done()
}

// lift brings the wheels to a travel, mm, and gives the slider the keyboard, which is always in
// sight: a browser that scrolls to it takes what is looked at away.
func (s *show) lift(mm float64) {
	d := s.Panels.Drawing
	d.play.stop()
	t := d.desk.Session.Cars().Travels
	d.desk.View.Lift(movedSide(d.desk), math.Max(t[0], math.Min(t[len(t)-1], mm)))
	d.request()
	focusAs(showTravelID, true)
}

// slide follows the slider.
func (s *show) slide(ctx app.Context, _ app.Event) {
	s.lift(s.Panels.Drawing.hand.snap(ctx.JSSrc().Get("valueAsNumber").Float(), false))
}

// drag brings the wheels to where a picture is touched: its upper edge is full bump, its lower
// one full droop.
func (s *show) drag(ctx app.Context, e app.Event) {
	picture := e.Get("target").Call("closest", "#show .drawing")
	if e.Get("buttons").Int() != 1 || !picture.Truthy() {
		ctx.PreventUpdate()
		return
	}
	box := picture.Call("getBoundingClientRect")
	down := (e.Get("clientY").Float() - box.Get("top").Float()) / box.Get("height").Float()
	d := s.Panels.Drawing
	s.lift(d.hand.snap(travelAt(d.desk, 1-2*down), false))
}

// key moves the wheels by the arrow keys a spacer, with Shift ten, to the ends of their travel,
// or lets them play. What has keys of its own keeps them. Only at once can the browser be kept
// from scrolling by a key, so that this runs outside the page's goroutine.
func (s *show) key(ctx app.Context, e app.Value) {
	target := e.Get("target")
	if len(s.moving) == 0 || target.Call("matches", `input:not([type="range"])`).Bool() {
		return
	}
	key, d := e.Get("key").String(), s.Panels.Drawing
	arrow, ok := arrows[key]
	if e.Get("shiftKey").Bool() {
		arrow = arrow.Times(tenfold)
	}
	var do func(app.Context)
	switch {
	case ok:
		do = func(app.Context) { s.lift(d.desk.View.Travel[movedSide(d.desk)] + (arrow.X-arrow.Y)*d.desk.Spacer()) }
	case key == "Home":
		do = func(app.Context) { s.lift(math.Inf(-1)) }
	case key == "End":
		do = func(app.Context) { s.lift(math.Inf(1)) }
	case key == " " && !target.Call("matches", "button, summary").Bool():
		do = func(ctx app.Context) {
			s.tools().playOrStop(nil)
			s.Panels.Changed(ctx)
		}
	default:
		return
	}
	e.Call("preventDefault")
	ctx.Dispatch(do)
}
