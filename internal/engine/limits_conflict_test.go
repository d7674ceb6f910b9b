package engine

import (
	"slices"
	"testing"
)

// TestConflictNamesLimits: of three limits the two that no car holds together are
// named, and one that no car within the bounds can hold alone.
func TestConflictNamesLimits(t *testing.T) {
	for _, tt := range []struct {
		name, limits string
		want         []string
	}{
		{"none", `{"result": "steeringArmLength", "max": 150}, {"result": "tieRodLength", "min": 300}`, nil},
		{"two of three", `{"result": "steeringArmLength", "max": 115}, {"result": "steeringRatio", "max": 100}, {"result": "steeringArmLength", "min": 135, "side": "left"}`,
			[]string{"steeringArmLength", "steeringArmLength left"}},
		{"one and the bounds", `{"result": "steeringRatio", "max": 100}, {"result": "steeringArmLength", "min": 300}`, []string{"steeringArmLength"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := searchOf(t, limitedStudy(t, tt.limits), SearchOptions{})
			if !slices.Equal(r.Conflict, tt.want) {
				t.Errorf("conflict %q, want %q; limits %+v", r.Conflict, tt.want, r.Limits)
			}
			if ok := len(tt.want) == 0; r.Converged != ok {
				t.Errorf("converged %v, status %q", r.Converged, r.Status)
			}
		})
	}
}

// TestChooseNamesConflict: where no combination holds a limit it is named with how
// many break it, and nothing is listed.
func TestChooseNamesConflict(t *testing.T) {
	r, err := Choose(t.Context(), limitedStudy(t, `{"result": "steeringArmLength", "min": 300}, {"result": "tieRodLength", "min": 300}`), ChooseOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if r.Built == 0 || len(r.Best) != 0 || len(r.Conflict) != 1 || r.Conflict[0] != (BrokenLimit{"steeringArmLength", 1}) {
		t.Errorf("built %d, best %v, conflict %+v", r.Built, r.Best, r.Conflict)
	}
}

// TestMapShowsLimits: the map says in which cells a limit holds, and its best cell
// holds it.
func TestMapShowsLimits(t *testing.T) {
	d := limitedStudy(t, `{"result": "steeringArmLength", "max": 125}`)
	m, err := Map(t.Context(), d, MapOptions{Columns: new(5), Rows: new(5)})
	if err != nil {
		t.Fatal(err)
	}
	l := m.Limits[0]
	if l.Name != "steeringArmLength" || l.Max != 125 || !l.LimitResult.Held || !(l.Value <= 125) {
		t.Errorf("limit at the best cell: %+v", l.LimitResult)
	}
	counts := map[bool]int{}
	for j, row := range l.Values {
		for i, v := range row {
			counts[l.Held[j][i]]++
			if l.Held[j][i] != (v <= 125) {
				t.Errorf("cell %d,%d: %g mm, held %v", j, i, float64(v), l.Held[j][i])
			}
		}
	}
	if counts[true] == 0 || counts[false] == 0 {
		t.Errorf("cells by whether they hold the limit: %v, want some of both", counts)
	}
	none, err := Map(t.Context(), limitedStudy(t, `{"result": "steeringArmLength", "max": 25}`), MapOptions{Columns: new(3), Rows: new(3)})
	if err != nil || none.Best.Figure.Valid() || none.Best.X.Valid() {
		t.Errorf("best %+v of a map that holds no limit, %v", none.Best, err)
	}
}

// TestLimitsTakeTheTieRodsOwnBounds: a limit that states none is that of the joint
// or the thread.
func TestLimitsTakeTheTieRodsOwnBounds(t *testing.T) {
	d := document(t, `"tieRod": {"engagement": 20, "minEngagement": 12, "innerBall": {"cone": 14}, "outerBall": {"cone": 18}},
	"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -25, "max": 25}],
	"limits": [{"result": "innerBallAngle"}, {"result": "outerBallAngle"}, {"result": "threadEngagement"}]},`)
	got, err := Standing(t.Context(), d, StandingOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if got.Limits[0].Max != 14 || got.Limits[1].Max != 18 || got.Limits[2].Min != 12 {
		t.Errorf("limits %+v, want those of the tie rod", got.Limits)
	}
	if r := searchOf(t, d, SearchOptions{}); len(r.Limits) != 3 {
		t.Errorf("search: limits %+v", r.Limits)
	}
	d.TieRod.InnerBall = nil
	_, err = Search(t.Context(), d, SearchOptions{})
	wantError(t, err, Wrong, "search.limits.0", "min, max or both")
}

// TestMapOverSetUps: a map over all set-ups is what a search that serves them
// minimises; over one it is that of the car in it.
func TestMapOverSetUps(t *testing.T) {
	d := document(t, casters)
	y, options := 0.0, MapOptions{Y: "tieRodInnerHeight", YMin: new(float64), Columns: new(3), Rows: new(2)}
	options.YMax = &y
	*options.YMin = -1
	c, err := Compare(t.Context(), d, CompareOptions{Candidate: "base"})
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]Number{AllScenarios: c.Served[0].Score, "caster 5": c.Served[0].Scenarios[1].Score, "": c.Cars[0].RMS}
	zero := 0.0
	options.XMin, options.XMax = new(float64), &zero
	*options.XMin = -10
	for scenario, want := range found {
		options.Scenario = scenario
		m, err := Map(t.Context(), d, options)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "map in "+scenario, float64(m.Cells[1][2]), float64(want), 1e-9)
	}
	options.Scenario = "caster 9"
	_, err = Map(t.Context(), d, options)
	wantError(t, err, Wrong, "scenario", "caster 9")
}
