package model_test

import (
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// explained returns what is said of the selected car.
func explained(t *testing.T, d *model.Desk) *model.Why {
	t.Helper()
	r, err := engine.Why(t.Context(), d.Session.Document(), d.WhyOptions())
	if err != nil {
		t.Fatal(err)
	}
	return d.Explained(r)
}

// whyDesk returns a desk with a candidate that makes changes selected.
func whyDesk(t *testing.T, key string, changes study.Changes, edit func(*study.Document)) *model.Desk {
	t.Helper()
	doc := study.Template{Key: key}.Document()
	doc.Candidates = []study.Candidate{{Name: "car", Changes: changes, Hold: []string{"toe"}}}
	if edit != nil {
		edit(doc)
	}
	d := model.NewDesk(doc)
	d.Select(1)
	return d
}

// said gathers all that is said of the causes of a side.
func said(s *model.WhySide) string {
	text := s.Heading + "|" + s.Decides + "|" + s.Problem + s.Good + " " + s.GoodBy
	for _, c := range s.Causes {
		text += "|" + c.Share + " " + c.Text
		for _, n := range c.Notes {
			text += "|" + n.Text
		}
		for _, p := range c.Peaks {
			text += "|" + p.Name + " " + p.Before + ">" + p.After
		}
	}
	return text
}

func TestExplained(t *testing.T) {
	for _, tt := range []struct {
		name, key string
		changes   study.Changes
		edit      func(*study.Document)
		side      int
		want      []string
		not       []string
	}{
		{
			name: "in mm", key: "double-wishbone-rack", changes: study.Changes{"tieRodOuterHeight": -6},
			want: []string{"Why toe changes|", "Slope, 98 %. Outer ball too high by 6.0", "Tried in steps of 1 mm: 6.00 mm lower, −12.00 mm in all.", "A stack of 12 mm bends its stud", "Tie rod too long: inner ball belongs", "|peak 0."},
		},
		{
			name: "within the band, from the base car", key: "double-wishbone-rack", changes: study.Changes{"tieRodOuterHeight": -12},
			want: []string{"Within the target: peak 0.0", ", band ± 0.100. The base car has 0.", " takes it away.", "|What is left: curvature. Tie rod too long"},
			not:  []string{" %."},
		},
		{
			name: "within the band, and nothing that a gauge would show", key: "double-wishbone-rack", changes: study.Changes{"tieRodOuterHeight": -12},
			edit: func(d *study.Document) { d.Yield = &study.Yield{Limit: 5} },
			want: []string{"Within the target: peak 0.0", ", band ± 5.000."},
			not:  []string{"What is left", " %."},
		},
		{
			name: "in inches, at whole spacers, with set-ups", key: "double-wishbone-centre-link",
			want: []string{"caster as built decides", "Outer ball too high by 0.", " in (", "Tried in steps of 1/16 in: 0.5", "|caster 6 0."},
		},
		{
			name: "the search's own step", key: "double-wishbone-centre-link",
			edit: func(d *study.Document) { d.Search.Variables[0].Grid = 1.0 / 64 },
			want: []string{"Tried in steps of 1/64 in"},
		},
		{
			name: "set-ups that pull apart", key: "double-wishbone-centre-link", changes: study.Changes{"tieRodOuterHeight": -0.5},
			want: []string{"The set-ups pull apart: caster as built wants the ball 0.", " lower, caster 6 0.", " higher; no one height suits all."},
		},
		{
			name: "whole steps that keep no limit", key: "double-wishbone-rack", changes: study.Changes{"tieRodOuterHeight": -6},
			edit: func(d *study.Document) { d.Search.Variables[0].Grid, d.Yield = 5, &study.Yield{Limit: 0.05} },
			want: []string{"No whole step of 5 mm lies from −6.", ", where all keep 0.050: the exact place is tried."},
		},
		{
			name: "a stud that is stated", key: "double-wishbone-rack",
			edit: func(d *study.Document) {
				d.TieRod.OuterBall = &study.BallJoint{Stud: &study.Stud{Diameter: 14, Height: 30}}
			},
			want: []string{"bends its stud 1.4 times as much"},
		},
		{
			name: "a short stack", key: "double-wishbone-rack", changes: study.Changes{"tieRodInnerHeight": 8},
			want: []string{"Outer ball too high by 3.90"}, not: []string{"stud"},
		},
		{
			name: "a ball that stands as well as it can", key: "strut-rack", changes: study.Changes{"tieRodOuterHeight": -9},
			want: []string{"What is left: slope. Outer ball within 0.3", "of its best: less than a step of 1 mm."},
			not:  []string{"S-shape"},
		},
		{
			name: "a drag link", key: "solid-axle-pitman",
			want: []string{"Drag link's outer ball too low by 47.99 mm"}, not: []string{"stud"},
		},
		{
			name: "unlike sides", key: "double-wishbone-rack", changes: study.Changes{"tieRodOuterHeight@left": -6, "tieRodOuterHeight@right": -8}, side: 1,
			want: []string{"Why the right wheel toes", "too high by 4.0"},
		},
	} {
		d := whyDesk(t, tt.key, tt.changes, tt.edit)
		e := explained(t, d)
		got := said(&e.Sides[tt.side])
		for _, want := range tt.want {
			if !strings.Contains(got, want) {
				t.Errorf("%s: %q is not said in %q", tt.name, want, got)
			}
		}
		for _, not := range tt.not {
			if strings.Contains(got, not) {
				t.Errorf("%s: %q is said in %q", tt.name, not, got)
			}
		}
		if !strings.Contains(e.Of, "each wheel") || strings.Contains(e.Of, "mean square") != strings.Contains(got, " %.") {
			t.Errorf("%s: %q does not say what the shares are shares of", tt.name, e.Of)
		}
	}
}

// TestTryKeepsTheCar makes a candidate that has what the car has, and the move.
func TestTryKeepsTheCar(t *testing.T) {
	d := whyDesk(t, "double-wishbone-rack", study.Changes{"tieRodOuterHeight": -6, "caster": 5}, nil)
	e := explained(t, d)
	if err := d.Try(&e.Sides[0].Causes[0]); err != nil {
		t.Fatal(err)
	}
	k := d.Session.Document().Candidates[1]
	if d.View.Car != 2 || k.Changes["caster"] != 5 || !(k.Changes["tieRodOuterHeight"] < -6) || len(k.Hold) != 1 {
		t.Errorf("car %d is selected; the candidate is %+v", d.View.Car, k)
	}
	if was := d.Session.Document().Candidates[0]; was.Changes["tieRodOuterHeight"] != -6 {
		t.Errorf("the car itself was changed to %v", was.Changes)
	}
}
