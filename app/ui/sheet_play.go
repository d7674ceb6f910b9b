package ui

import (
	"math"

	"toewright/app/model"
	"toewright/solver"
)

// player moves the wheels through their travel and back.
type player struct {
	on    bool
	began float64 // s, of the screen's time; below 0 until the first frame
}

// period is the time of one whole movement, s: slow enough to read.
const period = 4.0

func (p *player) start() { p.on, p.began = true, -1 }

func (p *player) stop() { p.on = false }

// advance moves the wheels on while they play, and asks for the next frame.
func (d *drawing) advance(now float64) {
	if !d.play.on {
		return
	}
	if d.play.began < 0 {
		d.play.began = now
	}
	swing(d.desk, math.Sin((now-d.play.began)*2*math.Pi/period))
	d.request()
}

// swing brings the wheels to a part of their travel, -1 at full droop and 1 at full
// bump. With one wheel moving it is that wheel.
func swing(desk *model.Desk, part float64) {
	desk.View.Lift(movedSide(desk), travelAt(desk, part))
}

// travelAt returns the travel, mm, at a part of the whole, -1 at full droop and 1 at full bump.
func travelAt(desk *model.Desk, part float64) float64 {
	t := desk.Session.Cars().Travels
	switch {
	case len(t) == 0:
		return 0
	case part < 0:
		return -part * t[0]
	}
	return part * t[len(t)-1]
}

// movedSide is the wheel that is moved, which the other follows by the motion.
func movedSide(desk *model.Desk) solver.Side {
	if desk.View.Motion == solver.RightWheel {
		return solver.Right
	}
	return solver.Left
}

// stepPart is how far one press moves the wheels where motion is not wanted, as a part
// of a whole movement.
const stepPart = 1.0 / 8

// step brings the wheels one place further, for readers who want no animation.
func (p *player) step(desk *model.Desk) {
	p.began = math.Mod(math.Max(p.began, 0)+stepPart, 1)
	swing(desk, math.Sin(p.began*2*math.Pi))
}
