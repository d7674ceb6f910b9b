package solver

// strutKind has a lower arm and a strut whose axis is fixed in the knuckle and
// slides through a mount on the body. Its steering axis runs from the lower ball
// joint to the mount.
var strutKind = &Kind{
	Name:  "strut",
	Label: "Strut",
	SidePoints: []Hardpoint{
		{"lowerFrontPivot", "lower arm, front pivot", NoRole, Chassis},
		{"lowerRearPivot", "lower arm, rear pivot", NoRole, Chassis},
		{"lowerBallJoint", "lower ball joint", LowerBallRole, Knuckle},
		{"strutTop", "strut top mount", NoRole, Chassis},
		{"strutLower", "point low on the strut's axis", NoRole, Knuckle},
		{"tieRodOuter", "tie rod, outer ball", TieRodOuterRole, Knuckle},
		{"tieRodInner", "tie rod, inner ball", TieRodInnerRole, GearBody},
		{"wheelCentre", "wheel centre", WheelCentreRole, Knuckle},
	},
	layout: cornerLayout{
		rods: []link{
			{"lower arm, front leg", "lowerFrontPivot", "lowerBallJoint"},
			{"lower arm, rear leg", "lowerRearPivot", "lowerBallJoint"},
		},
		strut: &slider{"strutLower", "strutTop"},
		axis:  axisLink{mountAxis, "lowerBallJoint", "strutTop"},
		adjusters: []gives{
			{key: "top-mount", label: "camber plate at the strut's top", mount: true},
			{key: "lower-legs", label: "lower arm's leg lengths (tension rod)", joints: []string{"lowerBallJoint"}},
			{key: "lower-pivots", label: "eccentrics at the lower pivots", joints: []string{"lowerBallJoint"}, pivots: true},
		},
	},
}
