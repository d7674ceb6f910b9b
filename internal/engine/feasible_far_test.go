package engine

import (
	"strings"
	"testing"

	"toewright/internal/study"
)

// TestFarSetUps: of set-ups of which one cannot be taken, on every demo car, that one is named, by
// each of heave, steer and roll, with what stands in the way: a link that ends the travel short of
// the window, or why the car does not stand so at all.
func TestFarSetUps(t *testing.T) {
	short := 0
	for _, tpl := range study.Templates() {
		d := tpl.Document()
		d.Search.Limits = nil
		far := d.Units.FromMillimetres(1)
		attitudes := []study.Attitude{{Heave: 400 * far}, {Heave: -700 * far}, {Heave: 1900 * far}, {Roll: 30}}
		if d.Steering != nil && d.Steering.Type != study.NoGear {
			steer := 500 * far
			if d.Steering.Type == study.CentreLink {
				steer = 110
			}
			attitudes = append(attitudes, study.Attitude{Steer: steer})
		} else {
			attitudes = append(attitudes, study.Attitude{Steer: 3})
		}
		for _, a := range attitudes {
			d.Search.Scenarios = []study.Scenario{{Name: "near"}, {Name: "far", Attitude: &a}}
			can, err := Feasible(t.Context(), d, SearchOptions{})
			if err != nil {
				if text := err.Error(); !strings.Contains(text, `"far": roll`) && !strings.Contains(text, "search.scenarios.1.attitude.steer") {
					t.Errorf("%s: %+v: %v", tpl.Key, a, err)
				}
				continue
			}
			if can.Feasible {
				continue // this car goes as far as that
			}
			short++
			w := d.SearchWindow()
			switch r := can.Reach; {
			case r == nil:
				t.Errorf("%s: %+v: nothing is said of what is reached", tpl.Key, a)
			case r.Scenario != "far", r.Values == nil && r.Problem == "",
				r.Values != nil && (r.Link == "" || !(r.Bump < w.Bump || r.Droop < w.Droop)):
				t.Errorf("%s: %+v: %+v", tpl.Key, a, r)
			}
		}
	}
	if short < 20 {
		t.Errorf("%d set-ups could not be taken, want 20", short)
	}
}
