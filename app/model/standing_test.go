package model_test

import (
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// standingTo returns how the demo's selected car stands to one limit.
func standingTo(t *testing.T, l study.Limit, units study.Units) model.Standing {
	t.Helper()
	d := deskWith(t)
	if err := d.Session.SetLimits("limit", []study.Limit{l}); err != nil {
		t.Fatal(err)
	}
	if err := d.Session.SetDisplay("units", func(v *study.Display) { v.Units = units }); err != nil {
		t.Fatal(err)
	}
	list, err := d.Standing(d.Selected())
	if err != nil || len(list) != 1 {
		t.Fatalf("%v, %v, want how the car stands to one limit", list, err)
	}
	return list[0]
}

func TestStandingInWords(t *testing.T) {
	bound := func(x float64) *float64 { return &x }
	for _, tt := range []struct {
		name  string
		limit study.Limit
		units study.Units
		held  bool
		want  []string
	}{
		{"held", study.Limit{Result: "tieRodLength", Max: bound(1000)}, study.Millimetre, true, []string{" mm, at most 1000.00 wanted: ", " to spare"}},
		{"broken", study.Limit{Result: "tieRodLength", Max: bound(100)}, study.Millimetre, false, []string{"at most 100.00 wanted: broken by "}},
		{"in inches", study.Limit{Result: "tieRodLength", Min: bound(25.4)}, study.Inch, true, []string{" in, at least 1.000 wanted: "}},
		{"between", study.Limit{Result: "outerBallAngle", Min: bound(-1), Max: bound(89)}, study.Millimetre, true, []string{" deg, −1.000 to 89.000 wanted: "}},
		{"adjuster", study.Limit{Result: "adjusterRange", Min: bound(2)}, study.Millimetre, true, []string{" mm, at least 2.00 wanted: ", " to spare"}},
		{"also at lock", study.Limit{Result: "innerBallAngle", Max: bound(3), At: study.AtLock}, study.Millimetre, false, []string{" deg at 50 mm ", " and full ", " lock (", " wheel), at most 3.000 wanted: broken by "}},
		{"also at lock, in inches", study.Limit{Result: "innerBallAngle", Max: bound(3), At: study.AtLock}, study.Inch, false, []string{" deg at 1.969 in "}},
	} {
		s := standingTo(t, tt.limit, tt.units)
		if s.Held != tt.held {
			t.Errorf("%s: held %t, want %t", tt.name, s.Held, tt.held)
		}
		for _, want := range tt.want {
			if !strings.Contains(s.Text, want) {
				t.Errorf("%s: %q, want %q in it", tt.name, s.Text, want)
			}
		}
	}
}

// TestStandingFailsOneByOne takes what a limit needs out of the study: its own line says
// so, in the words of the page, and where it states it; the other limit is held as before.
func TestStandingFailsOneByOne(t *testing.T) {
	bound := func(x float64) *float64 { return &x }
	for _, tt := range []struct {
		name  string
		limit study.Limit
		want  []string
	}{
		{"engagement", study.Limit{Result: "threadEngagement", Min: bound(1)}, []string{"tie rod, thread engagement is missing: the limit on thread engagement needs", "state it in Car, Tie rod"}},
		{"room", study.Limit{Result: "adjusterRange", Min: bound(1)}, []string{"tie rod, thread engagement"}},
		{"cone", study.Limit{Result: "innerBallAngle"}, []string{"limit 1: ", "tie rod, inner ball, half angle would stand"}},
		{"lock", study.Limit{Result: "outerBallAngle", Max: bound(40), At: study.AtLock}, []string{"state full lock"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := deskWith(t)
			if err := d.Session.SetLimits("limits", []study.Limit{tt.limit, {Result: "tieRodLength", Max: bound(1000)}}); err != nil {
				t.Fatal(err)
			}
			if list, err := d.Standing(d.Selected()); err != nil || list[0].Lacks != "" {
				t.Fatalf("%+v, %v, want the limit measured to begin with", list, err)
			}
			if err := d.Session.Edit("take away", "", func(s *study.Document) { s.TieRod, s.Steering.Lock = nil, 0 }); err != nil {
				t.Fatal(err)
			}
			list, err := d.Standing(d.Selected())
			if err != nil || len(list) != 2 {
				t.Fatalf("%+v, %v, want how the car stands to two limits", list, err)
			}
			if l := list[0]; l.Held || l.Text != "cannot be measured" {
				t.Errorf("%+v, want that it cannot be measured", l)
			}
			for _, want := range tt.want {
				if !strings.Contains(list[0].Lacks, want) {
					t.Errorf("%q, want %q in it", list[0].Lacks, want)
				}
			}
			if l := list[1]; l.Lacks != "" || !l.Held || !strings.HasSuffix(l.Text, " to spare") {
				t.Errorf("the other limit %+v, want it held", l)
			}
		})
	}
}

// TestStandingFollowsTheCar changes the selected car and asks again.
func TestStandingFollowsTheCar(t *testing.T) {
	d := deskWith(t)
	most := 1000.0
	if err := d.Session.SetLimits("limit", []study.Limit{{Result: "steeringArmLength", Max: &most}}); err != nil {
		t.Fatal(err)
	}
	text := func() string {
		list, err := d.Standing(d.Selected())
		if err != nil {
			t.Fatal(err)
		}
		return list[0].Text
	}
	before := text()
	if again := text(); again != before {
		t.Errorf("asked twice: %q, then %q", before, again)
	}
	if err := d.Set("steeringArmLength", 20, ""); err != nil {
		t.Fatal(err)
	}
	if text() == before {
		t.Errorf("after 20 mm on the arm still %q", before)
	}
}

// TestNewLimitsCanBeMeasured states each limit of the lists on the demo, which has all
// that they need, and reads how its car stands to it.
func TestNewLimitsCanBeMeasured(t *testing.T) {
	var keys []string
	for _, k := range model.LimitKinds(deskWith(t).Session.Document()) {
		keys = append(keys, string(k.Key))
	}
	for _, o := range model.Obstacles {
		keys = append(keys, o.Key)
	}
	for _, key := range keys {
		d := deskWith(t)
		l := model.NewLimit(d.Session.Document(), d.Session.Cars().Design, key)
		if err := d.Session.SetLimits("limit", []study.Limit{l}); err != nil {
			t.Fatal(err)
		}
		if err := d.Session.Document().ReadyToSearch(); err != nil {
			t.Errorf("%s: %v", key, err)
		}
		list, err := d.Standing(d.Selected())
		if err != nil || len(list) != 1 || strings.Contains(list[0].Text, "cannot") {
			t.Errorf("%s: %v, %v", key, list, err)
		}
	}
}
