package model_test

import (
	"reflect"
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// tieRodValue returns a number of the tie rod by its key.
func tieRodValue(t *testing.T, key string) *model.TieRodValue {
	t.Helper()
	for i := range model.TieRodValues {
		if v := &model.TieRodValues[i]; v.Key == key {
			return v
		}
	}
	t.Fatalf("no %q among the numbers of a tie rod", key)
	return nil
}

// withoutTieRod opens the demo in a unit, as a car whose tie rod nobody has measured.
func withoutTieRod(t *testing.T, units study.Units, display *study.Display) *model.Session {
	t.Helper()
	d := template(t, "double-wishbone-rack").Document().Clone()
	d.TieRod, d.Units, d.Display = nil, units, display
	return model.Open(d)
}

// TestTieRodIsStated types a number: it stands in the file, in the file's unit, and is
// written again with all that was typed. Undo takes it back.
func TestTieRodIsStated(t *testing.T) {
	fractions := &study.Display{Fraction: study.UsualFraction}
	tests := []struct {
		name, key, text string
		units           study.Units
		display         *study.Display
		want            study.TieRod
		shown, unit     string
	}{
		{"pitch", "threadPitch", "1.5", study.Millimetre, nil, study.TieRod{ThreadPitch: 1.5}, "1.5", "mm"},
		{"threads to the inch", "threadPitch", "1/20 in", study.Millimetre, nil, study.TieRod{ThreadPitch: 1.27}, "1.27", "mm"},
		{"fine pitch in inches", "threadPitch", "1/16", study.Inch, nil, study.TieRod{ThreadPitch: 0.0625}, "0.0625", "in"},
		{"fraction", "engagement", "1 1/16", study.Inch, fractions, study.TieRod{Engagement: 1.0625}, "1 1/16", "in"},
		{"finer than a fraction", "engagement", "0.9", study.Inch, fractions, study.TieRod{Engagement: 0.9}, "0.9", "in"},
		{"other unit shown", "minEngagement", "0.5", study.Millimetre, &study.Display{Units: study.Inch}, study.TieRod{MinEngagement: 12.7}, "0.5", "in"},
		{"most", "maxEngagement", "40,25", study.Millimetre, nil, study.TieRod{MaxEngagement: 40.25}, "40.25", "mm"},
		{"inner ball", "innerBall", "27.5°", study.Millimetre, nil, study.TieRod{InnerBall: &study.BallJoint{Cone: 27.5}}, "27.5", "deg"},
		{"outer ball in an inch file", "outerBall", "22", study.Inch, fractions, study.TieRod{OuterBall: &study.BallJoint{Cone: 22}}, "22", "deg"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s, v := withoutTieRod(t, tt.units, tt.display), tieRodValue(t, tt.key)
			show := func() (string, string) { return model.NumbersOf(s.Document()).TieRodText(s.Document(), v) }
			if text, unit := show(); text != "" || unit != tt.unit {
				t.Errorf("before: %q %s, want nothing in %s", text, unit, tt.unit)
			}
			if err := s.SetTieRod(v, tt.text); err != nil {
				t.Fatal(err)
			}
			if got := s.Document().TieRod; got == nil || !reflect.DeepEqual(*got, tt.want) {
				t.Errorf("%s %q gives %+v, want %+v", tt.key, tt.text, got, tt.want)
			}
			if text, unit := show(); text != tt.shown || unit != tt.unit {
				t.Errorf("shown %q %s, want %q %s", text, unit, tt.shown, tt.unit)
			}
			if s.Undo(); s.Document().TieRod != nil {
				t.Errorf("%+v after undo, want none", s.Document().TieRod)
			}
		})
	}
}

