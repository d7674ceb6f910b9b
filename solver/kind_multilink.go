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
		rods: []rodSpec{
			{"rods.0", 0, 1}, {"rods.1", 2, 3}, {"rods.2", 4, 5}, {"rods.3", 6, 7},
			{"tie rod", 9, 8},
		},
		wheel: 10, arm: 8,
		axis: axisSpec{kind: screwAxis},
		adjusters: []adjuster{
			{key: "upper-legs", label: "lengths of rods 0 and 1", pair: [2]int{0, 1}},
			{key: "upper-pivots", label: "eccentrics at the inner ends of rods 0 and 1", pair: [2]int{0, 1}, pivots: true},
			{key: "lower-legs", label: "lengths of rods 2 and 3", pair: [2]int{2, 3}},
			{key: "lower-pivots", label: "eccentrics at the inner ends of rods 2 and 3", pair: [2]int{2, 3}, pivots: true},
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
