package study

import (
	"slices"
	"testing"
)

// TestEveryNumberHasAName: no path of the file stands in a sentence for people, whatever
// kind of car it is and whatever the study states.
func TestEveryNumberHasAName(t *testing.T) {
	for name, data := range studyFiles(t) {
		d := decode(t, data)
		d.Sources = Sources{AnyNumber: FromTemplate}
		b := d.Borrowed()
		for _, place := range slices.Concat(b.Places, b.Others) {
			for i := range place {
				if place[i] == '.' || place[i] >= 'A' && place[i] <= 'Z' {
					t.Errorf("%s: %q is a key, not a name", name, place)
					break
				}
			}
		}
		if b.Deciding < len(d.Points())*3+2 {
			t.Errorf("%s: %d numbers decide the curve, and there are %d points and two angles", name, b.Deciding, len(d.Points()))
		}
	}
}
