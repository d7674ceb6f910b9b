package scene

import (
	"toewright/internal/plot"
	"toewright/solver"
)

// HandleKind says what a handle moves.
type HandleKind uint8

// The kinds of handles.
const (
	PartHandle   HandleKind = iota // a ball whose place is a parameter
	WheelHandle                    // a wheel, by its travel
	MarkerHandle                   // the marker on a wheel's curve, by its travel
)

// Handle is a place of the sheet that can be dragged, or moved by arrow keys.
type Handle struct {
	Kind  HandleKind
	Label string // what it is, as people hear it
	Side  solver.Side
	At    plot.Point
	// Moves are what dragging changes: the second is empty where there is one way
	// only.
	Moves [2]Move
	// Focus is false for the twin of a handle that has the focus of the keyboard:
	// the right side of a parameter of both sides.
	Focus bool
}

// Move is one thing that a handle changes.
type Move struct {
	Key string // of a parameter; empty for travel
	// Step is the step on the paper of 1 mm of it.
	Step plot.Point
}

// MaxHandles is the most handles that a sheet has.
const MaxHandles = 24

// Handles returns the handles of the last frame.
func (s *Stage) Handles() []Handle { return s.handles }

// movable is a ball that a view has a handle on.
type movable struct {
	view  int
	role  solver.Role
	keys  [2]string
	moves [2]motion
}

// motion is the direction in which a parameter moves its ball.
type motion uint8

const (
	noMotion motion = iota
	upward
	alongArm
	outboard
)

var movables = []movable{
	{detailView, solver.TieRodOuterRole, [2]string{"tieRodOuterHeight", "steeringArmLength"}, [2]motion{upward, alongArm}},
	{frontView, solver.TieRodOuterRole, [2]string{"tieRodOuterHeight"}, [2]motion{upward}},
	{frontView, solver.TieRodInnerRole, [2]string{"tieRodInnerHeight", "tieRodInnerLateral"}, [2]motion{upward, outboard}},
	{frontView, solver.LowerBallRole, [2]string{"lowerBallJointHeight"}, [2]motion{upward}},
	{frontView, solver.UpperBallRole, [2]string{"upperBallJointHeight"}, [2]motion{upward}},
	{planView, solver.TieRodOuterRole, [2]string{"steeringArmLength"}, [2]motion{alongArm}},
	{planView, solver.TieRodInnerRole, [2]string{"tieRodInnerLateral"}, [2]motion{outboard}},
	{sideView, solver.TieRodOuterRole, [2]string{"tieRodOuterHeight", "steeringArmLength"}, [2]motion{upward, alongArm}},
	{sideView, solver.LowerBallRole, [2]string{"lowerBallJointHeight"}, [2]motion{upward}},
	{sideView, solver.UpperBallRole, [2]string{"upperBallJointHeight"}, [2]motion{upward}},
}

// commonMovables are the balls of no side.
var commonMovables = []movable{
	{frontView, solver.DragOuterRole, [2]string{"dragLinkOuterHeight"}, [2]motion{upward}},
	{frontView, solver.DragInnerRole, [2]string{"dragLinkInnerHeight"}, [2]motion{upward}},
}

// findHandles lists the handles of the frame: markers first, then balls, then wheels.
func (s *Stage) findHandles() {
	for _, side := range solver.Sides {
		if !s.charted(side) {
			continue
		}
		perMM := s.charts[side].frame.Y.At(s.numbers.Units.FromMillimetres(1)) - s.charts[side].frame.Y.At(0)
		s.add(Handle{Kind: MarkerHandle, Label: side.String() + " wheel travel", Side: side, At: s.marker[side],
			Moves: [2]Move{{Step: plot.Point{Y: perMM}}}, Focus: true})
	}
	for i := range movables {
		s.findMovable(&movables[i])
	}
	for i := range commonMovables {
		s.findCommon(&commonMovables[i])
	}
	if !s.shown(frontView) {
		return
	}
	for _, side := range solver.Sides {
		l := &s.views[frontView]
		if !l.showsSide(side) {
			continue
		}
		s.add(Handle{Kind: WheelHandle, Label: side.String() + " wheel", Side: side, At: l.on(s.rig.wheel[side]),
			Moves: [2]Move{{Step: plot.Point{Y: -l.p.Scale}}}})
	}
}

func (s *Stage) add(h Handle) {
	if len(s.handles) < MaxHandles {
		s.handles = append(s.handles, h)
	}
}

// findMovable adds the handles of a ball at the sides that the view shows.
func (s *Stage) findMovable(m *movable) {
	if !s.shown(m.view) || !s.has(m.keys[0]) {
		return
	}
	for _, side := range solver.Sides {
		x, ok := s.rig.role(side, m.role)
		l := &s.views[m.view]
		if !ok || !l.showsSide(side) {
			continue
		}
		h := Handle{Kind: PartHandle, Label: s.rig.kind.SidePoints[x.index].Label, Side: side,
			At: l.on(x), Focus: side == l.side || s.byItself(m.keys[0])}
		s.addMoves(&h, m, side)
		s.add(h)
	}
}

// findCommon adds the handle of a ball of no side.
func (s *Stage) findCommon(m *movable) {
	for i, p := range s.rig.kind.CommonPoints {
		if p.Role != m.role || !s.shown(m.view) {
			continue
		}
		h := Handle{Kind: PartHandle, Label: p.Label, At: s.views[m.view].on(ref{group: commonGroup, index: i}), Focus: true}
		s.addMoves(&h, m, solver.Left)
		s.add(h)
	}
}

// addMoves sets what a handle moves.
func (s *Stage) addMoves(h *Handle, m *movable, side solver.Side) {
	for i, way := range m.moves {
		if way != noMotion && s.has(m.keys[i]) {
			h.Moves[i] = Move{Key: s.keyOf(m.keys[i], side), Step: s.views[m.view].p.Step(s.wayOf(way, side))}
		}
	}
}

// byItself reports whether the selected car changes a parameter of each side by itself.
func (s *Stage) byItself(key string) bool {
	for _, side := range solver.Sides {
		if _, ok := s.car.Changes[sidedKeys[key][side]]; ok {
			return true
		}
	}
	return false
}

// keyOf returns the key by which a parameter is changed at a side of the selected car.
func (s *Stage) keyOf(key string, side solver.Side) string {
	if s.byItself(key) {
		return sidedKeys[key][side]
	}
	return key
}

// sidedKeys are the keys of each side of the parameters that handles move: a frame makes no
// text.
var sidedKeys = func() map[string][2]string {
	keys := map[string][2]string{}
	for _, m := range movables {
		for _, key := range m.keys {
			keys[key] = [2]string{key + "@" + solver.Left.String(), key + "@" + solver.Right.String()}
		}
	}
	return keys
}()

// wayOf returns 1 mm of a motion, in vehicle axes.
func (s *Stage) wayOf(m motion, side solver.Side) plot.Vec {
	switch m {
	case alongArm:
		arm := s.rig.place(&s.home, s.rig.arm[side]).Sub(s.rig.foot(&s.home, side))
		arm.Z = 0
		if l := arm.Length(); l > 0 {
			return arm.Times(1 / l)
		}
	case outboard:
		return [...]plot.Vec{{Y: 1}, {Y: -1}}[side]
	}
	return plot.Vec{Z: 1}
}

// has reports whether the car has a parameter.
func (s *Stage) has(key string) bool {
	_, ok := s.cars.Parameter(key)
	return ok
}
