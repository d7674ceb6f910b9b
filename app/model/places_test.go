package model_test

import (
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// TestMounts states what a car may have by its places, in every kind of car: a table has
// them, each is nobody's own until it is typed, the car is solved as before, and they go
// again without a trace.
func TestMounts(t *testing.T) {
	for _, template := range study.Templates() {
		t.Run(template.Key, func(t *testing.T) {
			s := model.Open(template.Start())
			if strings.HasPrefix(template.Key, "strut") {
				mustDo(t, s.OwnRight())
			}
			for _, m := range model.Mounts(s.Document()) {
				if m.Stated {
					t.Fatalf("%s is stated in a new study", m.Key)
				}
				bare := len(model.PointRows(s.Document(), study.Left))
				mustDo(t, s.SetMount(m.Key, true))
				for _, side := range []study.Side{study.Left, study.Right} {
					if side == study.Right && s.Document().Suspension.Right == nil {
						continue
					}
					rows := model.PointRows(s.Document(), side)
					if len(rows) < bare+2 {
						t.Fatalf("%s: %d rows on the %s, want more than %d", m.Key, len(rows), side, bare)
					}
					for _, p := range rows[bare:] {
						if sign, _ := model.From(s.Document(), p.Path); sign != study.FromTemplate || model.AboutPoint(p.Name) == "" || p.Label == "" {
							t.Errorf("%s comes from %q and is told as %q", p.Path, sign, model.AboutPoint(p.Name))
						}
						mustDo(t, s.TypePoint(p, 2, "12.5"))
						if s.Document().Sources.At(p.Path+".z") != study.FromTyping || s.Document().Sources.At(p.Path+".y") != study.FromTemplate {
							t.Errorf("%s: typed, and its source is not", p.Path)
						}
					}
					for _, p := range model.PointRows(s.Document(), side)[bare:] {
						if p.Place[2] != 12.5 {
							t.Errorf("%s stands at %v", p.Path, p.Place)
						}
					}
				}
				if base := s.Cars().Base(); base == nil || base.Err != nil {
					t.Errorf("with %s: %+v", m.Key, base)
				}
				mustDo(t, s.SetMount(m.Key, false))
				if n := len(model.PointRows(s.Document(), study.Left)); n != bare {
					t.Errorf("%s taken out: %d rows, want %d", m.Key, n, bare)
				}
			}
		})
	}
}

// TestBoltsAndCarriers: bolts come and go one by one, and the carrier names its row.
func TestBoltsAndCarriers(t *testing.T) {
	s := model.Open(study.Template{Key: "double-wishbone-rack"}.Start())
	mustDo(t, s.SetMount("armFace", true))
	mustDo(t, s.SetBolts(true))
	if f := s.Document().Suspension.Left.ArmFace; len(f.Bolts) != 3 || f.Bolts[2] == f.Bolts[1] {
		t.Errorf("bolts %v", f.Bolts)
	}
	for range 4 {
		mustDo(t, s.SetBolts(false))
	}
	if f := s.Document().Suspension.Left.ArmFace; len(f.Bolts) != 0 {
		t.Errorf("bolts %v, want none", f.Bolts)
	}
	mustDo(t, s.SetMount("damper", true))
	mustDo(t, s.SetCarrier("damper", "knuckle"))
	rows := model.PointRows(s.Document(), study.Left)
	if got := rows[len(rows)-3].Label; got != "damper, on the knuckle" {
		t.Errorf("the row is called %q", got)
	}
}
