package model_test

import (
	"math"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// TestPresets states each preset on the demo, in mm and in inches: over its window of 50
// mm, or as many inches, target and band are the figures that the source has, worked out
// by hand, and the study knows the preset again.
func TestPresets(t *testing.T) {
	// atan of inches over a 15 in plate, for 50 mm of travel; 7 minutes over 60 mm.
	plate := func(inches float64) float64 { return inches / 15 * 180 / math.Pi * 50 / 25.4 }
	want := map[string][2]float64{ // degrees of the target at 50 mm of bump, and of the band
		"track": {0, plate(0.005)}, "road": {0, plate(0.030)}, "out": {plate(-0.010), plate(0.005)},
		"manual": {-7. / 60 * 50 / 60, 7. / 60},
	}
	for units, key := range map[study.Units]string{study.Millimetre: "double-wishbone-rack", study.Inch: "double-wishbone-centre-link"} {
		for i := range model.Presets {
			p := &model.Presets[i]
			desk := model.NewDesk(template(t, key).Document())
			if desk.Session.Document().Units != units {
				t.Fatalf("%s is not in %s", key, units)
			}
			w := desk.Session.Document().SearchWindow()
			w.Bump, w.Droop = desk.Session.Document().Units.FromMillimetres(50), desk.Session.Document().Units.FromMillimetres(30)
			if err := desk.Session.SetWindow(w); err != nil {
				t.Fatal(err)
			}
			if err := desk.Session.SetPreset(p); err != nil {
				t.Fatal(err)
			}
			doc := desk.Session.Document()
			bump := model.Slope(doc.Search) * doc.SearchWindow().Bump
			if got, f := want[p.Key], doc.Search; math.Abs(bump-got[0]) > 1e-9 || math.Abs(f.Band-got[1]) > 1e-9 {
				t.Errorf("%s in %s: target %g at full bump, band %g, want %v", p.Key, units, bump, f.Band, got)
			}
			if again := model.PresetOf(doc, doc.Search); again != p {
				t.Errorf("%s in %s is taken for %v", p.Key, units, again)
			}
		}
	}
}

// TestNoPreset: a target typed by hand, or a band of one's own, is none of them.
func TestNoPreset(t *testing.T) {
	desk := deskWith(t)
	if err := desk.Session.SetPreset(&model.Presets[0]); err != nil {
		t.Fatal(err)
	}
	if err := desk.Session.SetBand(0.3); err != nil {
		t.Fatal(err)
	}
	if got := desk.Session.GoodWithin().Degrees(); math.Abs(got-0.3) > 1e-12 {
		t.Errorf("%g degrees off the target are good enough, want the band of 0.3", got)
	}
	if p := model.PresetOf(desk.Session.Document(), desk.Session.Document().Search); p != nil {
		t.Errorf("a band of 0.3 is taken for that of %q", p.Label)
	}
}
