package study

import "slices"

// LimitKind is one entry of the list of results that a search can be kept within: all
// that files, messages, lists to choose from and the schema know of it. What it measures
// stands in package engine, by the same key.
type LimitKind struct {
	Key   LimitKey
	Label string // as lists to choose from name it
	Unit  LimitUnit
	Scale float64 // difference that matters, in mm where Unit is a length
	// Travels says that it is looked at through the travel, and so can be at lock.
	Travels bool
	// SolidAxle says that only a solid axle, which has a drag link, has it.
	SolidAxle bool
	// Face says that it is of the face to which a steering arm is bolted, which a solid
	// axle's knuckle does not state.
	Face bool
	// Loaded says that it is of the study's load cases, the largest in size of all, and so
	// needs them and the springs that they need.
	Loaded bool
	needs  []limitNeed
	own    limitBound // taken where a limit states no bound
}

// LimitKey names a [LimitKind] in files.
type LimitKey string

// Clearance is the result of a [Limit] on the distance of a part from a plane, a rim or another link.
const Clearance LimitKey = "clearance"

// LimitUnit is what a result is measured in.
type LimitUnit uint8

// The units of limited results.
const (
	LimitAngle   LimitUnit = iota // degrees
	LimitLength                   // as lengths of the file
	LimitPercent                  // per cent
	LimitRatio                    // a bare number
	LimitForce                    // N
	LimitMoment                   // N m
	LimitStress                   // MPa
)

// Symbol returns the unit's symbol in a study, "" for a ratio.
func (u LimitUnit) Symbol(d *Document) string {
	if u == LimitLength {
		return string(d.Units)
	}
	return [...]string{"deg", "", "%", "", "N", "N m", "MPa"}[u]
}

// LimitKinds lists the results that can be limited, as lists to choose from show them.
var LimitKinds = []LimitKind{
	{Key: "outerBallAngle", Label: "Outer ball, angle off neutral", Unit: LimitAngle, Scale: 1, Travels: true,
		own: limitBound{"tieRod.outerBall.cone", false, func(d *Document) *float64 { return d.OuterBall().cone() }}},
	{Key: "innerBallAngle", Label: "Inner ball, angle off neutral", Unit: LimitAngle, Scale: 1, Travels: true,
		own: limitBound{"tieRod.innerBall.cone", false, func(d *Document) *float64 { return d.InnerBall().cone() }}},
	{Key: "threadEngagement", Label: "Thread engaged in the adjuster", Unit: LimitLength, Scale: 1, needs: needsThread,
		own: limitBound{"tieRod.minEngagement", true, func(d *Document) *float64 { return d.TieRod.leastEngaged() }}},
	{Key: "adjusterRange", Label: "Adjuster, room to turn either way", Unit: LimitLength, Scale: 1, needs: needsThread},
	{Key: "tieRodLength", Label: "Tie rod length", Unit: LimitLength, Scale: 1},
	{Key: "dragLinkOuterBallAngle", Label: "Drag link, ball on the arm, angle off neutral", Unit: LimitAngle, Scale: 1, Travels: true, SolidAxle: true,
		own: limitBound{"dragLink.outerBall.cone", false, func(d *Document) *float64 { return d.DragOuterBall().cone() }}},
	{Key: "dragLinkThreadEngagement", Label: "Drag link, thread engaged in the adjuster", Unit: LimitLength, Scale: 1, SolidAxle: true, needs: needsDragThread,
		own: limitBound{"dragLink.minEngagement", true, func(d *Document) *float64 { return d.DragLink.leastEngaged() }}},
	{Key: "dragLinkAdjusterRange", Label: "Drag link, room to turn the adjuster either way", Unit: LimitLength, Scale: 1, SolidAxle: true, needs: needsDragThread},
	{Key: "dragLinkLength", Label: "Drag link length", Unit: LimitLength, Scale: 1, SolidAxle: true},
	{Key: "steeringArmLength", Label: "Steering arm length", Unit: LimitLength, Scale: 1},
	{Key: "steeringArmOffset", Label: "Steering arm offset", Unit: LimitLength, Scale: 1},
	{Key: "steeringRatio", Label: "Steering ratio", Unit: LimitRatio, Scale: 0.1, needs: []limitNeed{needsPerTurn}},
	{Key: "turningCircle", Label: "Turning circle", Unit: LimitLength, Scale: 50, needs: []limitNeed{needsLock, needsWheelbase}},
	{Key: "ackermann", Label: "Ackermann percentage", Unit: LimitPercent, Scale: 1, needs: []limitNeed{needsWheelbase}},
	{Key: "toeOutOnTurns", Label: "Toe-out on turns at 20 degrees", Unit: LimitAngle, Scale: 0.1},
	{Key: "tieRodLoad", Label: "Tie rod, largest load", Unit: LimitForce, Scale: 10, Loaded: true},
	{Key: "armTwist", Label: "Arm's face, largest twist", Unit: LimitMoment, Scale: 0.2, Loaded: true, Face: true, needs: []limitNeed{needsFace}},
	{Key: "armBend", Label: "Arm's face, largest bend", Unit: LimitMoment, Scale: 0.2, Loaded: true, Face: true, needs: []limitNeed{needsFace}},
	{Key: "studBending", Label: "Outer ball's stud, largest bending", Unit: LimitStress, Scale: 1, Loaded: true, needs: []limitNeed{needsStud}},
	{Key: Clearance, Label: "Clearance", Unit: LimitLength, Scale: 1, Travels: true},
}

