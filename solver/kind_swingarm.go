package solver

// swingArm has one rigid arm that turns on an axis in the body and carries the
// knuckle on a kingpin: a split beam, or a leading or trailing arm that steers.
//
// The arm is held as four rods from its hinge to the kingpin's two ends, which the
// knuckle keeps apart. Camber and caster are taken up by the upper end, which moves
// in the arm at its distance from the lower one.
var swingArm = &Kind{
	Name:  "swing-arm",
	Label: "Swing arm",
	SidePoints: []Hardpoint{
		{"frontPivot", "swing arm, front pivot", NoRole, Chassis},
		{"rearPivot", "swing arm, rear pivot", NoRole, Chassis},
		{"kingpinUpper", "kingpin, upper end", UpperBallRole, Knuckle},
		{"kingpinLower", "kingpin, lower end", LowerBallRole, Knuckle},
		{"tieRodOuter", "tie rod, outer ball", TieRodOuterRole, Knuckle},
		{"tieRodInner", "tie rod, inner ball", TieRodInnerRole, GearBody},
		{"wheelCentre", "wheel centre", WheelCentreRole, Knuckle},
	},
	Crossing: []string{"frontPivot", "rearPivot"}, // of a split beam
	layout: cornerLayout{
		rods: []link{
			{"swing arm", "frontPivot", "kingpinLower"}, {"swing arm", "rearPivot", "kingpinLower"},
			{"swing arm", "frontPivot", "kingpinUpper"}, {"swing arm", "rearPivot", "kingpinUpper"},
		},
		axis: axisLink{ballJointAxis, "kingpinLower", "kingpinUpper"},
		adjusters: []gives{
			{key: "kingpin", label: "kingpin's upper end in the arm", joints: []string{"kingpinUpper"}},
		},
	},
}
