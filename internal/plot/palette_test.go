package plot

import (
	"math"
	"testing"
)

// What WCAG 2.2 asks of graphics, success criterion 1.4.11, and of text, 1.4.3: thin
// lines on dark paper are held to that, for below it they look dim.
const (
	leastContrast       = 3
	leastContrastOnDark = 4.5
)

func TestPaletteContrast(t *testing.T) {
	for _, s := range palette {
		for _, pair := range []struct {
			name       string
			ink, paper Colour
			least      float64
		}{
			{"light", s.OnLight, LightPaper, leastContrast},
			{"white", s.OnLight, WhitePaper, leastContrast},
			{"dark", s.OnDark, DarkPaper, leastContrastOnDark},
		} {
			if got := Contrast(pair.ink, pair.paper); !(got >= pair.least) {
				t.Errorf("%s on %s paper: contrast %.2f, want at least %g", s.Name, pair.name, got, pair.least)
			}
		}
	}
}

// sights are matrices on linear RGB of how colours look without one of the three
// kinds of cones: Machado, Oliveira and Fernandes, "A physiologically-based model
// for simulation of color vision deficiency", 2009, severity 1 (from memory; each
// row adds up to 1, for grey must stay grey).
var sights = []struct {
	name   string
	matrix [3][3]float64
	least  float64 // Oklab distance; 0.02 is about what is just seen side by side
}{
	{"usual", [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}, 0.13},
	{"protanopia", [3][3]float64{{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}, 0.1},
	{"deuteranopia", [3][3]float64{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}, 0.1},
	{"tritanopia", [3][3]float64{{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}, 0.075},
}

func TestPaletteIsToldApart(t *testing.T) {
	papers := map[string]func(Series) Colour{
		"light": func(s Series) Colour { return s.OnLight },
		"dark":  func(s Series) Colour { return s.OnDark },
	}
	for _, sight := range sights {
		for paper, ink := range papers {
			t.Run(sight.name+" on "+paper, func(t *testing.T) {
				for i, a := range palette {
					for _, b := range palette[:i] {
						got := distance(seen(ink(a), sight.matrix), seen(ink(b), sight.matrix))
						if got < sight.least {
							t.Errorf("%s and %s are %.3f apart, want %v", a.Name, b.Name, got, sight.least)
						}
					}
				}
			})
		}
	}
}

// seen returns the colour in Oklab as it looks through the matrix.
func seen(c Colour, matrix [3][3]float64) [3]float64 {
	light := apply(matrix, c.linear())
	for i, v := range light {
		light[i] = clamp(v, 0, 1)
	}
	return oklab(light)
}

func apply(m [3][3]float64, v [3]float64) [3]float64 {
	var out [3]float64
	for i, row := range m {
		out[i] = row[0]*v[0] + row[1]*v[1] + row[2]*v[2]
	}
	return out
}

// oklab returns the colour in B. Ottosson's Oklab, 2020, in which distances are
// about as large as they look.
func oklab(light [3]float64) [3]float64 {
	cones := apply([3][3]float64{
		{0.4122214708, 0.5363325363, 0.0514459929},
		{0.2119034982, 0.6806995451, 0.1073969566},
		{0.0883024619, 0.2817188376, 0.6299787005}}, light)
	for i, v := range cones {
		cones[i] = math.Cbrt(v)
	}
	return apply([3][3]float64{
		{0.2104542553, 0.7936177850, -0.0040720468},
		{1.9779984951, -2.4285922050, 0.4505937099},
		{0.0259040371, 0.7827717662, -0.8086757660}}, cones)
}

func distance(a, b [3]float64) float64 {
	return math.Hypot(math.Hypot(a[0]-b[0], a[1]-b[1]), a[2]-b[2])
}

func TestPaletteSignsDiffer(t *testing.T) {
	classes, dashes, markers := map[string]bool{}, map[string]bool{}, map[Marker]bool{}
	for _, s := range palette {
		if classes[s.Class] || dashes[s.Dash] || markers[s.Marker] {
			t.Errorf("%s shares its class %q, dash %q or marker %d", s.Name, s.Class, s.Dash, s.Marker)
		}
		classes[s.Class], dashes[s.Dash], markers[s.Marker] = true, true, true
	}
}

func TestSeriesStyle(t *testing.T) {
	for i, want := range map[int]string{0: "s0", 8: "s8", 9: "s0", -1: "s8"} {
		if got := SeriesStyle(i).Class; got != want {
			t.Errorf("SeriesStyle(%d) has class %q, want %q", i, got, want)
		}
	}
}
