package model

import (
	"context"
	"reflect"
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
			template, ok := study.TemplateByKey("double-wishbone-rack")
			if !ok {
				t.Fatal("the demo is gone")
			}
			doc := template.Document()
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

// TestLimitKindsCoverTheSchema walks the results that a study file may limit: each can be
// chosen, but for clearances, which are obstacles.
func TestLimitKindsCoverTheSchema(t *testing.T) {
	field, _ := reflect.TypeFor[study.Limit]().FieldByName("Result")
	_, list, ok := strings.Cut(field.Tag.Get("rule"), "oneof=")
	if !ok {
		t.Fatalf("the rule of a limit's result is %q, want the results in it", field.Tag.Get("rule"))
	}
	want := slices.DeleteFunc(strings.Split(list, "|"), func(key string) bool { return key == study.Clearance })
	var got []string
	for _, k := range LimitKinds {
		got = append(got, k.Result)
	}
	slices.Sort(want)
	slices.Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("limits to choose from are\n%v, want\n%v", got, want)
	}
}

func TestLimitLabels(t *testing.T) {
	d := &study.Document{Units: study.Inch}
	for _, k := range LimitKinds {
		label, unit := LimitLabel(d, &study.Limit{Result: k.Result})
		if label != k.Label || k.Length != (unit == "in") {
			t.Errorf("%s: label %q, unit %q", k.Result, label, unit)
		}
	}
	if label, unit := LimitLabel(d, &study.Limit{Result: study.Clearance, Of: "outer-ball", Rim: &study.Rim{}}); label != "Clearance of the outer ball from the rim" || unit != "in" {
		t.Errorf("clearance: label %q, unit %q", label, unit)
	}
}
