package study

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// tapedText is the car of wishboneText with measures of every list.
const tapedText = `"measured": {"marks": {"A": [500, 300, 0], "B": [500, 900, 0]}, "markSd": 0.5,
    "lengths": [{"from": "A", "to": "left.lowerBallJoint", "value": 671.4, "sd": 0.5}, {"from": "left.tieRodInner", "to": "right.tieRodInner", "value": 700}],
    "heights": [{"of": "left.lowerBallJoint", "value": 190}], "sides": [{"of": "right.wheelCentre", "value": -760}], "stations": [{"of": "B", "value": 499, "sd": 2}]},
  "travel"`

func tapedStudy(old, new string) string {
	return strings.Replace(strings.Replace(wishboneText, `"travel"`, tapedText, 1), old, new, 1)
}

func TestMeasures(t *testing.T) {
	d := decode(t, []byte(tapedStudy("", "")))
	if got := Check(d); len(got) > 0 {
		t.Errorf("Check of sound measures = %+v", got)
	}
	want := []Measure{
		{"lengths", 0, "A", "left.lowerBallJoint", 671.4, 0.5}, {"lengths", 1, "left.tieRodInner", "right.tieRodInner", 700, 1},
		{"heights", 0, "", "left.lowerBallJoint", 190, 1}, {"sides", 0, "", "right.wheelCentre", -760, 1}, {"stations", 0, "", "B", 499, 2},
	}
	if diff := cmp.Diff(want, d.Measures()); diff != "" {
		t.Errorf("Measures (-want +got):\n%s", diff)
	}
	for i, axis := range []int{-1, -1, 2, 1, 0} {
		if got := want[i].Axis(); got != axis {
			t.Errorf("axis of %s = %d, want %d", want[i].Path(), got, axis)
		}
	}
	inches := decode(t, []byte(strings.Replace(tapedStudy("", ""), `"mm"`, `"in"`, 1)))
	if sd := inches.Measures()[1].SD; !(sd == 10.0/254) {
		t.Errorf("usual sd in inches = %v, want that of 1 mm", sd)
	}
}

func TestDecodeRefusesMeasures(t *testing.T) {
	for _, tt := range []struct{ name, old, new, part string }{
		{"no such point", `"left.lowerBallJoint", "value": 671.4`, `"left.strutTop", "value": 671.4`, `measured.lengths.0.to: "left.strutTop" is neither a mark nor a hardpoint`},
		{"no such mark", `"of": "B"`, `"of": "C"`, `measured.stations.0.of: "C" is neither a mark`},
		{"both ends one", `"to": "right.tieRodInner"`, `"to": "left.tieRodInner"`, "measured.lengths.1.to"},
		{"a mark called as a point", `"A": [500`, `"right.wheelCentre": [1, 2, 3], "A": [500`, "measured.marks"},
		{"a mark without a name", `"A": [500`, `" ": [1, 2, 3], "A": [500`, "measured.marks"},
		{"no length", `"value": 700`, `"value": 0`, "measured.lengths.1.value"},
		{"no value", `"of": "left.lowerBallJoint", "value": 190`, `"of": "left.lowerBallJoint"`, "measured.heights.0.value"},
		{"no spread", `"sd": 2`, `"sd": 0`, "measured.stations.0.sd"},
		{"negative marks", `"markSd": 0.5`, `"markSd": -0.5`, "measured.markSd"},
		{"unknown key", `"markSd"`, `"markSD"`, "markSD"},
	} {
		_, err := Decode([]byte(tapedStudy(tt.old, tt.new)))
		if err == nil || !strings.Contains(err.Error(), tt.part) {
			t.Errorf("%s: error %v, want one with %q", tt.name, err, tt.part)
		}
	}
}

func TestCheckMeasured(t *testing.T) {
	for _, tt := range []struct{ name, old, new, path, message string }{
		{"too long", `"value": 700`, `"value": 7000`, "measured.lengths.1.value", "7000 mm"},
		{"too short", `"value": 700`, `"value": 0.7`, "measured.lengths.1.value", "0.7 mm"},
		{"no tape's", `"sd": 2`, `"sd": 40`, "measured.stations.0.sd", "40 mm"},
		{"twice", `"from": "left.tieRodInner", "to": "right.tieRodInner"`, `"from": "left.lowerBallJoint", "to": "A"`, "measured.lengths.1", "measures the same as measured.lengths.0"},
		{"one place", `"B": [500, 900, 0]`, `"B": [500, 300, 0]`, "measured.marks.B", "mark A"},
	} {
		got := Check(decode(t, []byte(tapedStudy(tt.old, tt.new))))
		if len(got) != 1 || got[0].Path != tt.path || !strings.Contains(got[0].Message, tt.message) {
			t.Errorf("%s: Check = %+v, want one on %s with %q", tt.name, got, tt.path, tt.message)
		}
	}
}

// TestTapedPointNames finds every hardpoint of every template by its path and, where it
// has a side, by side and name; of a car of one side its mirror image too.
func TestTapedPointNames(t *testing.T) {
	for _, tt := range Templates() {
		d := tt.Document()
		for _, p := range d.TapePoints() {
			names := []string{d.SourcePath(p)}
			if p.Side != "" {
				names = append(names, string(p.Side)+"."+p.Name)
			}
			for _, name := range names {
				if got, ok := d.TapedPoint(name); !ok || got != p {
					t.Errorf("%s: %s names %+v, want %+v", tt.Key, name, got, p)
				}
			}
		}
	}
}

// TestShiftTakesMeasuresAlong moves a car and what was measured of it onto another datum:
// lengths stay, the rest goes with the car.
func TestShiftTakesMeasuresAlong(t *testing.T) {
	d := decode(t, []byte(tapedStudy("", "")))
	before, by := d.Clone(), Vec3{10, 20, -30}
	d.ShiftMounts(by)
	if d.Measured.Marks["B"] != (Vec3{510, 920, -30}) || !cmp.Equal(d.Measured.Lengths, before.Measured.Lengths) {
		t.Errorf("marks %v, lengths %v", d.Measured.Marks, d.Measured.Lengths)
	}
	was := before.Measures()
	for i, m := range d.Measures() {
		if axis := m.Axis(); axis >= 0 && m.Value != was[i].Value+by[axis] {
			t.Errorf("%s = %g, want %g", m.Path(), m.Value, was[i].Value+by[axis])
		}
	}
}
