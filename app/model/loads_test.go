package model_test

import (
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// TestLoadCases adds, changes and removes load cases: of a name that is taken another one
// is made, and what is lacking is said with what it would give.
func TestLoadCases(t *testing.T) {
	d := deskWith(t)
	s := d.Session
	was := len(s.Document().Loads)
	list := engine.LoadPresets(s.Document())
	list[0].Factors[0].Value = 60
	kerb, err := engine.PresetCase(s.Document(), list[0].Key, list[0].Factors)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []study.LoadCase{*kerb, model.OwnLoad(s.Document())} {
		if err := s.AddLoad(c); err != nil {
			t.Fatal(err)
		}
	}
	loads := s.Document().Loads
	if len(loads) != was+2 || loads[was].Name != "Kerb strike 2" || !strings.HasSuffix(loads[was].Source, "kerb's height H 60 mm") {
		t.Fatalf("cases %+v", loads[was:])
	}
	v, err := model.ParseThree("−100, 0 5e3")
	if err != nil {
		t.Fatal(err)
	}
	if err := s.SetLoad(was+1, "load", func(c *study.LoadCase) { model.PutThree(c, true, false, v); model.PutThree(c, false, false, nil) }); err != nil {
		t.Fatal(err)
	}
	own := s.Document().Loads[was+1]
	if own.Left.Force != (study.Vec3{-100, 0, 5000}) || own.Right != nil || model.ThreeText(&own.Left.Force) != "-100  0  5000" {
		t.Errorf("own case %+v", own)
	}
	d.ShowLoad(was + 2)
	if d.View.Load != was+2 {
		t.Errorf("shown %d", d.View.Load)
	}
	if err := s.RemoveLoad(was + 1); err != nil || len(s.Document().Loads) != was+1 {
		t.Errorf("removed: %v, %d cases", err, len(s.Document().Loads))
	}
	for _, text := range []string{"1 2", "1 2 x", "1 2 3 4", "nan 1 1"} {
		if _, err := model.ParseThree(text); err == nil {
			t.Errorf("%q is taken for three numbers", text)
		}
	}
}

// TestStud states the stud in one field, and refuses what is no stud.
func TestStud(t *testing.T) {
	d := deskWith(t)
	s := d.Session
	if got := model.NumbersOf(s.Document()).StudText(s.Document()); got != "14  24" {
		t.Errorf("stud %q", got)
	}
	if err := s.SetStud("16 20.5"); err != nil || *s.Document().OuterBall().Stud != (study.Stud{Diameter: 16, Height: 20.5}) {
		t.Errorf("stud %+v, %v", s.Document().OuterBall().Stud, err)
	}
	for _, text := range []string{"16", "16 0", "a b"} {
		if err := s.SetStud(text); err == nil {
			t.Errorf("%q is taken for a stud", text)
		}
	}
	if len(model.LoadsLack(s.Document())) != 0 {
		t.Errorf("lacks %q", model.LoadsLack(s.Document()))
	}
	if err := s.SetStud(""); err != nil {
		t.Fatal(err)
	}
	if err := s.Edit("less", "", func(d *study.Document) { d.Suspension.Left.Damper, d.Suspension.Left.ArmFace = nil, nil }); err != nil {
		t.Fatal(err)
	}
	lacks := strings.Join(model.LoadsLack(s.Document()), "\n")
	for _, want := range []string{"spring's two mounts", "twist and bend", "bending of the stud"} {
		if !strings.Contains(lacks, want) {
			t.Errorf("lacks %q, want %q in it", lacks, want)
		}
	}
}

// TestLoadBars: the largest load of a row has a full bar, the stock part's is shorter by
// the ratio of both.
func TestLoadBars(t *testing.T) {
	d := deskWith(t)
	row := rowOf(t, d.Compare(answered(t, d), model.CompareOrder{}, false, nil), "load twist")
	most := 0.0
	for _, k := range row.Cells {
		most = max(most, k.Bar)
	}
	if most != 1 || row.Cells[0].Bar <= 0 || row.Cells[0].Bar >= 1 {
		t.Errorf("bars %+v", row.Cells)
	}
}
