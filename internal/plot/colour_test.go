package plot

import "testing"

func TestContrast(t *testing.T) {
	tests := []struct {
		name string
		a, b Colour
		want float64
	}{
		{"black on white", Colour{}, WhitePaper, 21},
		{"alike", LightPaper, LightPaper, 1},
		// #767676 is known as the lightest grey with 4.5 on white.
		{"grey on white", Colour{0x76, 0x76, 0x76}, WhitePaper, 4.54},
		{"the other way round", WhitePaper, Colour{0x76, 0x76, 0x76}, 4.54},
	}
	const tolerance = 0.005 // the wants have two decimals
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Contrast(tt.a, tt.b); !near(got, tt.want, tolerance) {
				t.Errorf("Contrast(%v, %v) = %.3f, want %v", tt.a, tt.b, got, tt.want)
			}
		})
	}
}

func TestColourHex(t *testing.T) {
	if got, want := (Colour{0, 0x0f, 0xa9}).Hex(), "#000fa9"; got != want {
		t.Errorf("Hex() = %q, want %q", got, want)
	}
}

func TestColourMixed(t *testing.T) {
	a, b := Colour{0, 100, 255}, Colour{200, 0, 255}
	for at, want := range map[float64]Colour{0: a, 1: b, 0.5: {100, 50, 255}} {
		if got := a.mixed(b, at); got != want {
			t.Errorf("mixed(%v) = %v, want %v", at, got, want)
		}
	}
}
