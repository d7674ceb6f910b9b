package solver

import "fmt"

// multiLink holds the knuckle by four rods and the tie rod. It has no ball joints
// that make a steering axis: caster and kingpin inclination are those of the
// instantaneous screw axis of steering with the wheel centre at its height.
var multiLink = &Kind{
	Name:       "multi-link",
	Label:      "Multi-link",
	SidePoints: multiLinkPoints(),
	layout: cornerLayout{
		rods: []link{
			{"rods.0", "rods.0.inner", "rods.0.outer"}, {"rods.1", "rods.1.inner", "rods.1.outer"},
			{"rods.2", "rods.2.inner", "rods.2.outer"}, {"rods.3", "rods.3.inner", "rods.3.outer"},
		},
		axis: axisLink{kind: screwAxis},
		adjusters: []gives{
			{key: "upper-legs", label: "lengths of rods 0 and 1", joints: []string{"rods.0.outer", "rods.1.outer"}},
			{key: "upper-pivots", label: "eccentrics at the inner ends of rods 0 and 1", joints: []string{"rods.0.outer", "rods.1.outer"}, pivots: true},
			{key: "lower-legs", label: "lengths of rods 2 and 3", joints: []string{"rods.2.outer", "rods.3.outer"}},
			{key: "lower-pivots", label: "eccentrics at the inner ends of rods 2 and 3", joints: []string{"rods.2.outer", "rods.3.outer"}, pivots: true},
		},
	},
}

func multiLinkPoints() []Hardpoint {
	var ps []Hardpoint
	for i := range 4 {
		ps = append(ps,
			Hardpoint{fmt.Sprintf("rods.%d.inner", i), fmt.Sprintf("rod %d, inner joint", i), NoRole, Chassis},
			Hardpoint{fmt.Sprintf("rods.%d.outer", i), fmt.Sprintf("rod %d, outer joint", i), NoRole, Knuckle})
	}
	return append(ps,
		Hardpoint{"tieRodOuter", "tie rod, outer ball", TieRodOuterRole, Knuckle},
		Hardpoint{"tieRodInner", "tie rod, inner ball", TieRodInnerRole, GearBody},
		Hardpoint{"wheelCentre", "wheel centre", WheelCentreRole, Knuckle})
}
