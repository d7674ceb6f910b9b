package study

// Arm is what the shop that makes a steering arm is told of it beside its places. Nothing
// of it moves the wheel; what is absent is left out of the drawing, or left blank on it to be
// filled in by hand.
type Arm struct {
	Thickness float64  `json:"thickness,omitzero" rule:"positive"` // Thickness is that of the eye for the outer ball, along the stud.
	Hole      *ArmHole `json:"hole,omitzero"`
	// BoltDiameter is that of the holes for the bolts of the face.
	BoltDiameter float64 `json:"boltDiameter,omitzero" rule:"positive"`
	// Projection is how the views of the drawing lie; third angle where absent.
	Projection string `json:"projection,omitzero" rule:"oneof=first-angle|third-angle"`

	// In the maker's own words; [ArmTexts] says what each is.
	Material      string `json:"material,omitzero"`
	HeatTreatment string `json:"heatTreatment,omitzero"`
	Finish        string `json:"finish,omitzero"`
	Grain         string `json:"grain,omitzero"`
	Draft         string `json:"draft,omitzero"`
	Stock         string `json:"stock,omitzero"`
	Sections      string `json:"sections,omitzero"`
	Tolerances    string `json:"tolerances,omitzero"`
	Stamp         string `json:"stamp,omitzero"`
	ProofLoad     string `json:"proofLoad,omitzero"`
	NumberLeft    string `json:"numberLeft,omitzero"`
	NumberRight   string `json:"numberRight,omitzero"`
	DrawnBy       string `json:"drawnBy,omitzero"`
	CheckedBy     string `json:"checkedBy,omitzero"`
}

// ThirdAngle and FirstAngle are the projections of a drawing, by ISO 5456-2.
const (
	ThirdAngle = "third-angle"
	FirstAngle = "first-angle"
)

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
