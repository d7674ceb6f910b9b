package solver

import (
	"fmt"
	"slices"
	"strings"

	"toewright/internal/spelling"
)

// Quantity is what a parameter's value measures.
type Quantity uint8

// Lengths are in mm, angles in radians.
const (
	LengthQuantity Quantity = iota
	AngleQuantity
)

// Parameter is an entry of the registry: something that can be changed about a
// car. Sliders, candidates, catalogue parts, search variables, tolerances, fit
// unknowns, sensitivities and map axes all draw on the one list that
// [Parameters] returns.
type Parameter struct {
	Key      string
	Label    string
	Quantity Quantity
	// Absolute says that a value is the setting itself; others are changes from
	// the base car.
	Absolute bool
	// Min and Max are the usual bounds of a search, Tolerance the usual one
	// standard deviation of a part or a measurement, in mm or radians: common
	// practice.
	Min, Max, Tolerance float64

	stage stage
	point pointRef  // what a coordinate or a part change moves
	move  direction // and in which direction
	set   setpoint  // which setpoint a setpoint change sets
	rod   steeringRod
	one   bool // for both sides, of a rod that joins them
}

// stage is the step in which a parameter is applied.
type stage uint8

const (
	pointStage    stage = iota // the car is other than the file says
	partStage                  // a part is exchanged in that static position
	setpointStage              // a setpoint is re-solved
	rodStage                   // a rod that sets toe has another length, where toe floats
	vehicleStage               // no geometry of the linkage
)

// pointRef names the points that a parameter moves: those of a role, or one by
// its index among side, common or gear points.
type pointRef struct {
	group pointGroup
	role  Role
	index int
}

type pointGroup uint8

const (
	byRole pointGroup = iota
	sidePoint
	commonPoint
	gearPoint
)

// direction is the way in which a parameter moves a point.
type direction uint8

const (
	xDirection direction = iota
	yDirection           // outboard for a point of a side
	zDirection
	studDirection // along the stud, upward where none is stated
	armDirection  // level, from the steering axis to the ball
	sideDirection // level, square to the arm, outboard
)

// setpoint is a static value that is held.
type setpoint uint8

const (
	toeSetpoint setpoint = iota
	camberSetpoint
	casterSetpoint
	rideHeightSetpoint
)

// partParameters is the registry's fixed part, in the order in which a list
// shows it. A new parameter is one line here.
var partParameters = []Parameter{
	length("tieRodOuterHeight", "outer tie rod ball height", -60, 60, 0.5, TieRodOuterRole, studDirection),
	length("tieRodInnerHeight", "inner tie rod ball height", -60, 60, 1, TieRodInnerRole, zDirection),
	length("tieRodInnerLateral", "inner tie rod ball, outboard", -60, 60, 1, TieRodInnerRole, yDirection),
	length("steeringArmLength", "steering arm length", -40, 40, 0.5, TieRodOuterRole, armDirection),
	length("steeringArmOffset", "steering arm offset, outboard", -40, 40, 0.5, TieRodOuterRole, sideDirection),
	length("lowerBallJointHeight", "lower ball joint height", -40, 40, 0.5, LowerBallRole, zDirection),
	length("upperBallJointHeight", "upper ball joint height", -40, 40, 0.5, UpperBallRole, zDirection),
	length("dragLinkOuterHeight", "drag link, arm ball height", -60, 60, 0.5, DragOuterRole, zDirection),
	length("dragLinkInnerHeight", "drag link, gear ball height", -60, 60, 1, DragInnerRole, zDirection),
	rodLength("tieRodLength", "tie rod length, where toe is not re-set", tieRodRod),
	rodLength("dragLinkLength", "drag link length, where toe is not re-set", dragLinkRod),
	{Key: "rideHeight", Label: "ride height", Min: -75, Max: 75, Tolerance: 1, stage: setpointStage, set: rideHeightSetpoint},
	absolute("toe", "static toe, toe-in positive", -1, 1, 0.05, toeSetpoint),
	absolute("camber", "static camber", -6, 2, 0.1, camberSetpoint),
	absolute("caster", "static caster", 0, 12, 0.25, casterSetpoint),
	{Key: "tyreRadius", Label: "tyre radius", Min: -50, Max: 50, Tolerance: 3, stage: vehicleStage},
}

// PartLabels returns the labels of the parameters that are no coordinates, by their keys,
// whatever the car.
func PartLabels() map[string]string {
	labels := map[string]string{}
	for _, p := range partParameters {
		labels[p.Key] = p.Label
	}
	return labels
}

func length(key, label string, lo, hi, tol float64, r Role, d direction) Parameter {
	return Parameter{Key: key, Label: label, Min: lo, Max: hi, Tolerance: tol,
		stage: partStage, point: pointRef{role: r}, move: d}
}

// rodLength returns the parameter of a rod's own length. Where static toe is held
// it does nothing: an alignment undoes it.
func rodLength(key, label string, r steeringRod) Parameter {
	return Parameter{Key: key, Label: label, Min: -10, Max: 10, Tolerance: 0.5, stage: rodStage, rod: r}
}

func absolute(key, label string, lo, hi, tol float64, s setpoint) Parameter {
	deg := func(x float64) float64 { return float64(Deg(x)) }
	return Parameter{Key: key, Label: label, Quantity: AngleQuantity, Absolute: true,
		Min: deg(lo), Max: deg(hi), Tolerance: deg(tol), stage: setpointStage, set: s}
}

