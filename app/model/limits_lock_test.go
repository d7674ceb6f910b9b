package model_test

import (
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// TestSetLimitAt chooses where a limit is looked at, and back again: the file then has no
// word of it.
func TestSetLimitAt(t *testing.T) {
	d, most := deskWith(t), 30.0
	if err := d.Session.SetLimits("limits", []study.Limit{{Result: "outerBallAngle", Max: &most}, {Result: "tieRodLength", Max: &most}}); err != nil {
		t.Fatal(err)
	}
	limit := func() *study.Limit { return &d.Session.Document().Search.Limits[0] }
	for _, tt := range []struct{ set, want, label string }{
		{study.AtLock, study.AtLock, "Outer ball, angle off neutral, also at lock"},
		{study.AtStraight, "", "Outer ball, angle off neutral"},
	} {
		if err := d.Session.SetLimitAt(0, tt.set); err != nil {
			t.Fatal(err)
		}
		if label, unit := model.LimitLabel(d.Session.Document(), limit()); limit().At != tt.want || label != tt.label || unit != "deg" {
			t.Errorf("set to %q: at %q, %q in %s; want %q and %q", tt.set, limit().At, label, unit, tt.want, tt.label)
		}
	}
	if err := d.Session.SetLimitAt(1, study.AtLock); err == nil || !strings.Contains(err.Error(), "tieRodLength") {
		t.Errorf("the length of the tie rod at lock: %v, want it refused", err)
	}
	if err := d.Session.SetLock(""); err != nil {
		t.Fatal(err)
	}
	if err := d.Session.SetLimitAt(0, study.AtLock); err == nil || !strings.Contains(err.Error(), "steering.lock") || limit().At != "" {
		t.Errorf("full lock of a study without: %v, at %q; want it refused", err, limit().At)
	}
}

// TestSetLock types full lock of a rack in the unit shown, and of a pitman arm in degrees.
func TestSetLock(t *testing.T) {
	for _, tt := range []struct {
		name, template, text string
		units                study.Units
		want                 float64
		shown, unit          string
	}{
		{"rack", "double-wishbone-rack", "58,5", study.Millimetre, 58.5, "58.50", "mm"},
		{"rack in inches", "double-wishbone-rack", "2.5", study.Inch, 63.5, "2.500", "in"},
		{"pitman arm", "solid-axle-pitman", " 34.5 ", study.Inch, 34.5, "34.5", "deg"},
		{"not known", "double-wishbone-rack", " ", study.Millimetre, 0, "", "mm"},
	} {
		d := model.NewDesk(template(t, tt.template).Document())
		if err := d.Session.SetDisplay("units", func(v *study.Display) { v.Units = tt.units }); err != nil {
			t.Fatal(err)
		}
		if err := d.Session.SetLock(tt.text); err != nil {
			t.Fatalf("%s: %v", tt.name, err)
		}
		doc := d.Session.Document()
		v := model.LockOf(doc)
		if doc.Steering.Lock != tt.want || v.Text != tt.shown || v.Unit != tt.unit {
			t.Errorf("%s: lock %g, shown as %q %s; want %g, %q %s", tt.name, doc.Steering.Lock, v.Text, v.Unit, tt.want, tt.shown, tt.unit)
		}
	}
	d := deskWith(t)
	before := d.Session.Document().Steering.Lock
	for _, text := range []string{"0", "-5", "far"} {
		if err := d.Session.SetLock(text); err == nil || d.Session.Document().Steering.Lock != before {
			t.Errorf("lock %q: %v, %g mm; want it refused", text, err, d.Session.Document().Steering.Lock)
		}
	}
	arm := model.NewDesk(template(t, "solid-axle-pitman").Document())
	for _, text := range []string{"Inf", "NaN", "1e999"} {
		if err := arm.Session.SetLock(text); err == nil {
			t.Errorf("lock %q of a pitman arm is taken", text)
		}
	}
}

// TestStandingOutOfReach says which link keeps the car from a lock.
func TestStandingOutOfReach(t *testing.T) {
	d, most := deskWith(t), 30.0
	if err := d.Session.SetLock("250"); err != nil {
		t.Fatal(err)
	}
	if err := d.Session.SetLimits("limit", []study.Limit{{Result: "outerBallAngle", Max: &most, At: study.AtLock}}); err != nil {
		t.Fatal(err)
	}
	list, err := d.Standing(d.Selected())
	if err != nil || len(list) != 1 || list[0].Held || !strings.Contains(list[0].Text, " stands in the way at static height and full ") {
		t.Errorf("%+v, %v; want it broken by a link", list, err)
	}
}
