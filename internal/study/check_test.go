package study

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// wishboneText is a car without findings, for tests that put one slip into it.
const wishboneText = `{
  "format": "toewright/1",
  "units": "mm",
  "vehicle": {"wheelbase": 2500, "tyreRadius": 310},
  "suspension": {
    "type": "double-wishbone",
    "left": {
      "lowerFrontPivot": [150, 350, 205],
      "lowerRearPivot": [-160, 355, 195],
      "lowerBallJoint": [5, 692, 189],
      "upperFrontPivot": [105, 430, 480],
      "upperRearPivot": [-125, 436, 462],
      "upperBallJoint": [-15, 654, 466],
      "tieRodOuter": [-130, 684, 236],
      "tieRodInner": [-145, 370, 234],
      "wheelCentre": [0, 750, 310],
      "toe": 0.1,
      "camber": -0.5
    }
  },
  "steering": {"type": "rack"},
  "travel": {"bump": 50, "droop": 50, "step": 5},
  "candidates": [{"name": "lower", "changes": {"tieRodOuterHeight": -4}}]
}
`

// inchText is the same car in inches, rounded.
const inchText = `{
  "format": "toewright/1",
  "units": "in",
  "suspension": {
    "type": "double-wishbone",
    "left": {
      "lowerFrontPivot": [5.9, 13.8, 8.1],
      "lowerRearPivot": [-6.3, 14, 7.7],
      "lowerBallJoint": [0.2, 27.2, 7.4],
      "upperFrontPivot": [4.1, 16.9, 18.9],
      "upperRearPivot": [-4.9, 17.2, 18.2],
      "upperBallJoint": [-0.6, 25.7, 18.3],
      "tieRodOuter": [-5.1, 26.9, 9.3],
      "tieRodInner": [-5.7, 14.6, 9.2],
      "wheelCentre": [0, 29.5, 12.2]
    }
  },
  "steering": {"type": "rack"}
}
`

func TestCheckFindsNothing(t *testing.T) {
	for name, text := range map[string]string{"wishbone": wishboneText, "inch": inchText, "small": smallText} {
		if got := Check(decode(t, []byte(text))); len(got) > 0 {
			t.Errorf("Check(%s) = %+v, want no findings", name, got)
		}
	}
	for name, data := range studyFiles(t) {
		if got := Check(decode(t, data)); len(got) > 0 {
			t.Errorf("Check(%s) = %+v, want no findings", name, got)
		}
	}
}

