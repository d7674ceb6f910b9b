package model_test

import (
	"testing"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/study"
)

func TestParts(t *testing.T) {
	s := open(t)
	if err := s.Edit("none", "", func(d *study.Document) { d.Catalogue = nil }); err != nil {
		t.Fatal(err)
	}
	err := s.TakeParts([]study.Part{
		{Slot: "arm", Name: "short", Price: 100, Changes: study.Changes{"steeringArmLength": -5}},
		{Slot: "spacer", Name: "6 mm", Price: 12, Changes: study.Changes{"tieRodOuterHeight": -6}},
	})
	if err != nil {
		t.Fatal(err)
	}
	if err := s.SetPart(1, "price", func(p *study.Part) { p.Price = 14 }); err != nil || s.Document().Catalogue[1].Price != 14 {
		t.Errorf("SetPart = %v, part %+v, want a price of 14", err, s.Document().Catalogue[1])
	}
	if err := s.RemovePart(0); err != nil || len(s.Document().Catalogue) != 1 || s.Document().Catalogue[0].Name != "6 mm" {
		t.Errorf("RemovePart = %v, catalogue %+v, want the spacer alone", err, s.Document().Catalogue)
	}
	if label := s.Undo(); label != "remove a part" || len(s.Document().Catalogue) != 2 {
		t.Errorf("undone %q, catalogue %+v, want both parts", label, s.Document().Catalogue)
	}
}

func TestChoose(t *testing.T) {
	for _, tt := range []struct {
		parts []engine.ChosenPart
		want  string
	}{
		{nil, "as it stands"},
		{[]engine.ChosenPart{{Slot: "spacer", Name: "6 mm"}}, "6 mm"},
		{[]engine.ChosenPart{{Slot: "arm", Name: "short"}, {Slot: "spacer", Name: "6 mm"}}, "short + 6 mm"},
	} {
		desk := deskWith(t)
		c := &engine.Choice{Parts: tt.parts, Changes: study.Changes{"tieRodOuterHeight": -6}}
		if err := desk.Choose(c); err != nil {
			t.Fatal(err)
		}
		if car := desk.Selected(); car.Name != tt.want || model.ChoiceName(c) != tt.want || car.Changes["tieRodOuterHeight"] != -6 {
			t.Errorf("choice of %v is %q with %v, want %q with its change", tt.parts, car.Name, car.Changes, tt.want)
		}
	}
}
