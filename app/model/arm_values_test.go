package model_test

import (
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// TestArmValues states and takes away each thing of an arm, in mm and in inches: it is shown
// as it was typed, kept in the file's units, undone, and an arm of which nothing is stated is
// none.
func TestArmValues(t *testing.T) {
	for _, units := range []study.Units{study.Millimetre, study.Inch} {
		s := model.Open(study.Template{Key: "strut-rack"}.Start())
		mustDo(t, s.SetDisplay("units", func(v *study.Display) { v.Units = units }))
		start := s.Document().Arm
		valueOf := func(id string) *model.CarValue {
			for _, v := range model.ArmValues(s.Document()) {
				if v.ID == id {
					return &v
				}
			}
			t.Fatalf("no value %s", id)
			return nil
		}
		if err := s.SetCarValue(valueOf("arm-taper"), "0.1"); err == nil || !strings.Contains(err.Error(), "diameter first") {
			t.Errorf("a taper without a hole gives %v", err)
		}
		list := model.ArmValues(s.Document())
		if want := 4 + len(study.ArmTexts); len(list) != want {
			t.Fatalf("%d values, want %d", len(list), want)
		}
		typed := map[string]string{}
		for _, v := range list {
			text := "its " + v.Label
			switch {
			case v.ID == "arm-taper":
				text = "0.125"
			case v.Unit != "":
				text = map[study.Units]string{study.Millimetre: "19.05", study.Inch: "0.75"}[units]
			}
			mustDo(t, s.SetCarValue(valueOf(v.ID), text))
			typed[v.ID] = text
		}
		for id, text := range typed {
			if got := valueOf(id).Text; got != text && got != text+"0" && !strings.HasPrefix(got, text+"0 (") {
				t.Errorf("%s: %q is shown as %q", id, text, got)
			}
		}
		a := s.Document().Arm
		if want := s.Document().Units.FromMillimetres(19.05); a.Thickness != want || a.Hole.LargeDiameter != want || a.BoltDiameter != want || a.Hole.Taper != 0.125 {
			t.Errorf("in %s: %+v with %+v", units, a, a.Hole)
		}
		if err := s.SetCarValue(valueOf("arm-taper"), "2"); err == nil {
			t.Error("a hole that closes on its way through the eye is taken")
		}
		s.Undo()
		if got := valueOf("arm-proofLoad").Text; got != "" {
			t.Errorf("undone, and the last is %q", got)
		}
		s.Redo()
		for _, v := range []string{"arm-taper", "arm-hole"} {
			mustDo(t, s.SetCarValue(valueOf(v), ""))
		}
		for id := range typed {
			mustDo(t, s.SetCarValue(valueOf(id), ""))
		}
		if s.Document().Arm != nil || start != nil {
			t.Errorf("nothing is stated, and the arm is %+v; it was %+v", s.Document().Arm, start)
		}
	}
}
