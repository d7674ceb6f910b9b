package ui

import (
	"math"

	"toewright/app/model"
	"toewright/app/scene"
	"toewright/internal/plot"
	"toewright/solver"
)

// drawing drives the sheet's picture: it takes what pointer and keys do, changes the
// desk once for each frame of the screen, and paints.
type drawing struct {
	desk    *model.Desk
	stage   *scene.Stage
	hand    hand
	painter *painter // nil until the picture is on the page
	size    scene.Size

	// edited is told that the desk was changed by hand: of a drag once the hand is still
	// or has let go, as what is rendered then takes longer than a frame has.
	edited func()
	// beside draws, in the frame of the sheet, what else follows the desk; nil if
	// nothing does.
	beside func()
	// over is painted in place of the sheet while it covers that; nil if nothing does.
	over func()
	// ask asks the screen for a frame.
	ask   func()
	asked bool
	stale bool // the picture is not what the desk has

	movedAt float64 // s, of the screen's time: when the pointer moved last
	figured bool    // the selected car's figure has changed and is not painted yet

	// problem says why the picture is not what the desk asks for; "" if it is.
	problem string

	moved *move // of the pointer, not yet followed
	play  player
	grips []grip
}

// move is where the pointer has gone.
type move struct {
	at   plot.Point
	free bool
}

// newDrawing returns a drawing of a desk.
func newDrawing(desk *model.Desk) *drawing {
	d := &drawing{desk: desk, stage: scene.NewStage(), stale: true, ask: func() {}, edited: func() {}}
	d.hand = hand{desk: desk, stage: d.stage}
	return d
}

// request asks for a frame that paints, once for as many changes as there are until it
// comes.
func (d *drawing) request() {
	d.stale = true
	d.wait()
}

// wait asks for a frame.
func (d *drawing) wait() {
	if !d.asked {
		d.asked = true
		d.ask()
	}
}

// frame follows the pointer and paints. Now is the time of the screen in seconds.
func (d *drawing) frame(now float64) {
	d.asked = false
	stale := d.stale
	d.stale = false
	if d.moved != nil {
		d.movedAt = now
	}
	d.follow()
	d.advance(now)
	if stale {
		d.paint()
	}
	d.settle(now)
}

// paint brings what the desk has to the page, if there is one.
func (d *drawing) paint() {
	if d.over != nil {
		d.over()
		return
	}
	if d.beside != nil {
		d.beside()
	}
	if d.painter == nil || !(d.size.Width > 0) {
		return
	}
	d.painter.paint(d.stage.Draw(d.desk, d.size), d.handles())
	if car := d.desk.Selected(); d.figured && car != nil {
		d.painter.canvas.figure(car.Index, keyFigure(d.desk, car))
		d.figured = false
	}
	d.complain(d.stage.Err())
}

// stillTime is how long the pointer rests, in seconds, before the page is told of what a
// drag has changed.
const stillTime = 0.25

// settle tells the page of what a drag has changed once the hand is still.
func (d *drawing) settle(now float64) {
	switch {
	case !d.desk.Moving:
	case now-d.movedAt >= stillTime:
		d.tell()
	default:
		d.wait()
	}
}

// tell tells the page that the desk was changed.
func (d *drawing) tell() {
	d.desk.Moving = false
	d.edited()
}

// alongside draws something in every frame of the sheet from now on; nil ends it.
func (d *drawing) alongside(draw func()) { d.beside = draw }

// complain tells the page of a problem that has come or gone.
func (d *drawing) complain(err error) {
	text := ""
	if err != nil {
		text = plain(err)
	}
	if text != d.problem {
		d.problem = text
		d.tell()
	}
}

// follow does what the pointer has done since the last frame.
func (d *drawing) follow() {
	if d.moved == nil {
		return
	}
	m := *d.moved
	d.moved = nil
	changed, err := d.hand.to(m.at, m.free)
	d.told(err)
	if changed {
		d.desk.Moving, d.figured = true, true
	}
}

