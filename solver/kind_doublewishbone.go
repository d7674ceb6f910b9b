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
		rods: []rodSpec{
			{"lower arm, front leg", 0, 2},
			{"lower arm, rear leg", 1, 2},
			{"upper arm, front leg", 3, 5},
			{"upper arm, rear leg", 4, 5},
			{"tie rod", 7, 6},
		},
		wheel: 8, arm: 6,
		axis: axisSpec{ballJointAxis, 2, 5},
		adjusters: []adjuster{
			{key: "upper-legs", label: "upper arm's leg lengths", pair: [2]int{2, 3}},
			{key: "upper-pivots", label: "shims at the upper pivots", pair: [2]int{2, 3}, pivots: true},
			{key: "lower-legs", label: "lower arm's leg lengths (tension rod)", pair: [2]int{0, 1}},
			{key: "lower-pivots", label: "eccentrics at the lower pivots", pair: [2]int{0, 1}, pivots: true},
		},
	},
}
