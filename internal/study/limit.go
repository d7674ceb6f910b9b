package study

// Where a [Limit] is looked at along the travel.
const (
	AtStraight = "straight" // straight ahead
	AtLock     = "lock"     // straight ahead and at full lock to either side
)

// Limit bounds a result that a search must respect. Clearances also say of which
// part and from what. A limit on a ball's angle that states no bound takes the cone
// of the joint, one on the thread the least engagement. It is for both wheels, or for
// that of Side, in every scenario's own attitude.
type Limit struct {
	Result LimitKey `json:"result" rule:"required"` // Result is the key of a [LimitKind].
	Min    *float64 `json:"min,omitzero"`
	Max    *float64 `json:"max,omitzero"`
	Side   Side     `json:"side,omitzero" rule:"oneof=left|right"` // Side is absent for both.
	// At says where a result that is looked at through the travel is: [AtStraight],
	// the default, or [AtLock], which needs steering.lock. Others take none.
	At string `json:"at,omitzero" rule:"oneof=straight|lock"`

	Of     ClearKey `json:"of,omitzero"`                        // Of is the part of a clearance, the key of a [ClearPart].
	Radius float64  `json:"radius,omitzero" rule:"notnegative"` // Radius is that of the part about its centre or axis.
	Plane  *Plane   `json:"plane,omitzero"`
	Rim    *Rim     `json:"rim,omitzero"`
	Link   *Link    `json:"link,omitzero"`
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
	k, ok := KindOfLimit(l.Result)
	return ok && k.Travels
}

// Bounded returns a limit of the study with the bounds that it takes from the rod where
// it states none itself.
func (d *Document) Bounded(l *Limit) Limit {
	out := *l
	k, ok := KindOfLimit(l.Result)
	if !ok || k.own.of == nil || l.Min != nil || l.Max != nil {
		return out
	}
	if b := k.own.of(d); k.own.least {
		out.Min = b
	} else {
		out.Max = b
	}
	return out
}

// leastEngaged returns the least engagement, nil where the study states none.
func (r *TieRod) leastEngaged() *float64 {
	if r == nil || r.MinEngagement == 0 {
		return nil
	}
	return &r.MinEngagement
}

// cone returns the joint's cone, nil where the study states no joint.
func (b *BallJoint) cone() *float64 {
	if b == nil {
		return nil
	}
	return &b.Cone
}
