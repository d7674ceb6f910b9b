package solver

// OuterPath returns where the outer ball of the tie rod of side s, or of a solid
// axle's drag link, has to go for the toe to change by target along the travels:
// the ball's places in vehicle axes with the wheel held at that toe and the gear at
// rest. A nil target is flat. Travels are in mm, ascending; both wheels move. It
// returns a [*ReachError] where the linkage cannot follow.
//
// M. Raghavan, Suspension design for linear toe curves, J. Mech. Des. 126 (2004)
// 278-282, takes the centre of the sphere through these points as the inner ball.
func (x *Axle) OuterPath(ws *Workspace, s Side, travels []float64, target func(float64) Angle) ([]Vec, error) {
	h := heldWheel{x: x, ws: ws, side: s, target: target}
	if x.beam != nil {
		h.side = Side(x.beam.pulls)
	}
	var w wheelPose
	x.staticWheel(h.side, &w)
	h.static = float64(toeOf(w.spin)) - float64(wantedAt(h.target, 0))
	out := make([]Vec, len(travels))
	zero := splitAtZero(travels)
	if err := h.run(travels[zero:], 1, out[zero:]); err != nil {
		return nil, err
	}
	return out, h.run(travels[:zero], -1, out[:zero])
}

// heldWheel moves a wheel at given toes.
type heldWheel struct {
	x      *Axle
	ws     *Workspace
	side   Side
	target func(float64) Angle
	static float64 // toe that the target counts from
}

// run sets out to the places of the ball at travels, taken from static height
// outward: upward or, where direction is -1, downward.
func (h *heldWheel) run(travels []float64, direction int, out []Vec) error {
	h.ws.origin = state{}
	from := 0.0
	for k := range travels {
		i := k
		if direction < 0 {
			i = len(travels) - 1 - k
		}
		end := h.move(from, travels[i])
		if end != nil {
			return &ReachError{Side: h.side, Axle: h.x.beam != nil, Link: h.x.steerLink(h.side, end.link), Travel: travels[i], Share: end.s}
		}
		from = travels[i]
		out[i] = h.ball(from)
	}
	return nil
}

// move brings the wheel from one travel to another, its toe changing in
// proportion, and leaves the solution in the workspace.
func (h *heldWheel) move(from, to float64) *deadlock {
	toe := h.static + float64(wantedAt(h.target, from))
	held := heldToe{from: toe, rate: h.static + float64(wantedAt(h.target, to)) - toe}
	if b := h.x.beam; b != nil {
		p := &beamPath{b: b, from: [2]float64{from, from}, rate: [2]float64{to - from, to - from}}
		held.system, held.toeRow, held.row = p, p, len(b.links)
	} else {
		c := h.x.corners[h.side]
		p := &cornerPath{c: c, from: from, rate: to - from}
		held.system, held.toeRow, held.row = p, p, tieRow
	}
	h.ws.tracer.start(&held, &h.ws.origin)
	if end := h.ws.tracer.advance(1); end != nil {
		return end
	}
	h.ws.origin = h.ws.tracer.q
	return nil
}

// ball returns the place of the outer ball, in vehicle axes.
func (h *heldWheel) ball(travel float64) Vec {
	if b := h.x.beam; b != nil {
		at := b.poseOf(&h.ws.origin)
		return b.at(&at, b.dragOuter(&at))
	}
	c := h.x.corners[h.side]
	at := c.poseOf(&h.ws.origin, travel)
	return h.side.Mirrored(at.at(c.tie.b))
}
