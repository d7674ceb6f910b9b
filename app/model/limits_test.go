package model

import (
	"context"
	"slices"
	"strings"
	"testing"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// TestFoundSaysHowLimitsStand runs the demo's search with a limit that it can hold,
// then with one that nothing can, and reads the remarks.
func TestFoundSaysHowLimitsStand(t *testing.T) {
	for _, tt := range []struct {
		name  string
		most  float64 // length of the tie rod, mm
		want  string
		other string
	}{
		{"held", 400, "All limits are held.", "is broken"},
		{"broken", 10, "Tie rod length is broken", "All limits are held."},
	} {
		t.Run(tt.name, func(t *testing.T) {
			doc := study.Template{Key: "double-wishbone-rack"}.Document()
			doc.Search.Limits = []study.Limit{{Result: "tieRodLength", Max: &tt.most}}
			for i := range doc.Search.Variables {
				doc.Search.Variables[i].Grid = 0.5
			}
			r, err := engine.Search(context.Background(), doc, engine.SearchOptions{})
			if err != nil {
				t.Fatal(err)
			}
			answer, err := NewDesk(doc).Found(doc, r)
			if err != nil {
				t.Fatal(err)
			}
			text := ""
			for _, m := range answer.Remarks {
				text += m.Text + "\n"
			}
			if !strings.Contains(text, tt.want) || strings.Contains(text, tt.other) {
				t.Errorf("remarks say:\n%swant %q and not %q", text, tt.want, tt.other)
			}
			if !strings.Contains(text, "On the steps and sizes stated") {
				t.Errorf("remarks do not say what the grid costs:\n%s", text)
			}
		})
	}
}

// TestEveryLimitCanBeChosen: each result that a car has can be chosen from the list, but
// for clearances, which are obstacles; those of a drag link of a solid axle alone, and
// those of an arm's face of none.
func TestEveryLimitCanBeChosen(t *testing.T) {
	for _, suspension := range []string{"double-wishbone", "solid-axle"} {
		d := &study.Document{}
		d.Suspension.Type = suspension
		listed := LimitKinds(d)
		for _, k := range study.LimitKinds {
			want := k.Key != study.Clearance && (suspension == "solid-axle" && !k.Face || suspension != "solid-axle" && !k.SolidAxle)
			if got := slices.ContainsFunc(listed, func(l study.LimitKind) bool { return l.Key == k.Key }); got != want {
				t.Errorf("%s: %s can be chosen: %t, want %t", suspension, k.Key, got, want)
			}
		}
	}
}

func TestLimitLabels(t *testing.T) {
	d := &study.Document{Units: study.Inch}
	for _, k := range LimitKinds(d) {
		label, unit := LimitLabel(d, &study.Limit{Result: k.Key})
		if label != k.Label || (k.Unit == study.LimitLength) != (unit == "in") {
			t.Errorf("%s: label %q, unit %q", k.Key, label, unit)
		}
	}
	if label, unit := LimitLabel(d, &study.Limit{Result: study.Clearance, Of: "outer-ball", Rim: &study.Rim{}}); label != "Clearance of the outer ball from the rim" || unit != "in" {
		t.Errorf("clearance: label %q, unit %q", label, unit)
	}
}
