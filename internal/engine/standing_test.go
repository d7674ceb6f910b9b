package engine

import (
	"testing"
)

func TestStanding(t *testing.T) {
	d := document(t, `"tieRod": {"engagement": 20}, "search": {
		"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}],
		"limits": [
			{"result": "threadEngagement", "min": 15},
			{"result": "steeringArmLength", "max": 60, "side": "left"}
		]},`)
	got, err := Standing(t.Context(), d, StandingOptions{Candidate: "low ball"})
	if err != nil {
		t.Fatal(err)
	}
	arm := armOf(t, d, "low ball").Sides[0]
	if got.Candidate != "low ball" || len(got.Limits) != 2 {
		t.Fatalf("%d limits of %q", len(got.Limits), got.Candidate)
	}
	thread, length := &got.Limits[0], &got.Limits[1]
	near(t, "thread", float64(thread.Value), float64(arm.Thread), 1e-9)
	near(t, "arm", float64(length.Value), arm.Arm.After, 1e-9)
	if !thread.Held || thread.Unit != "mm" || thread.Max.Valid() || thread.Min != 15 {
		t.Errorf("thread %+v, want at least 15 mm, held", thread)
	}
	if length.Held || length.Name != "steeringArmLength left" || length.Max != 60 {
		t.Errorf("arm %+v, want more than the 60 mm allowed", length)
	}
}

func TestStandingWithoutLimits(t *testing.T) {
	got, err := Standing(t.Context(), document(t, ""), StandingOptions{})
	if err != nil || got.Candidate != "base" || got.Limits == nil || len(got.Limits) != 0 {
		t.Errorf("%+v, %v, want the base car and an empty list", got, err)
	}
}

func TestStandingRefuses(t *testing.T) {
	_, err := Standing(t.Context(), document(t, ""), StandingOptions{Candidate: "none"})
	wantError(t, err, Wrong, "candidate", "none")
}
