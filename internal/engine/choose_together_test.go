package engine

import (
	"strings"
	"testing"

	"toewright/internal/study"
)

// TestPartsPlainAndSided: parts of two slots, one of which gives a parameter plain and
// the other by side, are refused by both names before any combination is tried, in
// either order; parts of one slot, of two sides, or that exclude each other are not.
func TestPartsPlainAndSided(t *testing.T) {
	for _, key := range []string{"caster", "tieRodOuterHeight", "camber", "lowerBallJoint.z"} {
		for _, side := range []string{"@left", "@right"} {
			plain := study.Part{Slot: "front", Name: "both wheels", Changes: study.Changes{key: 1}}
			sided := study.Part{Slot: "side", Name: "one wheel", Changes: study.Changes{key + side: 2}}
			d := limitedStudy(t, "")
			chosen := func(parts ...study.Part) error {
				d.Catalogue = parts
				_, err := NewChooseRun(d, ChooseOptions{})
				return err
			}
			for _, parts := range [][]study.Part{{plain, sided}, {sided, plain}} {
				err := chosen(parts...)
				wantError(t, err, Wrong, "catalogue", "both plain")
				for _, name := range []string{plain.Name, sided.Name, key + side} {
					if !strings.Contains(err.Error(), name) {
						t.Errorf("%s: %v does not name %q", key, err, name)
					}
				}
			}
			same, apart, twin := sided, sided, plain
			same.Slot, apart.Excludes = plain.Slot, []string{plain.Name}
			twin.Slot, twin.Name, twin.Changes = "other", "other side", study.Changes{key + "@left": 1}
			right := sided
			right.Changes = study.Changes{key + "@right": 2}
			for _, parts := range [][]study.Part{{plain, same}, {plain, apart}, {apart, plain}, {twin, right}} {
				if err := chosen(parts...); err != nil {
					t.Errorf("%s: %v", key, err)
				}
			}
		}
	}
}
