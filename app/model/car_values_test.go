package model_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"toewright/app/model"
	"toewright/internal/study"
)

// valueOf returns the value of an id, nil where the car has none.
func valueOf(s *model.Session, id string) *model.CarValue {
	for _, v := range model.CarValues(s.Document()) {
		if v.ID == id {
			return &v
		}
	}
	return nil
}

// TestCarValues states, changes and takes away each value of every kind of car, with the
// right side mirrored and its own, in mm and in inches: what was typed is shown and kept,
// says that it was typed, and touches nothing else.
func TestCarValues(t *testing.T) {
	for _, template := range study.Templates() {
		key := template.Key
		for _, own := range []bool{false, true} {
			for _, units := range []study.Units{study.Millimetre, study.Inch} {
				t.Run(key+" "+string(units), func(t *testing.T) {
					s := model.Open(template.Start())
					if own && s.Document().Suspension.Right == nil {
						mustDo(t, s.OwnRight())
					}
					mustDo(t, s.SetDisplay("units", func(v *study.Display) { v.Units = units }))
					list := model.CarValues(s.Document())
					if len(list) < 2 {
						t.Fatalf("values: %+v", list)
					}
					for _, v := range list {
						before := s.Document()
						text := "2.5"
						if v.Unit == "" {
							text = "0.5 -0.25 1"
						}
						mustDo(t, s.SetCarValue(&v, " "+text+" "))
						got := valueOf(s, v.ID)
						if got.Text != text && got.Text != text+"0" && got.Text != text+"00" {
							t.Errorf("%s: %q is shown as %q", v.ID, text, got.Text)
						}
						if source := s.Document().Sources.At(v.Path + ".x"); source != study.FromTyping {
							t.Errorf("%s is from %q", v.ID, source)
						}
						for _, bad := range []string{"x", "1 2", "0 0 0", "-1", "0", "1 2 x"} {
							if v.Unit != "" || len(bad) > 2 && bad != "-1" {
								if err := s.SetCarValue(&v, bad); err == nil {
									t.Errorf("%s: %q is taken", v.ID, bad)
								}
							}
						}
						if v.ID == "pitman-axis" || v.ID == "idler-axis" {
							if err := s.SetCarValue(&v, ""); err == nil {
								t.Errorf("%s is taken away, which a centre link needs", v.ID)
							}
							continue
						}
						mustDo(t, s.SetCarValue(&v, ""))
						if got := valueOf(s, v.ID); got.Text != "" {
							t.Errorf("%s: taken away, and %q is shown", v.ID, got.Text)
						}
						if v.Text != "" {
							mustDo(t, s.SetCarValue(&v, v.Text))
						}
						after := s.Document().Clone()
						was := before.Clone()
						after.Sources, was.Sources = nil, nil
						if diff := cmp.Diff(was, after); diff != "" {
							t.Errorf("%s, stated and taken away, left (-before +after):\n%s", v.ID, diff)
						}
					}
				})
			}
		}
	}
}
