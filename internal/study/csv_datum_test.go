package study

import (
	"math"
	"strings"
	"testing"
)

// TestPointsOfAnyDatum turns and moves a table of a car, marks and all, and reads it back where
// it stood; the marks' own scatter is told.
func TestPointsOfAnyDatum(t *testing.T) {
	d := Template{Key: "double-wishbone-rack"}.Document()
	d.Measured = &Measured{Marks: map[string]Vec3{"A": {520, 240, 0}, "B": {520, 910, 0}, "C": {-520, 240, 0}, "E": {470, 310, 690}}}
	c, s := math.Cos(2.1), math.Sin(2.1)
	own := func(v Vec3) Vec3 { // about z, then x and y and z by turns, and away
		return Vec3{c*v[1] + s*v[2] - 300, -s*v[1] + c*v[2] + 77, v[0] + 1000}
	}
	table := func(off float64, marks ...string) []byte {
		rows := [][]string{{"point", "side", "x", "y", "z"}}
		add := func(name, side string, v Vec3) {
			v = own(v)
			rows = append(rows, []string{name, side, plainNumber(v[0]), plainNumber(v[1]), plainNumber(v[2])})
		}
		for i, name := range marks {
			at := d.Measured.Marks[name]
			at[2] += off * float64(i%2)
			add(name, "", at)
		}
		for _, p := range d.Points() {
			add(p.Name, string(p.Side), p.Place)
		}
		return FormatTable(rows)
	}
	for _, marks := range [][]string{{"A", "B", "C"}, {"A", "B", "C", "E"}} {
		got, err := ParsePoints(table(0, marks...), d)
		if err != nil {
			t.Fatal(err)
		}
		if len(got.Taken) != len(d.Points()) || got.Datum == nil || !(got.Datum.RMS < 1e-6) {
			t.Fatalf("%d points taken, datum %+v", len(got.Taken), got.Datum)
		}
		for i, p := range d.Points() {
			if off := distance(got.Taken[i].Place, p.Place); !(off < 1e-6) || got.Taken[i].Side != p.Side {
				t.Errorf("%s %s is %g off", p.Name, got.Taken[i].Side, off)
			}
		}
	}
	scattered, err := ParsePoints(table(4, "A", "B", "C", "E"), d)
	if err != nil || !(scattered.Datum.RMS > 0.1) || !(scattered.Datum.RMS < 4) {
		t.Errorf("datum %+v, error %v", scattered.Datum, err)
	}
	for want, text := range map[string][]byte{
		"three and more": table(0, "A", "B"),
		"right-handed":   table(400, "A", "B", "C", "E"),
	} {
		if _, err := ParsePoints(text, d); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want one with %q", err, want)
		}
	}
	d.Measured.Marks["C"] = Vec3{520, 1580, 0} // in line with A and B
	if _, err := ParsePoints(table(0, "A", "B", "C"), d); err == nil || !strings.Contains(err.Error(), "one line") {
		t.Errorf("marks in one line: error %v", err)
	}
}
