package engine

import (
	"strings"
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

// TestStandingFailsOneByOne: a limit that cannot be measured says why by itself, in the
// standing of a car and in a comparison, whatever it lacks; the one beside it is measured.
func TestStandingFailsOneByOne(t *testing.T) {
	tests := []struct{ name, limit, problem string }{
		{"no engagement", `{"result": "threadEngagement", "min": 15}`, "tieRod.engagement: is missing"},
		{"no room without engagement", `{"result": "adjusterRange", "min": 1}`, "tieRod.engagement: is missing"},
		{"no turns", `{"result": "steeringRatio", "max": 20}`, "steering.perTurn: is missing"},
		{"no lock", `{"result": "turningCircle", "max": 11000}`, "steering.lock: is missing"},
		{"no bound", `{"result": "outerBallAngle"}`, "search.limits.0: want min, max or both"},
		{"clearance from nothing", `{"result": "clearance", "of": "outer-ball", "min": 5}`, "search.limits.0: a clearance states"},
		{"no such point", `{"result": "clearance", "of": "tie-rod", "min": 5, "link": {"from": "nose", "to": "tail"}}`, `no point called "nose"`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := document(t, `"search": {
				"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}],
				"limits": [`+tt.limit+`, {"result": "tieRodLength", "max": 900}]},`)
			d.Steering.Lock, d.Steering.PerTurn = 0, 0
			alone, err := Standing(t.Context(), d, StandingOptions{})
			if err != nil {
				t.Fatal(err)
			}
			side, err := Compare(t.Context(), d, CompareOptions{Candidate: "base"})
			if err != nil {
				t.Fatal(err)
			}
			for call, l := range map[string][]LimitResult{"standing": alone.Limits, "compare": side.Served[0].Limits} {
				if len(l) != 2 || !l[0].Unmeasured() || l[0].Value.Valid() || l[0].Held || !strings.Contains(l[0].Problem, tt.problem) {
					t.Fatalf("%s: %+v, want two, the first with %q", call, l, tt.problem)
				}
				if l[1].Unmeasured() || !l[1].Held || !l[1].Value.Valid() {
					t.Errorf("%s: the other %+v, want it held", call, l[1])
				}
			}
		})
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
