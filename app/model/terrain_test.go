package model_test

import (
	"math"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

func ground(t *testing.T, d *model.Desk) *model.Ground {
	t.Helper()
	x, y := model.MapKeys(d.Session.Document(), d.Session.Cars().Design, "", "")
	g, err := d.GroundOf(x, y)
	if err != nil {
		t.Fatal(err)
	}
	return &g
}

// TestGroundStaysUnderItsCar moves the selected car over the map and otherwise: only what
// the axes do not have makes another map.
func TestGroundStaysUnderItsCar(t *testing.T) {
	for _, tt := range []struct {
		name string
		edit func(*model.Desk) error
		same bool
	}{
		{"across", func(d *model.Desk) error { return d.Set("tieRodOuterHeight", -7, "") }, true},
		{"upward", func(d *model.Desk) error { return d.Set("tieRodInnerHeight", 3, "") }, true},
		{"beyond the edge", func(d *model.Desk) error { return d.Set("tieRodOuterHeight", -70, "") }, false},
		{"another arm", func(d *model.Desk) error { return d.Set("steeringArmLength", 4, "") }, false},
		{"a setpoint floats", func(d *model.Desk) error { return d.Session.SetHeld(d.View.Car, "camber", false) }, false},
		{"another name", func(d *model.Desk) error { return d.Session.Rename(d.View.Car, "else") }, true},
		{"another target", func(d *model.Desk) error { return d.Session.SetSlope(0.01) }, false},
		{"another car on the same ground", func(d *model.Desk) error { d.Select(1); return nil }, true},
	} {
		d := deskWith(t)
		before := ground(t, d)
		if err := tt.edit(d); err != nil {
			t.Fatal(err)
		}
		if got := before.Same(ground(t, d)); got != tt.same {
			t.Errorf("%s: same ground %t, want %t", tt.name, got, tt.same)
		}
	}
}

// TestGroundHoldsCars asks which cars of the demo lie on the map of the selected one,
// spacers of 12 mm: the base car and other spacers do, an arm besides does not.
func TestGroundHoldsCars(t *testing.T) {
	d := deskWith(t)
	g := ground(t, d)
	if car := d.Session.Cars().At(1); !g.Holds(car) {
		t.Errorf("%s, which differs in the height alone, is not on the map", car.Name)
	}
	if err := d.Session.SetChange(1, "steeringArmLength", 2, ""); err != nil {
		t.Fatal(err)
	}
	if car := d.Session.Cars().At(1); g.Holds(car) {
		t.Errorf("%s is on the map, with another arm", car.Name)
	}
}

func TestMapKeys(t *testing.T) {
	d := deskWith(t)
	doc, design := d.Session.Document(), d.Session.Cars().Design
	free := *doc
	free.Search = &study.Search{Variables: []study.Variable{{Parameter: "caster"}}}
	for _, tt := range []struct{ x, y, wantX, wantY string }{
		{"", "", "tieRodOuterHeight", "tieRodInnerHeight"},
		{"tieRodInnerHeight", "", "tieRodInnerHeight", "tieRodOuterHeight"},
		{"", "tieRodOuterHeight", "tieRodInnerHeight", "tieRodOuterHeight"},
		{"caster", "camber", "caster", "camber"},
	} {
		if x, y := model.MapKeys(&free, design, tt.x, tt.y); x != tt.wantX || y != tt.wantY {
			t.Errorf("MapKeys(%q, %q) = %q, %q, want %q, %q", tt.x, tt.y, x, y, tt.wantX, tt.wantY)
		}
	}
}

func TestLeastOfTheTerrain(t *testing.T) {
	m := model.Terrain{Size: 2, Cells: []float64{math.NaN(), 0.3, 0.2, 0.4}}
	m.X.Low, m.X.High, m.Y.Low, m.Y.High = -10, 10, 0, 5
	if x, y, figure, ok := m.Least(); x != -10 || y != 5 || figure != 0.2 || !ok {
		t.Errorf("least %g at %g, %g, %t, want 0.2 at -10, 5", figure, x, y, ok)
	}
	m.Cells = []float64{math.NaN(), math.NaN(), math.NaN(), math.NaN()}
	if _, _, _, ok := m.Least(); ok {
		t.Error("a map of holes has a least")
	}
}

// TestLeastHoldsTheLimits: no least is told before the limits were looked at, and the one told
// then stands where none is broken.
func TestLeastHoldsTheLimits(t *testing.T) {
	d := deskWith(t)
	most := 18.0
	if err := d.Session.SetLimits("limit", []study.Limit{{Result: "outerBallAngle", Max: &most}}); err != nil {
		t.Fatal(err)
	}
	g, err := d.GroundOf("tieRodOuterHeight", "tieRodInnerHeight")
	if err != nil {
		t.Fatal(err)
	}
	m := model.Terrain{Ground: g, Size: 3, Cells: []float64{0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9}}
	if _, _, _, ok := m.Least(); ok || !m.Awaited() {
		t.Error("a least is told before the limits were looked at")
	}
	m.RoomSize, m.Room = 3, [][]float64{{-1, -1, 1, -1, -1, 1, -1, -1, 1}} // broken but for the high end across
	if x, y, figure, ok := m.Least(); x != g.X.High || y != g.Y.Low || figure != 0.3 || !ok {
		t.Errorf("least %g at %g, %g, %t, want 0.3 at %g, %g", figure, x, y, ok, g.X.High, g.Y.Low)
	}
	m.Room[0] = []float64{-1, -1, -1, -1, -1, -1, -1, -1, -1}
	if _, _, _, ok := m.Least(); ok {
		t.Error("a map on which every car breaks a limit has a least")
	}
}
