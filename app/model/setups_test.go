package model_test

import (
	"testing"

	"toewright/internal/study"
)

// TestSetUpsFollowTheCar adds a set-up that a candidate serves worse than the car as it
// stands, and looks at what is said of both.
func TestSetUpsFollowTheCar(t *testing.T) {
	d := deskWith(t)
	if list, err := d.SetUps(); err != nil || list != nil {
		t.Fatalf("%v, %v before there are set-ups, want none", list, err)
	}
	if err := d.Session.AddScenarios([]study.Scenario{
		{Name: "as it stands"}, {Name: "lowered", Changes: study.Changes{"rideHeight": -40}},
	}); err != nil {
		t.Fatal(err)
	}
	list, err := d.SetUps()
	if err != nil || len(list) != 2 || list[0].Binds || !list[1].Binds {
		t.Fatalf("set-ups %+v, %v, want two of which the second decides", list, err)
	}
	rows, err := d.SetUpRows()
	if err != nil || len(rows) != 2 || rows[0].Decides || !rows[1].Decides || rows[1].Now == rows[1].Before || rows[1].Before == "" {
		t.Errorf("rows %+v, %v, want the second to decide, with another peak than that of the reference", rows, err)
	}
	if again, _ := d.SetUps(); &again[0] != &list[0] {
		t.Error("the set-ups of an unchanged car are taken again")
	}
	before := list[0].Peak
	d.Select(0)
	if other, _ := d.SetUps(); len(other) != 2 || other[0].Peak == before {
		t.Errorf("set-ups of the base car %+v, want others than the candidate's", other)
	}
	d.Moving = true
	if list, err := d.SetUps(); list != nil || err != nil {
		t.Errorf("%v, %v while a hand moves the car, want none", list, err)
	}
}
