package engine

import (
	"context"
	"strings"
	"testing"
)

// TestPlainAndSided: wherever a study lists parameters, one that stands both plain and
// with a side is refused by its key, whatever the side and the order.
func TestPlainAndSided(t *testing.T) {
	const variables = `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}`
	const priors = `"readings": [{"side": "left", "base": 300, "gauge": "plate", "values": [[-20, 0.1], [0, 0], [20, 0.1]]}],`
	lists := []struct {
		name, more string
		of         func(plain, sided string) string // one list with both
		ask        func(ctx context.Context, more string) error
	}{
		{"candidate", `"catalogue": [{"slot": "a", "name": "b", "changes": {LIST}}],`, pairs, func(ctx context.Context, more string) error {
			_, err := Choose(ctx, document(t, more), ChooseOptions{})
			return err
		}},
		{"set-up", variables + `], "scenarios": [{"changes": {LIST}}]},`, pairs, searchError(t)},
		{"variables", `"search": {"variables": [LIST]},`, entries(`{"parameter": "%", "min": -5, "max": 5}`), searchError(t)},
		{"tolerances", `"tolerances": [LIST],`, entries(`{"parameter": "%", "sd": 1}`), func(ctx context.Context, more string) error {
			_, err := Tolerance(ctx, document(t, more), ToleranceOptions{Cars: new(10)})
			return err
		}},
		{"priors", priors + `"priors": [LIST],`, entries(`{"parameter": "%", "sd": 1}`), func(ctx context.Context, more string) error {
			_, err := Fit(ctx, document(t, more), FitOptions{})
			return err
		}},
		{"readings", strings.Replace(priors, `"base"`, `"changes": {LIST}, "base"`, 1), pairs, func(ctx context.Context, more string) error {
			_, err := Fit(ctx, document(t, more), FitOptions{})
			return err
		}},
	}
	for _, l := range lists {
		for _, key := range []string{"caster", "tieRodInnerHeight", "lowerBallJoint.z"} {
			for _, side := range []string{"@left", "@right"} {
				if l.name == "priors" && key == "caster" {
					continue // no prior is of a setpoint
				}
				for _, list := range []string{l.of(key, key+side), l.of(key+side, key)} {
					err := l.ask(context.Background(), strings.Replace(l.more, "LIST", list, 1))
					if err == nil || !strings.Contains(err.Error(), key) || !strings.Contains(err.Error(), "both plain") || !strings.Contains(err.Error(), key+side) {
						t.Errorf("%s, %s: error %v, want one that names %s and %s", l.name, list, err, key, key+side)
					}
				}
				if err := l.ask(context.Background(), strings.Replace(l.more, "LIST", l.of(key+"@left", key+"@right"), 1)); err != nil {
					t.Errorf("%s, each side by itself: %v", l.name, err)
				}
			}
		}
	}
	_, err := Map(context.Background(), document(t, ""), MapOptions{X: "caster@left", Y: "caster", Columns: new(2), Rows: new(2)})
	wantError(t, err, Wrong, "caster", "both plain")
}

func pairs(plain, sided string) string { return `"` + plain + `": 2, "` + sided + `": 2` }

// entries returns what writes a list of two entries, each with its key.
func entries(one string) func(plain, sided string) string {
	return func(plain, sided string) string {
		return strings.Replace(one, "%", plain, 1) + ", " + strings.Replace(one, "%", sided, 1)
	}
}

func searchError(t *testing.T) func(context.Context, string) error {
	return func(ctx context.Context, more string) error {
		_, err := Search(ctx, document(t, more), SearchOptions{})
		return err
	}
}
