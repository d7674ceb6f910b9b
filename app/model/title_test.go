package model_test

import (
	"testing"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
)

func TestTitleBlock(t *testing.T) {
	desk := deskWith(t)
	desk.Select(1)
	err := desk.Session.Edit("title", "", func(d *study.Document) {
		d.Name, d.Revision, d.Date = "Arm", "B", ""
		d.Display = &study.Display{Units: study.Inch}
	})
	if err != nil {
		t.Fatal(err)
	}
	w := desk.Session.Document().Window()
	want := map[string]string{
		"Drawing": "Arm", "Shown": desk.Session.Document().Candidates[0].Name, "Rev.": "B", "Date": "–",
		"Window": windowInInches(w), "Units": "in, toe in deg", "Program": "unversioned",
	}
	for _, f := range desk.TitleBlock() {
		if f.Value != want[f.Label] {
			t.Errorf("%s = %q, want %q", f.Label, f.Value, want[f.Label])
		}
	}
}

// windowInInches writes a window in mm as the title block has it in inches.
func windowInInches(w study.Travel) string {
	n := model.Numbers{Style: number.Style{Units: study.Inch}}
	return "+" + n.LengthNumber(w.Bump) + " / " + n.LengthNumber(-w.Droop) + " in"
}
