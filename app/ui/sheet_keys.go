package ui

import (
	"math"

	"toewright/app/scene"
	"toewright/internal/plot"
)

// tenfold is how many steps an arrow key with Shift is worth.
const tenfold = 10

// arrows are the ways of the arrow keys on the paper.
var arrows = map[string]plot.Point{
	"ArrowUp": {Y: -1}, "ArrowDown": {Y: 1}, "ArrowLeft": {X: -1}, "ArrowRight": {X: 1},
	"PageUp": {Y: -tenfold}, "PageDown": {Y: tenfold},
}

// press moves handle i by an arrow key, and reports whether the key meant anything
// to it.
func (h *hand) press(i int, key string, shift bool) (done bool, err error) {
	arrow, ok := arrows[key]
	if handles := h.stage.Handles(); !ok || i < 0 || i >= len(handles) {
		return false, nil
	}
	h.handle = h.stage.Handles()[i]
	if shift {
		arrow = arrow.Times(tenfold)
	}
	if h.handle.Kind != scene.PartHandle {
		h.nudgeTravel(arrow)
		return true, nil
	}
	return h.nudge(arrow)
}

// nudgeTravel lifts a wheel by steps; to the right is up, as of any slider.
func (h *hand) nudgeTravel(arrow plot.Point) {
	steps := arrow.X - arrow.Y
	side := h.handle.Side
	h.desk.View.Lift(side, h.stage.Within(side, h.desk.View.Travel[side]+steps*h.desk.Spacer()))
}

// nudge moves a ball by steps along that of its ways which the arrow points along
// best; arrows across the only way go up and down it.
func (h *hand) nudge(arrow plot.Point) (done bool, err error) {
	best, most := 0, 0.0
	for i, m := range h.handle.Moves {
		if m.Key == "" || m.Step.Length() == 0 {
			continue
		}
		if part := arrow.Dot(m.Step) / m.Step.Length(); math.Abs(part) > math.Abs(most)+1e-9 {
			best, most = i, part
		}
	}
	size := math.Abs(arrow.X) + math.Abs(arrow.Y)
	if math.Abs(most) < size/2 { // across: right and left are more and less
		most = arrow.X - arrow.Y
	}
	steps := math.Copysign(size, most)
	key := h.handle.Moves[best].Key
	mm := h.snap(h.value(best), true) + steps*h.desk.Spacer()
	return true, h.set(key, mm, "nudge "+key)
}