func TestCheckSlips(t *testing.T) {
	const (
		w = wishboneText
		i = inchText
	)
	tests := []struct {
		name, text, old, new string
		path                 string
		severity             Severity
		message, suggestion  string
	}{
		{
			"wrong sign", w, `[5, 692, 189]`, `[5, -692, 189]`,
			"suspension.left.lowerBallJoint", Warning, "y is -692, on the other side of the car",
			"y left of the centreline is positive, right of it negative: 692?",
		},
		{
			"below the ground", w, `[-145, 370, 234]`, `[-145, 370, -234]`,
			"suspension.left.tieRodInner", Warning, "z is -234, below the ground", "z counts upward from the ground under the tyres",
		},
		{
			"front and rear swapped", w, `"lowerFrontPivot": [150, 350, 205]`, `"lowerFrontPivot": [-170, 350, 205]`,
			"suspension.left.lowerFrontPivot", Warning, "lies not ahead of lowerRearPivot: -170 and -160", "are the two swapped?",
		},
		{
			"upper and lower pivots swapped", w, `[105, 430, 480]`, `[105, 430, 180]`,
			"suspension.left.upperFrontPivot", Warning, "lies not above lowerFrontPivot: 180 and 205", "are the two swapped?",
		},
		{
			"inner and outer swapped", w, `[-130, 684, 236]`, `[-130, 360, 236]`,
			"suspension.left.tieRodOuter", Warning, "lies not outboard of tieRodInner: 360 and 370", "are the two swapped?",
		},
		{
			"upper ball joint below the lower", w, `[-15, 654, 466]`, `[-15, 654, 166]`,
			"suspension.left.upperBallJoint", Error,
			"lies -23 mm above lowerBallJoint, must be more than 1 mm: is the pair swapped?", "",
		},
		{
			"point in inches", w, `[5, 692, 189]`, `[0.2, 27.24, 7.44]`,
			"suspension.left.lowerBallJoint", Warning, "z is 7.44, far below every other point",
			`was it measured in "in"? In "mm" it would be [5.08, 691.9, 188.98]`,
		},
		{
			"digit too many", w, `[5, 692, 189]`, `[5, 6920, 189]`,
			"suspension.left.lowerBallJoint", Warning, "y is 6920, far beyond every other point", "is a digit missing or too many?",
		},
		{
			"point in millimetres", i, `[0.2, 27.2, 7.4]`, `[5, 692, 189]`,
			"suspension.left.lowerBallJoint", Warning, "y is 692, far beyond every other point",
			`was it measured in "mm"? In "in" it would be [0.2, 27.24, 7.44]`,
		},
		{
			"file in inches", i, `"units": "in"`, `"units": "mm"`,
			"units", Warning, "a wheel centre 12.2 mm above the ground is not a car's", `are the numbers in "in"?`,
		},
		{
			"file in millimetres", w, `"units": "mm"`, `"units": "in"`,
			"units", Warning, "a wheel centre 310 in above the ground is not a car's", `are the numbers in "mm"?`,
		},
		{
			"point entered twice", w, `[-15, 654, 466]`, `[-125, 436, 462]`,
			"suspension.left.upperRearPivot", Warning, "stands in the same place as upperBallJoint", "was one of them entered twice?",
		},
		{
			"wheel off the ground", w, `"tyreRadius": 310`, `"tyreRadius": 260`,
			"suspension.left.wheelCentre", Warning, "z is 310, but the tyre's radius is 260",
			"z counts from the ground: give all points the same datum, or correct the radius",
		},
		{
			"wheelbase in metres", w, `"wheelbase": 2500`, `"wheelbase": 2.5`,
			"vehicle.wheelbase", Warning, "2.5 mm is not a car's", "is it in the file's units?",
		},
		{
			"toe as a length", w, `"toe": 0.1`, `"toe": 2.5`,
			"suspension.left.toe", Warning, "2.5 degrees is more than any car has", "angles are in degrees; was it read as a length at the rim?",
		},
		{
			"step larger than travel", w, `"step": 5`, `"step": 60`,
			"travel.step", Warning, "a step of 60 is larger than the travel of 50, so only the static position and the ends are left", "use a tenth of the travel",
		},
		{
			"travel of another unit", i, `"steering": {"type": "rack"}`, `"travel": {"bump": 50, "droop": 50}`,
			"travel", Warning, "50 in is more than any wheel moves", "is it in the file's units?",
		},
		{
			"name taken", w, `"candidates": [`, `"candidates": [{"name": "lower", "changes": {"toe": 0}}, `,
			"candidates.1.name", Warning, `the name "lower" is taken`, `give it a name of its own; "base" is the car as measured`,
		},
		{
			"no name", w, `"name": "lower"`, `"name": " "`,
			"candidates.0.name", Warning, "has no name", "name it by what is changed",
		},
		{
			"no changes", w, `, "changes": {"tieRodOuterHeight": -4}`, ``,
			"candidates.0.changes", Note, "changes nothing, so it is the base car", "",
		},
		{
			"rod where toe is re-set", w, `"tieRodOuterHeight": -4`, `"tieRodOuterHeight": -4, "tieRodLength@left": 1`,
			"candidates.0.changes.tieRodLength@left", Warning, "does nothing where static toe is re-set", "hold camber and caster alone",
		},
		{
			"yardstick gone", w, `"units": "mm"`, `"units": "mm", "display": {"yardstick": "gone"}`,
			"display.yardstick", Warning, `no candidate is called "gone"`, "choose another",
		},
		{
			"excluded part gone", w, `"steering"`, `"catalogue": [{"slot": "a", "name": "b", "excludes": ["gone"]}], "steering"`,
			"catalogue.0.excludes.0", Warning, `no part is called "gone"`, "correct the name or take it out",
		},
		{
			"search without room", w, `"steering"`, `"search": {"variables": [{"parameter": "toe", "min": 1, "max": 0}]}, "steering"`,
			"search.variables.0.max", Warning, "want more than min 1, got 0", "",
		},
		{
			"tolerance without a width", w, `"steering"`, `"tolerances": [{"parameter": "toe"}], "steering"`,
			"tolerances.0", Warning, "want either plusMinus or sd", "",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if strings.Count(tt.text, tt.old) != 1 {
				t.Fatalf("%q does not stand once in the text", tt.old)
			}
			got := Check(decode(t, []byte(strings.Replace(tt.text, tt.old, tt.new, 1))))
			want := Finding{tt.path, tt.severity, tt.message, tt.suggestion}
			if !contains(got, want) {
				t.Errorf("Check lacks\n%+v\ngot\n%s", want, list(got))
			}
		})
	}
}

