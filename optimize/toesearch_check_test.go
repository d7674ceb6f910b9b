package optimize_test

import (
	"math"
	"strings"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

// descending is a target that is no function of travel.
var descending = optimize.Target{Travel: []float64{10, 0}, Change: make([]solver.Angle, 2)}

// TestToeSearchCheck spoils a sound search in one place at a time.
func TestToeSearchCheck(t *testing.T) {
	base := textbook(t)
	height := optimize.Free{Parameter: changeOf(t, base, "tieRodOuterHeight", 0).Parameter, Min: -10, Max: 10}
	caster := optimize.Free{Parameter: changeOf(t, base, "caster", 0).Parameter, Max: 0.1}
	limit := optimize.Limit{Name: "rod", Scale: 1, Min: math.Inf(-1), Max: 1, Of: func(*solver.Axle, *solver.Workspace) float64 { return 0 }}
	for _, tt := range []struct {
		name, want string
		spoil      func(*optimize.ToeSearch)
	}{
		{"nothing free", "no parameter is free", func(p *optimize.ToeSearch) { p.Free = nil }},
		{"free twice", "tieRodOuterHeight is given twice", func(p *optimize.ToeSearch) { p.Free = append(p.Free, height) }},
		{"no static height", "does not contain travel 0", func(p *optimize.ToeSearch) { p.Travels = []float64{10, 20} }},
		{"target of the right", "target travels must ascend", func(p *optimize.ToeSearch) { p.Targets[solver.Right] = descending }},
		{"limit without scale", "limit rod has scale 0", func(p *optimize.ToeSearch) { p.Limits[0].Scale = 0 }},
		{"limit upside down", "its minimum 2 above its maximum 1", func(p *optimize.ToeSearch) { p.Limits[0].Min = 2 }},
		{"limit of nothing", "limit rod measures nothing", func(p *optimize.ToeSearch) { p.Limits[0].Of = nil }},
		{"limit without bounds", "neither minimum nor maximum", func(p *optimize.ToeSearch) { p.Limits[0].Max = math.Inf(1) }},
		{"free and set", `scenario "low" sets caster`, func(p *optimize.ToeSearch) {
			p.Scenarios = []optimize.Scenario{{Name: "low", Changes: []solver.Change{{Parameter: caster.Parameter, Value: 0.05}}}}
		}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			p := &optimize.ToeSearch{Base: base, Free: []optimize.Free{height, caster}, Travels: grid, Limits: []optimize.Limit{limit}}
			if err := p.Check(); err != nil {
				t.Fatalf("the sound search: %v", err)
			}
			tt.spoil(p)
			if err := p.Check(); err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("Check = %v, want an error that says %q", err, tt.want)
			}
		})
	}
}

// TestJudgeCheck: a judge without static height or with a target that is none.
func TestJudgeCheck(t *testing.T) {
	base := textbook(t)
	for _, tt := range []struct {
		name, want string
		judge      optimize.Judge
	}{
		{"no static height", "does not contain travel 0", optimize.Judge{Base: base, Travels: []float64{-10, 10}}},
		{"target of the right", "target travels must ascend", optimize.Judge{Base: base, Travels: grid, Targets: [2]optimize.Target{{}, descending}}},
	} {
		if err := tt.judge.Check(); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: Check = %v, want an error that says %q", tt.name, err, tt.want)
		}
	}
}
