package study

// Clearance is the result of a [Limit] on the distance of a part from a plane or a rim.
const Clearance = "clearance"

// Limit bounds a result that a search must respect. Clearances also say of which
// part and from what.
type Limit struct {
	Result string   `json:"result" rule:"required,oneof=innerBallAngle|outerBallAngle|threadEngagement|tieRodLength|steeringArmLength|steeringArmOffset|steeringRatio|turningCircle|ackermann|toeOutOnTurns|clearance"`
	Min    *float64 `json:"min,omitzero"`
	Max    *float64 `json:"max,omitzero"`
	Side   Side     `json:"side,omitzero" rule:"oneof=left|right"` // Side is absent for both.

	Of     string  `json:"of,omitzero" rule:"oneof=outer-ball|inner-ball|tie-rod"` // Of is the part of a clearance.
	Radius float64 `json:"radius,omitzero" rule:"notnegative"`                     // Radius is that of the part about its centre or axis.
	Plane  *Plane  `json:"plane,omitzero"`
	Rim    *Rim    `json:"rim,omitzero"`
}

// Plane is fixed to the body; the part must stay on the side that its normal
// points to.
type Plane struct {
	Point  Vec3 `json:"point" rule:"required"`
	Normal Vec3 `json:"normal" rule:"required"`
}

// Rim is the inside of a wheel's rim: the edge of a disc square to the spin axis.
type Rim struct {
	Radius float64 `json:"radius" rule:"required,positive"` // Radius is that of the free space inside.
	Offset float64 `json:"offset"`                          // Offset is how far inboard of the wheel centre the edge lies.
}
