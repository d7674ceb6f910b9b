package engine

import (
	"fmt"
	"maps"
	"math"
	"strings"
	"testing"

	"toewright/internal/study"
	"toewright/solver"
)

// TestMapKeepsOtherChanges: a cell of a map is the car of the candidate with the two
// parameters there and everything else as the candidate has it, of one wheel too where the
// map is of the other one.
func TestMapKeepsOtherChanges(t *testing.T) {
	for name, d := range demoStudies(t) {
		x, y := d.Search.Variables[0].Parameter, d.Search.Variables[1].Parameter
		design, err := d.Design()
		if err != nil {
			t.Fatal(err)
		}
		if _, _, err := solver.FindParameter(design, x+"@left"); err != nil {
			x, y = "tieRodOuterHeight", "steeringArmLength" // of each wheel
		}
		third := "caster"
		if _, _, err := solver.FindParameter(design, third); err != nil || d.Suspension.Common != nil {
			third = "steeringArmOffset"
		}
		changes := []study.Changes{
			{x: 2}, {x + "@left": 2, x + "@right": -1}, {x + "@right": 2, y: 1}, {y: -2, third: 3},
		}
		for _, c := range d.Candidates {
			changes = append(changes, c.Changes)
		}
		for i, c := range changes {
			for k, axes := range [][2]string{{x, y}, {x + "@left", y}, {x + "@right", y + "@left"}, {x + "@left", x + "@right"}} {
				if (len(name)+i+k)%2 > 0 {
					continue // of another study
				}
				t.Run(fmt.Sprintf("%s %v over %v", name, axes, c), func(t *testing.T) { mapKeeps(t, d, c, axes) })
			}
		}
	}
}

// mapKeeps holds the cells of a small map against cars compared one by one.
func mapKeeps(t *testing.T, d *study.Document, c study.Changes, axes [2]string) {
	t.Helper()
	on := withCandidate(d, c)
	m, err := Map(t.Context(), on, MapOptions{
		Candidate: "design", X: axes[0], Y: axes[1], XMin: new(-1.0), XMax: new(1.5), YMin: new(-1.0), YMax: new(0.5), Columns: new(2), Rows: new(2),
	})
	if err != nil {
		t.Fatal(err)
	}
	for j, v := range m.Y.Values {
		for i, u := range m.X.Values {
			want := overlaid(overlaid(c, axes[0], u), axes[1], v)
			r, err := Compare(t.Context(), withCandidate(d, want), CompareOptions{Candidate: "design"})
			if err != nil {
				t.Fatal(err)
			}
			worse := Number(0)
			for _, car := range r.Cars {
				figure := car.RMS
				if m.Figure == "peak" {
					figure = car.Peak
				}
				worse = Number(math.Max(float64(worse), float64(figure)))
			}
			near(t, fmt.Sprint(want), float64(m.Cells[j][i]), float64(worse), 1e-9)
		}
	}
}

// overlaid returns changes with one more that has the last word on its wheels.
func overlaid(c study.Changes, key string, value float64) study.Changes {
	out := maps.Clone(c)
	name, side, sided := strings.Cut(key, "@")
	if !sided {
		delete(out, name+"@left")
		delete(out, name+"@right")
	} else if both, ok := out[name]; ok {
		delete(out, name)
		out[name+"@"+map[string]string{"left": "right", "right": "left"}[side]] = both
	}
	out[key] = value
	return out
}
