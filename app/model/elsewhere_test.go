package model_test

import (
	"strings"
	"testing"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// TestWhatAnAnswerCosts changes one thing at a time and reads what is said of the rest of
// the car. A longer arm steers slower; another height of the ball does not touch where the
// steering axis meets the ground.
func TestWhatAnAnswerCosts(t *testing.T) {
	for _, tt := range []struct {
		name         string
		changes      study.Changes
		said, unsaid string
	}{
		{"a longer arm", study.Changes{"steeringArmLength": 10}, "slower about straight ahead", "quicker"},
		{"a shorter arm", study.Changes{"steeringArmLength": -10}, "quicker about straight ahead", "slower"},
		{"more caster", study.Changes{"caster": 8}, "caster trail changes by", "scrub radius changes by 0.00"},
		{"nothing", study.Changes{"tieRodOuterHeight": 0}, "RMS", "The steering becomes"},
		{"another height", study.Changes{"tieRodOuterHeight": -5}, "RMS", "trail"},
	} {
		desk := deskWith(t)
		a, err := desk.Found(desk.Session.Document(), answerOf(func(r *engine.SearchResult) { r.Best.Values = tt.changes }))
		if err != nil {
			t.Fatal(err)
		}
		got := remarksOf(a)
		if !strings.Contains(got, tt.said) || strings.Contains(got, tt.unsaid) {
			t.Errorf("%s: remarks\n%swant %q among them and not %q", tt.name, got, tt.said, tt.unsaid)
		}
	}
}
