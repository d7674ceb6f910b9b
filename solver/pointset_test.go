package solver

import (
	"slices"
	"testing"
)

// TestFreePoints: only the ends of the rods that set toe can move without anything
// else, and of a solid axle those of the tie rod and the drag link.
func TestFreePoints(t *testing.T) {
	tests := []struct {
		name string
		axle *Axle
		want []string
	}{
		{"double wishbone", testWishbone(t), []string{"tieRodInner", "tieRodOuter"}},
		{"solid axle", testBeam(t), []string{"dragLink.inner", "dragLink.outer", "steeringArmBalls", "steeringArmBalls"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			u := tt.axle.static[Left].u
			free := u.freePoints()
			var got []string
			for i := range u.points {
				if free.has(i) {
					got = append(got, u.points[i].Name)
				}
			}
			if slices.Sort(got); !slices.Equal(got, tt.want) {
				t.Errorf("free points %q, want %q", got, tt.want)
			}
		})
	}
}
