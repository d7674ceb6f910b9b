package study

// Arm is what the shop that makes a steering arm is told of it beside its places. Nothing
// of it moves the wheel; what is absent is left out of the drawing.
type Arm struct {
	Thickness float64  `json:"thickness,omitzero" rule:"positive"` // Thickness is that of the eye for the outer ball, along the stud.
	Hole      *ArmHole `json:"hole,omitzero"`
	// BoltDiameter is that of the holes for the bolts of the face.
	BoltDiameter float64 `json:"boltDiameter,omitzero" rule:"positive"`
	Material     string  `json:"material,omitzero"`
	Finish       string  `json:"finish,omitzero"`
	NumberLeft   string  `json:"numberLeft,omitzero"` // NumberLeft is the part number of the left arm.
	NumberRight  string  `json:"numberRight,omitzero"`
	DrawnBy      string  `json:"drawnBy,omitzero"`
}

// ArmHole is the hole for the stud of the outer ball.
type ArmHole struct {
	// LargeDiameter is that at the face of the eye that clamps the stud, towards the ball.
	LargeDiameter float64 `json:"largeDiameter" rule:"required,positive"`
	// Taper is the change of diameter by length: 0.125 is 1 1/2 in per foot. 0 is a plain
	// hole.
	Taper float64 `json:"taper,omitzero" rule:"notnegative"`
}

// SmallDiameter returns that at the other face of the eye, 0 where the thickness is not
// stated.
func (a *Arm) SmallDiameter() float64 {
	if a == nil || a.Hole == nil || a.Thickness == 0 {
		return 0
	}
	return a.Hole.LargeDiameter - a.Hole.Taper*a.Thickness
}

// armProblem refuses a hole that closes on the way through the eye.
func (d *Document) armProblem() *problem {
	a := d.Arm
	if a == nil || a.Hole == nil || a.Thickness == 0 || a.SmallDiameter() > 0 {
		return nil
	}
	return problemf("arm.hole.taper", "%g through a thickness of %g %s takes off all of the diameter of %g %s; a taper is the change of diameter by length, 0.125 for 1 1/2 in per foot",
		a.Hole.Taper, a.Thickness, d.Units, a.Hole.LargeDiameter, d.Units)
}