// contains reports whether a finding is among others.
func contains(found []Finding, want Finding) bool {
	for _, f := range found {
		if f == want {
			return true
		}
	}
	return false
}

// list prints findings one a line.
func list(found []Finding) string {
	var b strings.Builder
	for _, f := range found {
		fmt.Fprintf(&b, "%+v\n", f)
	}
	return b.String()
}

// TestCheckWholeSide checks that a right side entered as the left is one finding,
// not one for each point.
func TestCheckWholeSide(t *testing.T) {
	d := decode(t, []byte(wishboneText))
	d.Suspension.Left.Points = d.Suspension.Left.Points.Mirrored()
	want := []Finding{{
		"suspension.left", Warning, "9 of the 9 points of the left side have y on the other side",
		"y left of the centreline is positive, right of it negative: change the sign of y, or enter them as the other side",
	}}
	if diff := cmp.Diff(want, checkSigns(d)); diff != "" {
		t.Errorf("checkSigns (-want +got):\n%s", diff)
	}
}

func TestCheckMirror(t *testing.T) {
	d := decode(t, []byte(wishboneText))
	right := d.Suspension.Left.Mirrored()
	d.Suspension.Right = &right
	right.Points["tieRodInner"] = Vec3{-145, -370, 254}
	if got := Check(d); len(got) > 0 {
		t.Errorf("Check with 20 mm between the sides = %s, want no findings", list(got))
	}
	right.Points["tieRodInner"] = Vec3{-145, -370, 264}
	want := Finding{"suspension.right.tieRodInner", Note, "is 30 mm away from the mirror image of the left side", "measure both sides again"}
	if got := Check(d); !contains(got, want) {
		t.Errorf("Check lacks %+v, got %s", want, list(got))
	}
}

func TestCheckSolidAxle(t *testing.T) {
	tests := []struct {
		name string
		slip func(*Suspension)
		want Finding
	}{
		{
			"drag link of the other side", func(s *Suspension) { s.DragSide = Left },
			Finding{"suspension.dragLink.outer", Warning, "y is -566, but the link pulls the left arm", "is the side or the sign of y wrong?"},
		},
		{
			"kingpin upside down", func(s *Suspension) {
				p := s.Right.Points
				p["kingpins.0"], p["kingpins.1"] = p["kingpins.1"], p["kingpins.0"]
			},
			Finding{"suspension.kingpins.right.0", Error, "lies -180 mm above kingpins.1, must be more than 1 mm: is the pair swapped?", ""},
		},
		{
			"link below the ground", func(s *Suspension) { s.Common["links.0.inner"] = Vec3{-900, 370, -430} },
			Finding{"suspension.links.0.inner", Warning, "z is -430, below the ground", "z counts upward from the ground under the tyres"},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := Template{Key: "solid-axle-pitman"}.Document()
			tt.slip(&d.Suspension)
			if got := Check(d); !contains(got, tt.want) {
				t.Errorf("Check lacks %+v, got %s", tt.want, list(got))
			}
		})
	}
}
