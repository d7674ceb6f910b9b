package model_test

import (
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// template opens one of the invented cars.
func template(t *testing.T, key string) *model.Session {
	t.Helper()
	return model.Open(study.Template{Key: key}.Document())
}

func TestPointRows(t *testing.T) {
	tests := []struct {
		template    string
		left, right int // those of neither side among them
	}{
		{"double-wishbone-rack", 9, 0},
		{"double-wishbone-centre-link", 13, 4},
		{"solid-axle-pitman", 16, 16},
	}
	for _, tt := range tests {
		t.Run(tt.template, func(t *testing.T) {
			d := study.Template{Key: tt.template}.Start()
			for side, want := range map[study.Side]int{study.Left: tt.left, study.Right: tt.right} {
				rows := model.PointRows(d, side)
				if len(rows) != want {
					t.Errorf("side %q has %d points, want %d", side, len(rows), want)
				}
				for _, r := range rows {
					if r.Label == "" {
						t.Errorf("%s has no label", r.Name)
					}
				}
			}
		})
	}
}

func TestMirror(t *testing.T) {
	s := template(t, "double-wishbone-rack")
	if err := s.OwnRight(); err != nil {
		t.Fatal(err)
	}
	p := model.PointRows(s.Document(), study.Right)[0]
	if err := s.SetPlace(p, 2, p.Place[2]+3); err != nil {
		t.Fatal(err)
	}
	if err := s.MirrorLeft(); err != nil {
		t.Fatal(err)
	}
	left := s.Document().Suspension.Left.Points[p.Name]
	if left[2] != p.Place[2]+3 || left[1] != -p.Place[1] {
		t.Errorf("left %v is not the mirror image of right %v", left, p.Place)
	}
	if err := s.MirrorRight(); err != nil {
		t.Fatal(err)
	}
	if s.Document().Suspension.Right != nil {
		t.Error("the right side still has points of its own")
	}
}

func TestShift(t *testing.T) {
	for _, key := range []string{"strut-centre-link", "solid-axle-rack"} {
		s := template(t, key)
		before := s.Document().Points()
		by := study.Vec3{10, 0, -5}
		if err := s.Shift(by); err != nil {
			t.Fatal(err)
		}
		for i, p := range s.Document().Points() {
			for k := range by {
				if p.Place[k] != before[i].Place[k]+by[k] {
					t.Errorf("%s: %s %v, want it moved by %v from %v", key, p.Name, p.Place, by, before[i].Place)
				}
			}
		}
	}
}

// TestShiftTakesTheMounts: a damper, a spring and the face of the arm go where the
// hardpoints go.
func TestShiftTakesTheMounts(t *testing.T) {
	s := template(t, "double-wishbone-rack")
	mustDo(t, s.Edit("a spring", "", func(d *study.Document) {
		d.Suspension.Left.Spring = &study.Damper{Body: study.Vec3{0, 480, 620}, Moving: study.Vec3{0, 600, 200}, On: "lower-arm"}
	}))
	was := s.Document().Suspension.Left
	mustDo(t, s.Shift(study.Vec3{10, 0, -5}))
	is := s.Document().Suspension.Left
	for name, v := range map[string][2]study.Vec3{
		"damper, body": {was.Damper.Body, is.Damper.Body}, "damper, arm": {was.Damper.Moving, is.Damper.Moving},
		"spring, body": {was.Spring.Body, is.Spring.Body}, "spring, arm": {was.Spring.Moving, is.Spring.Moving},
		"face": {was.ArmFace.Point, is.ArmFace.Point}, "bolt": {was.ArmFace.Bolts[0], is.ArmFace.Bolts[0]},
	} {
		if want := (study.Vec3{v[0][0] + 10, v[0][1], v[0][2] - 5}); v[1] != want {
			t.Errorf("%s stands at %v, want %v", name, v[1], want)
		}
	}
	if was.ArmFace.Normal != is.ArmFace.Normal {
		t.Error("the face's direction was shifted")
	}
}
