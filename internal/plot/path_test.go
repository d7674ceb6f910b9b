package plot

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestPathNumber(t *testing.T) {
	tests := []struct {
		name string
		v    float64
		want string
	}{
		{"whole", 12, "12"},
		{"one decimal", 1.5, "1.5"},
		{"two decimals", -1.25, "-1.25"},
		{"hundredths only", 0.07, "0.07"},
		{"rounded to the next whole", 2.999, "3"},
		{"no sign before zero", -0.004, "0"},
		{"beyond any paper", 1e300, "10000000"},
		{"minus infinity", math.Inf(-1), "-10000000"},
		{"not a number", math.NaN(), "-10000000"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Path(nil).number(tt.v).String(); got != tt.want {
				t.Errorf("number(%v) = %q, want %q", tt.v, got, tt.want)
			}
		})
	}
}

func TestPathCommands(t *testing.T) {
	a, b, c := Point{1, 2}, Point{3, 4}, Point{5, -6}
	tests := []struct {
		name string
		path Path
		want string
	}{
		{"line", Path{}.MoveTo(a).LineTo(b), "M1 2L3 4"},
		{"curve", Path{}.MoveTo(a).CurveTo(a, b, c), "M1 2C1 2 3 4 5 -6"},
		{"arc", Path{}.MoveTo(a).ArcTo(7, 8, 30, true, false, b), "M1 2A7 8 30 1 0 3 4"},
		{"polyline", Path{}.Polyline(a, b, c), "M1 2L3 4L5 -6"},
		{"polygon", Path{}.Polygon(a, b, c), "M1 2L3 4L5 -6Z"},
		{"polygon of nothing", Path{}.Polygon(), ""},
		{"rectangle", Path{}.Rect(Box(0, 1, 2, 3)), "M0 1L2 1L2 4L0 4Z"},
		{"circle", Path{}.Circle(a, 1), "M0 2A1 1 0 0 1 2 2A1 1 0 0 1 0 2Z"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.path.String(); got != tt.want {
				t.Errorf("path = %q, want %q", got, tt.want)
			}
		})
	}
}

func TestPathReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		coordinate := rapid.Float64Range(-1e5, 1e5)
		want := Point{coordinate.Draw(t, "x"), coordinate.Draw(t, "y")}
		got := parse(t, Path{}.MoveTo(want))[0].end()
		if !near(got.X, want.X, rounding) || !near(got.Y, want.Y, rounding) {
			t.Fatalf("MoveTo(%v) reads back as %v", want, got)
		}
	})
}
