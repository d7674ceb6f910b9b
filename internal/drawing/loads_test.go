package drawing

import (
	"slices"
	"strings"
	"testing"

	"toewright/internal/drawing/dxf"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// textsOn returns the words of a sheet.
func textsOn(s *sheet) (list []string) {
	for _, e := range s.drawn {
		if text, ok := e.(dxf.Text); ok {
			list = append(list, text.Value)
		}
	}
	return list
}

// onPaper returns the sheet of both arms, or of one.
func onPaper(t *testing.T, d *study.Document, o Options) *sheet {
	t.Helper()
	of, err := subjectOf(t.Context(), d.Recognised(), &o)
	if err != nil {
		t.Fatal(err)
	}
	return printed(of, papers["a4"])
}

// TestLoadsOnTheDrawing: every case of the study stands on the sheet of each arm, original
// beside new, as the engine has it, with its source and without a verdict; in lbf too where
// lengths show in inches.
func TestLoadsOnTheDrawing(t *testing.T) {
	for _, c := range []struct{ template, candidate string }{{"double-wishbone-rack", "Spacers 12 mm"}, {"swing-arm-rack", "Arm up 20"}} {
		for _, units := range []study.Units{study.Millimetre, study.Inch} {
			for _, side := range []string{"left", "right"} {
				d := study.Template{Key: c.template}.Document()
				d.Display = &study.Display{Units: units}
				said := textsOn(onPaper(t, d, Options{Candidate: c.candidate, Side: side}))
				all := strings.Join(said, " ")
				for _, car := range []string{study.BaseName, c.candidate} {
					found, err := engine.Loads(t.Context(), d, engine.LoadsOptions{Candidate: car})
					if err != nil {
						t.Fatal(err)
					}
					for _, l := range found.Loads {
						if l.Side != side || l.TieRod == 0 {
							continue
						}
						for _, f := range found.Figures() {
							if text := f.Number(d.Style(), &l); f.Part && !slices.Contains(said, text) {
								t.Errorf("%s, %s, %s, %s: no %s %s", c.template, car, l.Case, side, f.Label, text)
							}
						}
						if !strings.Contains(all, l.Case) {
							t.Errorf("%s: no case %s", c.template, l.Case)
						}
					}
				}
				for _, want := range append([]string{"no verdict: what a part bears is for strength work", "original", "new"}, d.Loads[0].Source) {
					if want != "" && !strings.Contains(all, want) {
						t.Errorf("%s: the sheet does not say %q", c.template, want)
					}
				}
				if strings.Contains(all, "lbf") != (units == study.Inch) {
					t.Errorf("%s in %s: lbf %t", c.template, units, strings.Contains(all, "lbf"))
				}
			}
		}
	}
}

// TestNoLoadsOnTheDrawing: a sheet without loads says why.
func TestNoLoadsOnTheDrawing(t *testing.T) {
	d := study.Template{Key: "swing-arm-rack"}.Document()
	d.Suspension.Left.Spring = nil
	if all := strings.Join(textsOn(onPaper(t, d, Options{})), " "); !strings.Contains(all, "Loads: left spring: is missing") {
		t.Error("the sheet does not say which spring is missing")
	}
	d.Loads = nil
	if all := strings.Join(textsOn(onPaper(t, d, Options{})), " "); !strings.Contains(all, "Loads: the study states no cases.") {
		t.Error("the sheet does not say that no loads are stated")
	}
}

// TestStatedByTheMaker: what the maker states in words stands on the sheet, in its field or
// among the notes where it is long; what he does not has its field, to be filled in.
func TestStatedByTheMaker(t *testing.T) {
	for _, long := range []int{1, 30} {
		d := study.Template{Key: "strut-rack"}.Document()
		blank := textsOn(onPaper(t, d, Options{}))
		d.Arm = &study.Arm{}
		for _, text := range study.ArmTexts {
			if !slices.Contains(blank, text.Label) {
				t.Errorf("no field for %s", text.Label)
			}
			*text.At(d.Arm) = strings.TrimSpace(strings.Repeat(text.Key+" ", long))
		}
		all := strings.Join(textsOn(onPaper(t, d, Options{})), " ")
		for _, text := range study.ArmTexts {
			if !strings.Contains(all, text.Key) {
				t.Errorf("%d words of %s are not on the sheet", long, text.Key)
			}
		}
	}
}
