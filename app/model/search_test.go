package model_test

import (
	"reflect"
	"slices"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

func TestUsualSearchCanRun(t *testing.T) {
	for _, template := range study.Templates() {
		t.Run(template.Key, func(t *testing.T) {
			d := template.Document()
			d.Search = nil
			s := model.Open(d)
			if err := s.Cars().Err; err != nil {
				t.Fatal(err)
			}
			if err := s.EditSearch("free", "", func(*study.Search) {}); err != nil {
				t.Fatal(err)
			}
			if err := s.Document().ReadyToSearch(); err != nil {
				t.Error(err)
			}
		})
	}
}

func TestFreeBoundsFix(t *testing.T) {
	s := open(t)
	s.Edit("no search", "", func(d *study.Document) { d.Search = nil })
	for range 2 { // the second time it is free already
		if err := s.Free("tieRodInnerHeight"); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.SetBounds("tieRodInnerHeight", -5, 7); err != nil {
		t.Fatal(err)
	}
	want := study.Variable{Parameter: "tieRodInnerHeight", Min: -5, Max: 7}
	if got := s.Document().Search.Variables; len(got) != 3 || !reflect.DeepEqual(got[2], want) {
		t.Errorf("variables %+v, want %+v last of three", got, want)
	}
	if err := s.Fix("tieRodInnerHeight"); err != nil {
		t.Fatal(err)
	}
	if got := s.Document().Search.Variables; len(got) != 2 {
		t.Errorf("variables %+v, want two", got)
	}
}

func TestTargets(t *testing.T) {
	s := open(t)
	for _, kind := range []model.TargetKind{model.SlopeTarget, model.PointsTarget, model.FlatTarget} {
		if err := s.SetTarget(kind); err != nil {
			t.Fatal(err)
		}
		if got := model.KindOfTarget(s.Document().Search); got != kind {
			t.Errorf("kind of target %d, want %d", got, kind)
		}
	}
	for _, slope := range []float64{0.0037, -1.0 / 3, 0.1} {
		if err := s.SetSlope(slope); err != nil {
			t.Fatal(err)
		}
		const tolerance = 1e-15 // one product and one quotient
		if got := model.Slope(s.Document().Search); got-slope > tolerance || slope-got > tolerance {
			t.Errorf("slope %g comes back as %g", slope, got)
		}
	}
}

func TestTargetPointsAreInOrder(t *testing.T) {
	s := open(t)
	if err := s.SetTargetPoints([][2]float64{{40, 0.1}, {-40, 0}, {40, 0.2}, {0, 0}}, ""); err != nil {
		t.Fatal(err)
	}
	want := [][2]float64{{-40, 0}, {0, 0}, {40, 0.2}}
	if got := s.Document().Search.Target; !slices.Equal(got, want) {
		t.Errorf("target %v, want %v", got, want)
	}
}

func TestScenarios(t *testing.T) {
	s := open(t)
	for _, k := range s.UsualScenarios() {
		if err := s.AddScenarios([]study.Scenario{k}); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.SetScenario(1, "rename", func(k *study.Scenario) { k.Name = "race" }); err != nil {
		t.Fatal(err)
	}
	if err := s.RemoveScenario(0); err != nil {
		t.Fatal(err)
	}
	got := s.Document().Search.Scenarios
	if len(got) != 3 || got[0].Name != "race" || len(got[0].Changes) != 1 {
		t.Errorf("set-ups %+v, want three, the first called race", got)
	}
	if err := s.Document().ReadyToSearch(); err != nil {
		t.Error(err)
	}
}
