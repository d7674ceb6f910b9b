package engine

import "testing"

const twoSetUps = `"search": {
	"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}],
	"scenarios": [{"name": "as drawn", "weight": 1}, {"name": "lowered", "weight": 1, "changes": {"rideHeight": -20}}]},`

// TestSetUpsAreThoseOfCompare holds the call against what a comparison says of the same car.
func TestSetUpsAreThoseOfCompare(t *testing.T) {
	d := document(t, twoSetUps)
	got, err := SetUps(t.Context(), d, SetUpsOptions{Candidate: "low ball"})
	if err != nil {
		t.Fatal(err)
	}
	all, err := Compare(t.Context(), d, CompareOptions{})
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range all.Served {
		if want.Candidate != "low ball" {
			continue
		}
		if len(got.Scenarios) != 2 || got.Score != want.Score {
			t.Fatalf("%d set-ups of score %v, want 2 of %v", len(got.Scenarios), got.Score, want.Score)
		}
		for i, s := range got.Scenarios {
			if w := want.Scenarios[i]; s.Name != w.Name || s.Peak != w.Peak || s.Binds != w.Binds {
				t.Errorf("set-up %q: peak %v, binds %t; want %q: %v, %t", s.Name, s.Peak, s.Binds, w.Name, w.Peak, w.Binds)
			}
		}
		return
	}
	t.Fatal("compare does not say how the candidate serves")
}

func TestSetUpsWithout(t *testing.T) {
	got, err := SetUps(t.Context(), document(t, ""), SetUpsOptions{})
	if err != nil || got.Candidate != "base" || got.Score.Valid() || got.Scenarios == nil || len(got.Scenarios) != 0 {
		t.Errorf("%+v, %v, want the base car, no score and an empty list", got, err)
	}
	_, err = SetUps(t.Context(), document(t, ""), SetUpsOptions{Candidate: "none"})
	wantError(t, err, Wrong, "candidate", "none")
}
