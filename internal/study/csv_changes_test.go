package study

import (
	"fmt"
	"testing"

	"toewright/solver"
)

// TestColumnsByLabel: the title of a column may be what the page calls a parameter, with
// its side and its unit, of every parameter of every kind of car.
func TestColumnsByLabel(t *testing.T) {
	for _, template := range Templates() {
		d := template.Document()
		design, err := d.Design()
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range solver.Parameters(design) {
			unit := "mm"
			if p.Quantity == solver.AngleQuantity {
				unit = "deg"
			}
			titles := map[string]string{p.Label: p.Key, fmt.Sprintf("%s (%s)", p.Label, unit): p.Key}
			if p.Sided() {
				titles[p.Label+", right"], titles["Left "+p.Label] = p.Key+"@right", p.Key+"@left"
			}
			for title, key := range titles {
				parts, err := ParseCatalogue(fmt.Appendf(nil, "slot,name,%q\narm,Arm,1\n", title), d)
				if err != nil {
					t.Errorf("%s: %q: %v", template.Key, title, err)
					continue
				}
				if _, ok := parts[0].Changes[key]; !ok {
					t.Errorf("%s: %q is read as %v, want %s", template.Key, title, parts[0].Changes, key)
				}
			}
		}
	}
}
