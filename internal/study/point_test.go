package study

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestSetPoint(t *testing.T) {
	place := Vec3{1, 2, 3}
	tests := []struct {
		name, template string
		point          PlacedPoint
	}{
		{"left", "strut-rack", PlacedPoint{"strutTop", Left, place}},
		{"right of a mirrored car", "strut-rack", PlacedPoint{"strutTop", Right, place}},
		{"link", "solid-axle-rack", PlacedPoint{"links.2.outer", "", place}},
		{"side of an axle", "solid-axle-rack", PlacedPoint{"kingpins.1", Right, place}},
		{"gear", "double-wishbone-centre-link", PlacedPoint{"idlerBall", "", place}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := templateDoc(t, tt.template)
			d.stateRight() // so that a point of the left does not move its mirror image
			before := d.Clone()
			if err := d.SetPoint(tt.point); err != nil {
				t.Fatal(err)
			}
			changed := 0
			for i, p := range before.Points() {
				if got := d.Points()[i]; got != p {
					changed++
					if diff := cmp.Diff(tt.point, got); diff != "" {
						t.Errorf("changed point (-want +got):\n%s", diff)
					}
				}
			}
			if changed != 1 {
				t.Errorf("%d points changed, want 1", changed)
			}
		})
	}
}

func TestSetPointErrors(t *testing.T) {
	tests := []struct {
		name, template string
		point          PlacedPoint
	}{
		{"point of another suspension", "strut-rack", PlacedPoint{Name: "upperBallJoint", Side: Left}},
		{"no side", "strut-rack", PlacedPoint{Name: "strutTop"}},
		{"side of a link", "solid-axle-rack", PlacedPoint{Name: "links.0.inner", Side: Left}},
		{"gear that a rack lacks", "strut-rack", PlacedPoint{Name: "pitmanBall"}},
		{"idler that the car lacks", "solid-axle-pitman", PlacedPoint{Name: "idlerBall"}},
		{"axis is not a point", "double-wishbone-centre-link", PlacedPoint{Name: "pitmanAxis"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if err := templateDoc(t, tt.template).SetPoint(tt.point); err == nil {
				t.Errorf("SetPoint(%+v) = nil, want an error", tt.point)
			}
		})
	}
}

// TestSetPointOfNoKind refuses the point of a suspension that is not known.
func TestSetPointOfNoKind(t *testing.T) {
	d := templateDoc(t, "strut-rack")
	d.Suspension.Type = "unicycle"
	if err := d.SetPoint(PlacedPoint{"strutTop", Left, Vec3{}}); err == nil || !strings.Contains(err.Error(), "unicycle") {
		t.Errorf("SetPoint of a unicycle = %v, want an error that names it", err)
	}
}

// TestSetRightKeepsTheRest checks that a right side that is stated for the first
// time differs from the mirror image in the point that was set alone.
func TestSetRightKeepsTheRest(t *testing.T) {
	d := templateDoc(t, "strut-rack")
	want := d.Suspension.Corner(Right)
	want.Points["strutTop"] = Vec3{1, -2, 3}
	if err := d.SetPoint(PlacedPoint{"strutTop", Right, Vec3{1, -2, 3}}); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, d.Suspension.Corner(Right)); diff != "" {
		t.Errorf("right side (-want +got):\n%s", diff)
	}
}
