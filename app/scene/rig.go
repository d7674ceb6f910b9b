package scene

import (
	"toewright/internal/plot"
	"toewright/solver"
)

// group says which list of a [solver.Placed] a point stands in.
type group uint8

const (
	sideGroup group = iota
	commonGroup
	gearGroup
	footGroup // where the steering axis passes the height of the steering arm's ball
)

// ref is a point of an axle that moves.
type ref struct {
	group group
	side  solver.Side
	index int
}

// layer is the look of a part.
type layer uint8

const (
	partLayer    layer = iota // arms and links
	bodyLayer                 // what is fixed to the body: rack housing
	knuckleLayer              // knuckle, spindle, steering arm, beam
	rodLayer                  // tie rods, drag link, rack, centre link
	layerCount
)

// bar is a part drawn as a bar between two points.
type bar struct {
	from, to ref
	width    float64 // mm
	layer    layer
}

// rig is how a car is drawn: by bars, struts and outlines between its points. It
// depends on the kinds of suspension and gear alone.
type rig struct {
	kind     *solver.Kind
	bars     []bar
	struts   [][2]ref // lower end and top mount
	hulls    [][]ref  // outlines about points, of knuckles
	pivots   []ref    // on the body
	balls    []ref
	axes     [2][2]ref // steering axis of each side: lower and upper point
	arm      [2]ref    // ball of each side's steering arm
	wheel    [2]ref
	rack     bool   // a rack joins the inner balls
	inner    [2]ref // inner tie rod ball of each side, where there is one
	hasInner bool
}

// Widths of parts, mm: those of usual ones, a little bold.
const (
	armWidth     = 26
	rodWidth     = 16
	spindleWidth = 44
	beamWidth    = 70
	rackWidth    = 44
	strutWidth   = 52
	steerWidth   = 24
)

// newRig returns the rig of a design.
func newRig(d *solver.Design) *rig {
	r := &rig{kind: d.Kind}
	for _, s := range solver.Sides {
		r.addSide(d, s)
	}
	r.addCommon(d.Kind)
	r.addGear(&d.Gear)
	_, r.hasInner = r.role(solver.Left, solver.TieRodInnerRole)
	r.rack = r.hasInner && d.Gear.Kind == solver.Rack
	return r
}

// role returns the first side point of a role.
func (r *rig) role(s solver.Side, role solver.Role) (ref, bool) {
	for i, h := range r.kind.SidePoints {
		if h.Role == role {
			return ref{sideGroup, s, i}, true
		}
	}
	return ref{}, false
}

// place returns where a point stands.
func (r *rig) place(p *solver.Placed, x ref) plot.Vec {
	switch x.group {
	case commonGroup:
		return plot.Vec(p.Common[x.index])
	case gearGroup:
		return plot.Vec(p.Gear[x.index])
	case footGroup:
		return r.foot(p, x.side)
	}
	return plot.Vec(p.Side[x.side][x.index])
}

// foot returns the point of the steering axis at the height of the arm's ball.
func (r *rig) foot(p *solver.Placed, s solver.Side) plot.Vec {
	lower, upper := r.place(p, r.axes[s][0]), r.place(p, r.axes[s][1])
	rise := upper.Sub(lower)
	if !(rise.Z > 1) {
		return lower
	}
	t := (r.place(p, r.arm[s]).Z - lower.Z) / rise.Z
	return lower.Add(rise.Times(t))
}

// label returns the name of a point as people read it.
func (r *rig) label(x ref) string {
	switch x.group {
	case commonGroup:
		return r.kind.CommonPoints[x.index].Label
	case gearGroup:
		return solver.GearPoints[x.index].Label
	}
	return x.side.String() + ": " + r.kind.SidePoints[x.index].Label
}

// points calls for every named point of the axle.
func (r *rig) points(p *solver.Placed, visit func(ref)) {
	for _, s := range solver.Sides {
		for i := range p.Side[s] {
			visit(ref{sideGroup, s, i})
		}
	}
	for i := range p.Common {
		visit(ref{group: commonGroup, index: i})
	}
	for i := range p.Gear {
		visit(ref{group: gearGroup, index: i})
	}
}

// name returns the key of a point, as parameters know it.
func (r *rig) name(x ref) string {
	switch x.group {
	case commonGroup:
		return r.kind.CommonPoints[x.index].Name
	case gearGroup:
		return solver.GearPoints[x.index].Name
	}
	return r.kind.SidePoints[x.index].Name
}
