package model_test

import (
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// TestDoubtsGoToTheirPlace spoils a study in each of its parts: the doubt says where on the
// page it is settled.
func TestDoubtsGoToTheirPlace(t *testing.T) {
	for _, tt := range []struct {
		name     string
		spoil    func(*study.Document)
		step, id string
		side     study.Side
	}{
		{"wrong sign", func(d *study.Document) { d.Suspension.Left.Points["lowerBallJoint"] = study.Vec3{6, -695, 190} }, "car", "point-lowerBallJointleft-y", study.Left},
		{"below the ground", func(d *study.Document) { d.Suspension.Left.Points["tieRodOuter"] = study.Vec3{-132, 686, -240} }, "car", "point-tieRodOuterleft-z", study.Left},
		{"the right side alone", func(d *study.Document) {
			right := d.Suspension.Left.Mirrored()
			right.Points["tieRodInner"] = study.Vec3{-146, -474, 236}
			d.Suspension.Right = &right
		}, "car", "point-tieRodInnerright-x", study.Right},
		{"wheelbase", func(d *study.Document) { d.Vehicle.Wheelbase = 97.5 }, "car", "wheelbase", ""},
		{"toe at the rim", func(d *study.Document) { d.Suspension.Left.Toe = 3 }, "car", "static-toe-left", ""},
		{"engagement", func(d *study.Document) { d.TieRod = &study.TieRod{Engagement: 12, MinEngagement: 16} }, "car", "tie-rod-engagement", ""},
		{"a name twice", func(d *study.Document) { d.Candidates[1].Name = d.Candidates[0].Name }, "compare", "", ""},
		{"a reading that jumps", func(d *study.Document) { d.Readings[0].Values[2][1] *= 10 }, "readings", "", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := study.Template{Key: "double-wishbone-rack"}.Document()
			if before := model.Doubts(d); len(before) > 0 {
				t.Fatalf("of the example: %+v", before)
			}
			tt.spoil(d)
			var said []string
			for _, doubt := range model.Doubts(d) {
				if doubt.Step == tt.step && doubt.ID == tt.id && doubt.Side == tt.side {
					return
				}
				said = append(said, doubt.Path+" goes to "+doubt.Step+" "+doubt.ID)
			}
			t.Errorf("%s; want %s %s", strings.Join(said, "; "), tt.step, tt.id)
		})
	}
}