// limitNeed is what a study must state for a limit to be measured.
type limitNeed struct {
	key, what string
	stated    func(*Document) bool
}

var (
	needsThread = []limitNeed{{"tieRod.engagement", "the thread engaged on the car as measured",
		func(d *Document) bool { return d.TieRod != nil && d.TieRod.Engagement != 0 }}}
	needsDragThread = []limitNeed{{"dragLink.engagement", "the thread engaged in the drag link on the car as measured",
		func(d *Document) bool { return d.DragLink != nil && d.DragLink.Engagement != 0 }}}
	needsPerTurn = limitNeed{"steering.perTurn", "the input per turn of the steering wheel",
		func(d *Document) bool { return d.Steering != nil && d.Steering.PerTurn != 0 }}
	needsLock = limitNeed{"steering.lock", "the most steering input",
		func(d *Document) bool { return d.Steering != nil && d.Steering.Lock != 0 }}
	needsWheelbase = limitNeed{"vehicle.wheelbase", "the wheelbase",
		func(d *Document) bool { return d.Vehicle.Wheelbase != 0 }}
	needsFace = limitNeed{"armFace", "the face to which the steering arm is bolted, on both sides",
		func(d *Document) bool {
			return d.Suspension.Corner(Left).ArmFace != nil && d.Suspension.Corner(Right).ArmFace != nil
		}}
	needsStud = limitNeed{"tieRod.outerBall.stud", "the diameter and height of the outer ball's stud",
		func(d *Document) bool { return d.outerStud() != nil }}
)

// limitBound is a bound that stands elsewhere in the study.
type limitBound struct {
	key   string
	least bool // it stands for min, else for max
	of    func(*Document) *float64
}

// KindOfLimit returns the entry of a key; false where there is none.
func KindOfLimit(key LimitKey) (*LimitKind, bool) {
	i := slices.IndexFunc(LimitKinds, func(k LimitKind) bool { return k.Key == key })
	if i < 0 {
		return nil, false
	}
	return &LimitKinds[i], true
}

// Has reports whether the car has the part that a result is of.
func (d *Document) Has(k *LimitKind) bool {
	if d.HasDragLink() {
		return !k.Face
	}
	return !k.SolidAxle
}

// Words lists the keys, for [strictjson] and the schema.
func (LimitKey) Words() (keys []string) {
	for _, k := range LimitKinds {
		keys = append(keys, string(k.Key))
	}
	return keys
}

// ClearPart is a part that can be kept clear of something.
type ClearPart struct {
	Key       ClearKey
	Label     string
	SolidAxle bool // only a solid axle has it
}

// ClearKey names a [ClearPart] in files.
type ClearKey string

// ClearParts lists the parts of clearances. The inner ball of a solid axle is the drag
// link's ball on the gear; its tie rod runs from arm to arm.
var ClearParts = []ClearPart{
	{"outer-ball", "outer ball", false},
	{"inner-ball", "inner ball", false},
	{"tie-rod", "tie rod", false},
	{"drag-link-outer-ball", "drag link's ball on the arm", true},
	{"drag-link", "drag link", true},
}

// Words lists the keys, for [strictjson] and the schema.
func (ClearKey) Words() (keys []string) {
	for _, p := range ClearParts {
		keys = append(keys, string(p.Key))
	}
	return keys
}