// CoordinateTolerance is the usual standard deviation of a hardpoint measured by
// tape and plumb line, mm: common practice, 2 to 3 mm.
const CoordinateTolerance = 2.5

// coordinateBound is the usual bound of a coordinate's change, mm.
const coordinateBound = 30.0

// Parameters returns the registry for a car: every parameter that its kind of
// suspension and its gear have, the parts and setpoints first, then each
// coordinate of each hardpoint.
func Parameters(d *Design) []Parameter {
	var ps []Parameter
	for _, p := range partParameters {
		if d.Kind.has(p) {
			p.one = p.stage == rodStage && d.Kind.rigid()
			ps = append(ps, p)
		}
	}
	ps = appendCoordinates(ps, d.Kind.SidePoints, sidePoint)
	ps = appendCoordinates(ps, d.Kind.CommonPoints, commonPoint)
	return appendCoordinates(ps, GearPoints[:d.Gear.PointCount()], gearPoint)
}

// has reports whether a parameter of the fixed list applies to the kind.
func (k *Kind) has(p Parameter) bool {
	switch {
	case p.stage == setpointStage && p.set == camberSetpoint:
		return !k.rigid()
	case p.stage == rodStage && p.rod == dragLinkRod:
		return k.rigid()
	case p.stage != partStage:
		return true
	case k.rigid() && (p.point.role == LowerBallRole || p.point.role == UpperBallRole):
		return false
	}
	plays := func(h Hardpoint) bool { return h.Role == p.point.role }
	return slices.ContainsFunc(k.SidePoints, plays) || slices.ContainsFunc(k.CommonPoints, plays)
}

// rigid reports whether both wheels hang on one beam.
func (k *Kind) rigid() bool {
	_, rigid := k.layout.(axleLayout)
	return rigid
}

func appendCoordinates(ps []Parameter, points []Hardpoint, g pointGroup) []Parameter {
	for i, h := range points {
		for c, name := range [3]string{"x", "y", "z"} {
			ps = append(ps, Parameter{
				Key: h.Name + "." + name, Label: h.Label + ", " + name,
				Min: -coordinateBound, Max: coordinateBound, Tolerance: CoordinateTolerance,
				stage: pointStage, point: pointRef{group: g, index: i}, move: direction(c),
			})
		}
	}
	return ps
}

// FindParameter returns the parameter of a car that a key such as
// "tieRodOuterHeight" or "lowerBallJoint.z@left" names, and the sides it selects.
func FindParameter(d *Design, key string) (Parameter, Selection, error) {
	name, sel, err := splitKey(key)
	if err != nil {
		return Parameter{}, BothSides, err
	}
	p, ok := d.parameter(name)
	if !ok {
		return Parameter{}, sel, unknownKey(d, name, Parameters(d))
	}
	if sel != BothSides && p.shared() {
		return Parameter{}, sel, &InputError{key, "is one for both sides; leave out " + sel.Suffix()}
	}
	return p, sel, nil
}

// parameter returns the parameter of a key without a side. Parts and setpoints are found
// without the list of all, which a drag would make in every frame.
func (d *Design) parameter(name string) (Parameter, bool) {
	for _, p := range partParameters {
		if p.Key == name {
			return p, d.Kind.has(p)
		}
	}
	for _, p := range Parameters(d) {
		if p.Key == name {
			return p, true
		}
	}
	return Parameter{}, false
}

// shared reports whether the parameter has no sides.
func (p *Parameter) shared() bool {
	return p.point.group == commonPoint || p.point.group == gearPoint || p.stage == vehicleStage || p.one ||
		p.stage == partStage && (p.point.role == DragInnerRole || p.point.role == DragOuterRole)
}

// Coordinate reports whether the parameter is a coordinate of a hardpoint: what a
// tape measures, rather than a part or a setting.
func (p *Parameter) Coordinate() bool { return p.stage == pointStage }

// OfGear reports whether the parameter is a coordinate of the steering gear's own
// points, which do nothing straight ahead.
func (p *Parameter) OfGear() bool { return p.point.group == gearPoint }

// RodLength reports whether the parameter is a rod's own length, which does nothing
// where static toe is held.
func (p *Parameter) RodLength() bool { return p.stage == rodStage }

// Sided reports whether a key of this parameter may end in @left or @right.
func (p *Parameter) Sided() bool { return !p.shared() }

func splitKey(key string) (string, Selection, error) {
	name, side, found := strings.Cut(key, "@")
	switch {
	case !found:
		return name, BothSides, nil
	case side == "left":
		return name, LeftOnly, nil
	case side == "right":
		return name, RightOnly, nil
	}
	return "", BothSides, &InputError{key, "must end in @left or @right, or in neither"}
}

func unknownKey(d *Design, name string, ps []Parameter) error {
	if name == "camber" {
		return &InputError{name, "cannot be changed on a solid axle: it is the beam's own"}
	}
	keys := make([]string, len(ps))
	for i := range ps {
		keys[i] = ps[i].Key
	}
	return &InputError{name, fmt.Sprintf("is not a parameter of a %s; the nearest is %s", d.Kind.Name, spelling.Closest(name, keys))}
}
