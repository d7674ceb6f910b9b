package model_test

import (
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// TestUnitsLeaveTheCars: what was computed of the cars holds when only the units change in
// which numbers are shown, and another car as reference.
func TestUnitsLeaveTheCars(t *testing.T) {
	s := model.NewDesk(study.Template{Key: "double-wishbone-rack"}.Document()).Session
	before := s.Cars().Base().Solution()
	if err := s.SetDisplay("units", func(d *study.Display) { d.Units = study.Inch }); err != nil {
		t.Fatal(err)
	}
	if s.Document().Display.Units != study.Inch || s.CanUndo() != "units" {
		t.Errorf("display %+v, undo %q", s.Document().Display, s.CanUndo())
	}
	if s.Cars().Base().Solution() != before {
		t.Error("the base car was solved anew")
	}
	s.Undo()
	if d := s.Document().Display; d != nil && d.Units == study.Inch {
		t.Errorf("display %+v after undo", d)
	}
}
