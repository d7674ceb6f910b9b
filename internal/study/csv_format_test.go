package study

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// risks are names as people give them and as spreadsheets take for formulas (common
// practice: a cell that starts with one of = + - @), or this program for remarks.
var risks = []string{"=1+1", "+cmd", "@sum", "-soft", "#1", "'=1", "''@a", "'plain", "=1,5", "it's", "-5", "+1/2", "12,5 mm", "a=b"}

// TestNoCellIsAFormula looks at every table that holds a text of the user's: no cell of it
// starts a formula unless it is a number, and what is read again is what was written.
func TestNoCellIsAFormula(t *testing.T) {
	d := templateDoc(t, "strut-rack")
	for _, name := range risks {
		parts := []Part{{Slot: name, Name: name, Note: name, Excludes: []string{name}, Changes: Changes{"tieRodOuterHeight": -4}}}
		readings := []Reading{{Side: Left, Gauge: "indicators", Base: 381, Values: [][2]float64{{-60, -1.5}}, Changes: Changes{"tieRodOuterHeight@left": -4}}}
		for table, text := range map[string][]byte{
			"parts": FormatCatalogue(parts), "readings": FormatReadings(readings), "points": FormatPoints(d), "headers": FormatTable([][]string{{name}, {"x", name}}),
		} {
			r := csv.NewReader(strings.NewReader(string(text)))
			r.FieldsPerRecord = -1
			rows, err := r.ReadAll()
			if err != nil {
				t.Fatal(err)
			}
			for _, row := range rows {
				for _, cell := range row {
					if cell != "" && strings.ContainsRune("=+-@", rune(cell[0])) && strings.Trim(cell, "+-0123456789./") != "" {
						t.Errorf("%s with %q: the cell %q starts a formula", table, name, cell)
					}
				}
			}
		}
		got, err := ParseCatalogue(FormatCatalogue(parts), d)
		if err != nil {
			t.Fatalf("%q: %v", name, err)
		}
		if diff := cmp.Diff(parts, got); diff != "" {
			t.Errorf("%q (-want +got):\n%s", name, diff)
		}
	}
}