// TestTieRodIsTakenAway empties the demo's fields one by one: each takes its own number,
// the last the tie rod. A joint's axis goes with its cone, which is said before.
func TestTieRodIsTakenAway(t *testing.T) {
	s := template(t, "double-wishbone-rack")
	full := s.Document().TieRod
	if full == nil || full.InnerBall == nil || full.InnerBall.Axis == nil || full.OuterBall == nil || full.OuterBall.Axis != nil {
		t.Fatalf("the demo's tie rod is %+v, want an axis inside and none outside", full)
	}
	for _, v := range model.TieRodValues {
		if got, want := v.LosesAxis(s.Document()), v.Key == "innerBall"; got != want {
			t.Errorf("%s: loses an axis %t, want %t", v.Key, got, want)
		}
		if err := s.SetTieRod(&v, " "); err != nil {
			t.Fatal(err)
		}
		if text, _ := model.NumbersOf(s.Document()).TieRodText(s.Document(), &v); text != "" {
			t.Errorf("%s is still %s", v.Key, text)
		}
		if last := v.Key == "outerBall"; (s.Document().TieRod == nil) != last {
			t.Errorf("after %s the tie rod is %+v, want it gone with the last number alone", v.Key, s.Document().TieRod)
		}
		if v.LosesAxis(s.Document()) {
			t.Errorf("%s: an axis is left", v.Key)
		}
	}
	for s.CanUndo() != "" {
		s.Undo()
	}
	if !reflect.DeepEqual(s.Document().TieRod, full) {
		t.Errorf("%+v after undo, want %+v", s.Document().TieRod, full)
	}
}

// TestConeKeepsItsAxis changes a cone alone.
func TestConeKeepsItsAxis(t *testing.T) {
	s := template(t, "double-wishbone-rack")
	axis := *s.Document().TieRod.InnerBall.Axis
	if err := s.SetTieRod(tieRodValue(t, "innerBall"), "26"); err != nil {
		t.Fatal(err)
	}
	if b := s.Document().TieRod.InnerBall; b.Cone != 26 || b.Axis == nil || *b.Axis != axis {
		t.Errorf("inner ball %+v, want 26 deg about %v", b, axis)
	}
}

func TestTieRodRefuses(t *testing.T) {
	tests := []struct{ key, text, want string }{
		{"engagement", "long", `"long" is not a length; type a number like 12.7, or 1/2 in`},
		{"threadPitch", "0", `"0" is not more than 0; leave it empty where it is not known`},
		{"minEngagement", "-3", `"-3" is not more than 0`},
		{"innerBall", "wide", `"wide" is not an angle`},
		{"outerBall", "-5", `"-5" is not more than 0`},
		{"outerBall", "90.5", "no ball joint leans more than 90 degrees"},
	}
	for _, tt := range tests {
		t.Run(tt.key+" "+tt.text, func(t *testing.T) {
			s := template(t, "double-wishbone-rack")
			before := s.Document()
			err := s.SetTieRod(tieRodValue(t, tt.key), tt.text)
			if err == nil || !strings.Contains(err.Error(), tt.want) || strings.Contains(err.Error(), "\n") {
				t.Errorf("error %v, want one line with %q", err, tt.want)
			}
			if s.Document() != before || s.CanUndo() != "" {
				t.Error("the study has changed")
			}
		})
	}
}

// TestEngagementMendsALimit states what a limit lacked: its line says the value, and undo
// that it cannot be measured again.
func TestEngagementMendsALimit(t *testing.T) {
	doc := template(t, "double-wishbone-rack").Document().Clone()
	doc.TieRod = nil
	least := 16.0
	doc.Search.Limits = []study.Limit{{Result: "threadEngagement", Min: &least}}
	d := model.NewDesk(doc)
	standing := func() model.Standing {
		list, err := d.Standing(d.Session.Cars().At(1))
		if err != nil || len(list) != 1 {
			t.Fatalf("%v, %v, want how the car stands to one limit", list, err)
		}
		return list[0]
	}
	if s := standing(); s.Lacks == "" {
		t.Fatalf("%+v, want it not to be measured", s)
	}
	if err := d.Session.SetTieRod(tieRodValue(t, "engagement"), "24"); err != nil {
		t.Fatal(err)
	}
	if s := standing(); s.Lacks != "" || !s.Held || !strings.Contains(s.Text, "at least 16.00 wanted: ") {
		t.Errorf("%+v, want it held", s)
	}
	if d.Session.Undo(); standing().Lacks == "" {
		t.Errorf("%+v after undo, want it not to be measured", standing())
	}
}
