package study

import "testing"

func TestPointPath(t *testing.T) {
	tests := []struct {
		template string
		point    PlacedPoint
		want     string
	}{
		{"strut-rack", PlacedPoint{Name: "strutTop", Side: Left}, "suspension.left.strutTop"},
		{"multi-link-rack", PlacedPoint{Name: "rods.2.outer", Side: Right}, "suspension.right.rods.2.outer"},
		{"solid-axle-pitman", PlacedPoint{Name: "kingpins.0", Side: Right}, "suspension.kingpins.right.0"},
		{"solid-axle-pitman", PlacedPoint{Name: "links.1.inner"}, "suspension.links.1.inner"},
		{"strut-centre-link", PlacedPoint{Name: "idlerBall"}, "steering.idlerBall"},
	}
	for _, tt := range tests {
		t.Run(tt.want, func(t *testing.T) {
			if got := (Template{Key: tt.template}).Document().PointPath(tt.point); got != tt.want {
				t.Errorf("got %s", got)
			}
		})
	}
}
