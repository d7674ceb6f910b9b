package study

// Clearance is the result of a [Limit] on the distance of a part from a plane, a rim or another link.
const Clearance = "clearance"

// Where a [Limit] is looked at along the travel.
const (
	AtStraight = "straight" // straight ahead
	AtLock     = "lock"     // straight ahead and at full lock to either side
)

// Limit bounds a result that a search must respect. Clearances also say of which
// part and from what. A limit on a ball's angle that states no bound takes the cone
// of the tie rod's joint, one on the thread the least engagement.
type Limit struct {
	Result string   `json:"result" rule:"required,oneof=innerBallAngle|outerBallAngle|threadEngagement|adjusterRange|tieRodLength|steeringArmLength|steeringArmOffset|steeringRatio|turningCircle|ackermann|toeOutOnTurns|clearance"`
	Min    *float64 `json:"min,omitzero"`
	Max    *float64 `json:"max,omitzero"`
	Side   Side     `json:"side,omitzero" rule:"oneof=left|right"` // Side is absent for both.
	// At says where a result that is looked at through the travel is: [AtStraight],
	// the default, or [AtLock], which needs steering.lock. Others take none.
	At string `json:"at,omitzero" rule:"oneof=straight|lock"`

	Of     string  `json:"of,omitzero" rule:"oneof=outer-ball|inner-ball|tie-rod"` // Of is the part of a clearance.
	Radius float64 `json:"radius,omitzero" rule:"notnegative"`                     // Radius is that of the part about its centre or axis.
	Plane  *Plane  `json:"plane,omitzero"`
	Rim    *Rim    `json:"rim,omitzero"`
	Link   *Link   `json:"link,omitzero"`
}

// Plane is fixed to the body; the part must stay on the side that its normal
// points to.
type Plane struct {
	Point  Vec3 `json:"point" rule:"required"`
	Normal Vec3 `json:"normal" rule:"required"`
}

// Link is another part of the car: a straight bar between two hardpoints, by their
// names, of the side that is looked at or of neither.
type Link struct {
	From   string  `json:"from" rule:"required"`
	To     string  `json:"to" rule:"required"`
	Radius float64 `json:"radius,omitzero" rule:"notnegative"`
}

// Rim is the inside of a wheel's rim: the edge of a disc square to the spin axis.
type Rim struct {
	Radius float64 `json:"radius" rule:"required,positive"` // Radius is that of the free space inside.
	Offset float64 `json:"offset"`                          // Offset is how far inboard of the wheel centre the edge lies.
}

// Travels reports whether the limit's result is looked at through the travel, and so
// can be at lock.
func (l *Limit) Travels() bool {
	return l.Result == "innerBallAngle" || l.Result == "outerBallAngle" || l.Result == Clearance
}

// Bounded returns a limit of the study with the bounds that it takes from the tie
// rod where it states none itself.
func (d *Document) Bounded(l *Limit) Limit {
	out := *l
	if d.TieRod == nil || l.Min != nil || l.Max != nil {
		return out
	}
	switch l.Result {
	case "innerBallAngle":
		out.Max = d.TieRod.InnerBall.cone()
	case "outerBallAngle":
		out.Max = d.TieRod.OuterBall.cone()
	case "threadEngagement":
		if d.TieRod.MinEngagement > 0 {
			out.Min = &d.TieRod.MinEngagement
		}
	}
	return out
}

// cone returns the joint's cone, nil where the study states no joint.
func (b *BallJoint) cone() *float64 {
	if b == nil {
		return nil
	}
	return &b.Cone
}
