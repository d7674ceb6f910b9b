package solver

// doubleWishbone has a lower and an upper arm, each with two pivots on the body
// and a ball joint on the knuckle.
var doubleWishbone = &Kind{
	Name:  "double-wishbone",
	Label: "Double wishbone",
	SidePoints: []Hardpoint{
		{"lowerFrontPivot", "lower arm, front pivot", NoRole, Chassis},
		{"lowerRearPivot", "lower arm, rear pivot", NoRole, Chassis},
		{"lowerBallJoint", "lower ball joint", LowerBallRole, Knuckle},
		{"upperFrontPivot", "upper arm, front pivot", NoRole, Chassis},
		{"upperRearPivot", "upper arm, rear pivot", NoRole, Chassis},
		{"upperBallJoint", "upper ball joint", UpperBallRole, Knuckle},
		{"tieRodOuter", "tie rod, outer ball", TieRodOuterRole, Knuckle},
		{"tieRodInner", "tie rod, inner ball", TieRodInnerRole, GearBody},
		{"wheelCentre", "wheel centre", WheelCentreRole, Knuckle},
	},
	layout: cornerLayout{
		rods: []link{
			{"lower arm, front leg", "lowerFrontPivot", "lowerBallJoint"},
			{"lower arm, rear leg", "lowerRearPivot", "lowerBallJoint"},
			{"upper arm, front leg", "upperFrontPivot", "upperBallJoint"},
			{"upper arm, rear leg", "upperRearPivot", "upperBallJoint"},
		},
		axis: axisLink{ballJointAxis, "lowerBallJoint", "upperBallJoint"},
		adjusters: []gives{
			{key: "upper-legs", label: "upper arm's leg lengths", joints: []string{"upperBallJoint"}},
			{key: "upper-pivots", label: "shims at the upper pivots", joints: []string{"upperBallJoint"}, pivots: true},
			{key: "lower-legs", label: "lower arm's leg lengths (tension rod)", joints: []string{"lowerBallJoint"}},
			{key: "lower-pivots", label: "eccentrics at the lower pivots", joints: []string{"lowerBallJoint"}, pivots: true},
		},
	},
}