// told announces an error.
func (d *drawing) told(err error) {
	if err != nil {
		d.desk.Said = plain(err)
	}
}

// down takes hold of what is under the pointer.
func (d *drawing) down(at plot.Point) bool {
	taken := d.hand.take(at)
	if taken {
		d.play.stop()
		d.request()
	}
	return taken
}

// move follows the pointer at the next frame; without anything held it names the
// joint that is under it.
func (d *drawing) move(at plot.Point, free bool) {
	if !d.hand.busy() {
		d.hover(at)
		return
	}
	d.moved = &move{at, free}
	d.request()
}

// hover points out the joint under the pointer.
func (d *drawing) hover(at plot.Point) {
	if d.desk.View.PointOut(d.stage.JointAt(at)) {
		d.request()
	}
}

// focus points out the joint whose handle has the focus of the keyboard.
func (d *drawing) focus(i int) {
	if handles := d.stage.Handles(); i >= 0 && i < len(handles) {
		d.hover(handles[i].At)
	}
}

// up lets go.
func (d *drawing) up() {
	d.follow()
	if d.hand.drop() {
		d.announce()
		d.tell()
		d.request()
	}
}

// key moves handle i by a key, and reports whether the key meant anything.
func (d *drawing) key(i int, key string, shift bool) bool {
	done, err := d.hand.press(i, key, shift)
	if done {
		d.told(err)
		d.tell()
		d.request()
	}
	return done
}

// announce says what the selected car has come to.
func (d *drawing) announce() {
	if c := d.desk.Selected(); c != nil && c.Err == nil {
		n := model.NumbersOf(d.desk.Session.Document())
		d.desk.Said = c.Name + ": RMS " + n.ToeText(c.Figures[solver.Left].RMS) + " left, " + n.ToeText(c.Figures[solver.Right].RMS) + " right"
	}
}

// handles returns how the handles stand in the picture.
func (d *drawing) handles() []grip {
	d.grips = d.grips[:0]
	for _, h := range d.stage.Handles() {
		d.grips = append(d.grips, d.gripOf(h))
	}
	return d.grips
}

// gripOf returns how a handle stands in the picture.
func (d *drawing) gripOf(h scene.Handle) grip {
	n := model.NumbersOf(d.desk.Session.Document())
	g := grip{X: math.Round(h.At.X*100) / 100, Y: math.Round(h.At.Y*100) / 100, Shown: true,
		Round: h.Kind == scene.PartHandle, Focus: h.Focus, Label: h.Label}
	g.Held = d.hand.held && d.hand.handle.Label == h.Label && d.hand.handle.Side == h.Side && d.hand.handle.Kind == h.Kind
	if h.Kind != scene.PartHandle {
		return d.travelGrip(g, n, h.Side)
	}
	for i, m := range h.Moves {
		p, ok := d.desk.Session.Cars().Parameter(m.Key)
		if !ok {
			continue
		}
		value := d.desk.Value(m.Key)
		text := p.Label + " " + n.Value(d.desk.Session.Document(), p, value)
		if i == 0 {
			g.Value, g.Spoken = value, text
			u := d.desk.Session.Document().Units
			g.Low, g.High = u.FromMillimetres(p.Min), u.FromMillimetres(p.Max)
		} else {
			g.Spoken += ", " + text
		}
	}
	return g
}

// travelGrip completes the grip of a wheel's travel.
func (d *drawing) travelGrip(g grip, n model.Numbers, side solver.Side) grip {
	u, t := n.Units, d.desk.Session.Cars().Travels
	g.Value = u.FromMillimetres(d.desk.View.Travel[side])
	if len(t) > 0 {
		g.Low, g.High = u.FromMillimetres(t[0]), u.FromMillimetres(t[len(t)-1])
	}
	g.Spoken = n.Travel(d.desk.View.Travel[side]) + ", toe change " + n.ToeText(d.stage.ToeChange(side))
	return g
}
