package ui

import (
	"math"

	"toewright/app/model"
	"toewright/app/scene"
	"toewright/internal/plot"
	"toewright/solver"
)

// hand is what the pointer or the keys do to the sheet.
type hand struct {
	desk  *model.Desk
	stage *scene.Stage

	held    bool
	handle  scene.Handle
	from    plot.Point // where the pointer took hold
	start   [2]float64 // what the handle moves, when it was taken, in mm
	turning bool       // of the orbit view
	pencil  bool       // the target is drawn
	side    solver.Side
	last    plot.Point
}

// reach is how far from a handle a pointer takes hold of it, in CSS pixels: half of
// the 44 that a finger needs.
const reach = 22

// take takes hold of what is under the pointer, and reports whether there is
// anything.
func (h *hand) take(at plot.Point) bool {
	h.from, h.last = at, at
	if side, ok := h.stage.ChartAt(at); ok {
		return h.takeChart(side, at)
	}
	if i, ok := h.nearest(at); ok {
		h.hold(h.stage.Handles()[i])
		return true
	}
	if side, ok := h.stage.TyreAt(at); ok {
		return h.takeWheel(side)
	}
	h.turning = h.stage.OrbitAt(at)
	return h.turning
}

// nearest returns the handle nearest to the pointer.
func (h *hand) nearest(at plot.Point) (int, bool) {
	handles := h.stage.Handles()
	points := make([]plot.Point, len(handles))
	for i := range handles {
		points[i] = handles[i].At
	}
	return plot.NearestPoint(points, at, reach)
}

func (h *hand) hold(handle scene.Handle) {
	h.held, h.handle = true, handle
	h.stage.Holding = true
	for i := range h.start {
		h.start[i] = h.value(i)
	}
}

// takeWheel takes hold of a wheel.
func (h *hand) takeWheel(s solver.Side) bool { return h.takeKind(scene.WheelHandle, s) }

// takeChart takes the pencil, or brings the marker under the pointer and holds it.
func (h *hand) takeChart(s solver.Side, at plot.Point) bool {
	if h.desk.View.Drawing {
		h.pencil, h.side = true, s
		h.draw(at)
		return true
	}
	h.desk.View.Lift(s, h.snap(h.stage.TravelAt(s, at), false))
	return h.takeKind(scene.MarkerHandle, s)
}

func (h *hand) takeKind(k scene.HandleKind, s solver.Side) bool {
	for _, handle := range h.stage.Handles() {
		if handle.Kind == k && handle.Side == s {
			h.hold(handle)
			return true
		}
	}
	return false
}

// value returns what a handle's i-th move has moved, in mm.
func (h *hand) value(i int) float64 {
	key := h.handle.Moves[i].Key
	if key == "" {
		return h.desk.View.Travel[h.handle.Side]
	}
	return h.desk.Session.Document().Units.Millimetres(h.desk.Value(key))
}

// to follows the pointer; free leaves the steps of spacers out. It reports whether
// the car itself was changed.
func (h *hand) to(at plot.Point, free bool) (changed bool, err error) {
	defer func() { h.last = at }()
	switch {
	case h.turning:
		h.turn(at.Sub(h.last))
		return false, nil
	case h.pencil:
		h.draw(at)
		return true, nil
	case !h.held:
		return false, nil
	case h.handle.Kind != scene.PartHandle:
		h.lift(at, free)
		return false, nil
	}
	return h.drag(at, free)
}

// turnRate is the turn of the orbit view, in radians for a CSS pixel.
const turnRate = 0.01

// turn turns the orbit view, never past straight above or below.
func (h *hand) turn(step plot.Point) {
	v := &h.desk.View
	v.Yaw += step.X * turnRate
	v.Pitch = math.Max(-math.Pi/2, math.Min(math.Pi/2, v.Pitch+step.Y*turnRate))
}

// lift sets the travel of the wheel that is held.
func (h *hand) lift(at plot.Point, free bool) {
	travel := h.start[0] + along(h.handle.Moves[0].Step, at.Sub(h.from), 0)
	if h.handle.Kind == scene.MarkerHandle {
		travel = h.stage.TravelAt(h.handle.Side, at)
	}
	h.desk.View.Lift(h.handle.Side, h.stage.Within(h.handle.Side, h.snap(travel, free)))
}

// drag sets the parameters of the ball that is held.
func (h *hand) drag(at plot.Point, free bool) (changed bool, err error) {
	for i, m := range h.handle.Moves {
		if m.Key == "" {
			continue
		}
		mm := h.snap(h.start[i]+along(m.Step, at.Sub(h.from), leastGain), free)
		if mm == h.value(i) {
			continue
		}
		changed = true
		if err := h.set(m.Key, mm, "drag "+h.handle.Label); err != nil {
			return true, err
		}
	}
	return changed, nil
}

// set sets a parameter of the selected car, in mm, within its usual bounds.
func (h *hand) set(key string, mm float64, run string) error {
	p, ok := h.desk.Session.Cars().Parameter(key)
	if !ok {
		return nil
	}
	mm = math.Max(p.Min, math.Min(p.Max, mm))
	return h.desk.Set(key, h.desk.Session.Document().Units.FromMillimetres(mm), run)
}

// leastGain is the least way of the pointer, in CSS pixels, for a millimetre of a
// part: on a drawing of the whole car the ball itself moves less, and the hand keeps
// a feeling for a spacer.
const leastGain = 1.0

// along returns how many mm a pointer has moved in the direction of a step, which is
// that of 1 mm on the paper.
func along(step, moved plot.Point, least float64) float64 {
	length := step.Length()
	if length == 0 {
		return 0
	}
	return moved.Dot(step) / length / math.Max(length, least)
}

// snap rounds to the steps of spacers, unless the hand is free.
func (h *hand) snap(mm float64, free bool) float64 {
	if free {
		return mm
	}
	step := h.desk.Spacer()
	return math.Round(mm/step) * step
}

// drop lets go and reports whether there was anything held.
func (h *hand) drop() bool {
	held := h.held || h.turning || h.pencil
	if h.held || h.pencil {
		h.desk.Session.EndRun()
	}
	h.held, h.turning, h.pencil = false, false, false
	h.stage.Holding = false
	return held
}

// busy reports whether anything is held.
func (h *hand) busy() bool { return h.held || h.turning || h.pencil }

// index returns the number of the handle that is held, or -1.
func (h *hand) index() int {
	if !h.held {
		return -1
	}
	for i, other := range h.stage.Handles() {
		if other.Kind == h.handle.Kind && other.Side == h.handle.Side && other.Label == h.handle.Label && other.Moves[0].Key == h.handle.Moves[0].Key {
			return i
		}
	}
	return -1
}

// draw brings the target under the pencil.
func (h *hand) draw(at plot.Point) {
	from, to := h.stage.SampleAt(h.side, h.last), h.stage.SampleAt(h.side, at)
	_ = h.desk.DrawTarget(from, to) // a study that cannot be copied keeps its target
}
