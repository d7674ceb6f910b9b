package study

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
)

func TestSpoken(t *testing.T) {
	for sentence, want := range map[string]string{
		"suspension.left.lowerBallJoint: y is -5":                 "left lower ball joint: y is -5",
		"lies not ahead of lowerRearPivot: 5 and 6":               "lies not ahead of lower arm, rear pivot: 5 and 6",
		"lies -180 mm above kingpins.1, must be more":             "lies -180 mm above kingpin, lower end, must be more",
		"vehicle.wheelbase: 3 mm is not a car's.":                 "wheelbase: 3 mm is not a car's.",
		"tieRodOuterHeight@left is asked for":                     "left outer tie rod ball height is asked for",
		"candidates.1.changes.lowerBallJoint.z: does nothing":     "candidate 2, lower ball joint, z: does nothing",
		"readings.0.values.3: jumps":                              "run 1, row 4: jumps",
		"priors.2.parameter: has a prior already":                 "prior 3, parameter: has a prior already",
		`no candidate is called "kit.lowRide"; see tyreRadius`:    `no candidate is called "kit.lowRide"; see tyre radius`,
		"e.g. 1.5 mm of McUser and kitCar stay, i.e. as they are": "e.g. 1.5 mm of McUser and kitCar stay, i.e. as they are",
		`a base of 15" and steering.pitmanBall`:                   `a base of 15" and pitman arm, ball`,
		"wait...what, a.5mm":                                      "wait...what, a.5mm",
		"":                                                        "",
	} {
		if got := Spoken(sentence); got != want {
			t.Errorf("Spoken(%q) = %q, want %q", sentence, got, want)
		}
	}
}

// internalName finds keys and paths outside quotes.
var internalName = regexp.MustCompile(`\b[a-z]+[A-Z]|\b[a-z]\w*\.[a-z0-9]|@(left|right)`)

// unquoted cuts what stands in quotes: somebody's own text.
func unquoted(text string) string {
	parts := strings.Split(text, `"`)
	for i := 1; i+1 < len(parts); i += 2 {
		parts[i] = ""
	}
	return strings.Join(parts, "")
}

// TestEveryPathIsSpoken checks that no path of any study keeps a key of its file.
func TestEveryPathIsSpoken(t *testing.T) {
	for name, data := range studyFiles(t) {
		d := decode(t, data)
		for _, path := range append(d.Keys(), d.numberPaths(t)...) {
			path = strings.ReplaceAll(strings.ReplaceAll(path, "[]", ".0"), "side.", "left.")
			if said := SpokenPath(path); internalName.MatchString(said) {
				t.Errorf("%s: %s is spoken %q", name, path, said)
			}
		}
	}
}

// numberPaths lists the paths of the points and angles.
func (d *Document) numberPaths(*testing.T) (paths []string) {
	for _, p := range d.Points() {
		paths = append(paths, d.PointPath(p)+".x", d.SourcePath(p))
	}
	for _, side := range sides {
		paths = append(paths, d.AnglePath(side, "toe"), d.StudPath(side), d.SpringPath(side))
	}
	return paths
}

// TestFindingsAreSpoken checks every slip that a study may have, in every study with each
// number of it made wrong in several ways.
func TestFindingsAreSpoken(t *testing.T) {
	said := map[string]bool{}
	kinds := map[string]bool{}
	for _, data := range studyFiles(t) {
		d := decode(t, data)
		kind := fmt.Sprint(d.Suspension.Type, d.Steering != nil && d.Steering.PitmanBall != nil, d.Suspension.Right != nil, d.Units)
		if kinds[kind] {
			continue
		}
		kinds[kind] = true
		for _, p := range d.Points() {
			for axis := range p.Place {
				for _, wrong := range []float64{0, -p.Place[axis], p.Place[axis] * 25.4, p.Place[axis] / 25.4, 5000} {
					c, q := d.Clone(), p
					q.Place[axis] = wrong
					c.SetPoint(q)
					for _, f := range Check(c) {
						said[SpokenPath(f.Path)+": "+Spoken(f.Message)+"; "+Spoken(f.Suggestion)] = true
					}
				}
			}
		}
	}
	for text := range said {
		if internalName.MatchString(unquoted(text)) {
			t.Errorf("a key stands in a sentence: %s", text)
		}
	}
	if len(said) < 100 {
		t.Errorf("only %d findings", len(said))
	}
}
