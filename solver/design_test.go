package solver_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// TestDesignCheck breaks a sound car in one place at a time; the error names it.
func TestDesignCheck(t *testing.T) {
	wishbone := func(t *testing.T) *solver.Design { return planarWishbone(t, yz(330, 300)) }
	strut := func(t *testing.T) *solver.Design { return planarStrut(t, yz(330, 330)) }
	axle := func(t *testing.T) *solver.Design { return straightAxle(t) }
	swing := func(t *testing.T) *solver.Design { return specimens[6].design(t) }
	for _, tt := range []struct {
		name, key, part string
		design          func(*testing.T) *solver.Design
		spoil           func(*solver.Design)
	}{
		{"no kind", "suspension.type", "is missing", wishbone, func(d *solver.Design) { d.Kind = nil }},
		{"a point too few", "suspension.left.points", "are 8, want 9", wishbone, func(d *solver.Design) { d.Points[0] = d.Points[0][:8] }},
		{"no number", "suspension.right.tieRodOuter", "three numbers", wishbone, func(d *solver.Design) { d.Points[1][6].Z = math.NaN() }},
		{"too far away", "suspension.left.upperBallJoint", "within 100000 mm", wishbone, func(d *solver.Design) { d.Points[0][5].X = 1e6 }},
		{"an axle without links", "suspension.points", "are 0, want 10", axle, func(d *solver.Design) { d.Common = nil }},
		{"a link that is not a number", "suspension.links.1.outer", "three numbers", axle, func(d *solver.Design) { d.Common[3].Y = math.Inf(1) }},
		{"too much toe", "suspension.right.toe", "is 31 deg", wishbone, func(d *solver.Design) { d.Toe[1] = solver.Deg(31) }},
		{"too much camber", "suspension.left.camber", "is -31 deg", wishbone, func(d *solver.Design) { d.Camber[0] = solver.Deg(-31) }},
		{"no such adjuster", "suspension.adjuster", `"turnbuckle" is none`, wishbone, func(d *solver.Design) { d.Adjuster = "turnbuckle" }},
		{"a rack without direction", "steering.axis", "no direction", wishbone, func(d *solver.Design) { d.Gear.Axis = solver.Vec{} }},
		{"a rod without length", "tieRodOuter@left", "has no length", wishbone, func(d *solver.Design) { d.Points[0][7] = d.Points[0][6] }},
		{"an arm in line", "lowerBallJoint@left", "must make a triangle", wishbone, func(d *solver.Design) { d.Points[0][2] = shifted(d.Points[0][0], 60) }},
		{"a kingpin upside down", "upperBallJoint@right", "is the pair swapped?", wishbone, func(d *solver.Design) { d.Points[1][5].Z = 100 }},
		{"an axle's kingpin upside down", "kingpins", "is the pair swapped?", axle, func(d *solver.Design) { d.Points[0][0].Z = 200 }},
		{"a kingpin in one plane with the hinge", "kingpinUpper@left", "across the arm", swing, func(d *solver.Design) {
			p := d.Points[0]
			p[2] = r3.Add(p[3], r3.Scale(0.2, r3.Sub(p[3], p[1]))) // on the line from the rear pivot
		}},
		{"a swing arm's kingpin upside down", "kingpinUpper@right", "is the pair swapped?", swing, func(d *solver.Design) { p := d.Points[1]; p[2], p[3] = p[3], p[2] }},
		{"a strut upside down", "strutLower@left", "below strutTop", strut, func(d *solver.Design) { d.Points[0][4].Z = 900 }},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := tt.design(t)
			if err := d.Check(); err != nil {
				t.Fatalf("the sound car: %v", err)
			}
			tt.spoil(d)
			var input *solver.InputError
			if err := d.Check(); !errors.As(err, &input) || !strings.Contains(input.Key, tt.key) || !strings.Contains(input.Problem, tt.part) {
				t.Errorf("Check = %v, want an error on %s that says %q", err, tt.key, tt.part)
			}
		})
	}
}

// TestUnknownKeyNamesTheNearest types every key of every kind of car with a letter
// doubled, left out and swapped with the next: the error names the key meant.
func TestUnknownKeyNamesTheNearest(t *testing.T) {
	for _, d := range []*solver.Design{planarWishbone(t, yz(330, 300)), planarStrut(t, yz(330, 330)), straightAxle(t)} {
		for _, p := range solver.Parameters(d) {
			at := min(3, len(p.Key)-2) // within the first word: "tyrReadius", "links"
			for _, typed := range []string{
				p.Key[:at] + p.Key[at:at+1] + p.Key[at:],
				p.Key[:at] + p.Key[at+1:],
				p.Key[:at] + p.Key[at+1:at+2] + p.Key[at:at+1] + p.Key[at+2:],
			} {
				_, _, err := solver.FindParameter(d, typed)
				if err == nil || !strings.HasSuffix(err.Error(), "the nearest is "+p.Key) {
					t.Errorf("%s: FindParameter(%q) = %v, want an error that names %s", d.Kind.Name, typed, err, p.Key)
				}
			}
		}
	}
}
