package plot

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestAppendMonotoneStraight(t *testing.T) {
	f := NewFrame(Box(0, 0, 90, 90), Domain{0, 9}, Domain{0, 9})
	got := f.AppendMonotone(nil, Vertical, []float64{0, 3, 9}, []float64{0, 3, 9}).String()
	if want := "M0 90C10 80 20 70 30 60C50 40 70 20 90 0"; got != want {
		t.Errorf("curve through a straight line = %q, want %q", got, want)
	}
}

func TestAppendMonotoneGap(t *testing.T) {
	f := NewFrame(Box(0, 0, 90, 90), Domain{0, 9}, Domain{0, 9})
	got := f.AppendMonotone(nil, Horizontal, []float64{0, 3, 4, 6, 9}, []float64{0, 3, nan, 6, 9}).String()
	if want := "M0 90C10 80 20 70 30 60M60 30C70 20 80 10 90 0"; got != want {
		t.Errorf("curve with a gap = %q, want %q", got, want)
	}
}

// Between two values the curve must not leave the range between them: the cubic's
// control points, taken along the value's axis, do not either.
func TestAppendMonotoneMakesNoBump(t *testing.T) {
	f := NewFrame(Box(0, 0, 200, 400), Domain{-100, 100}, Domain{-10, 20})
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 12).Draw(t, "n")
		at := rising(t, n)
		toe := rapid.SliceOfN(rapid.Float64Range(-90, 90), n, n).Draw(t, "toe")
		from := Point{}
		for _, c := range parse(t, f.AppendMonotone(nil, Vertical, toe, at)) {
			if c.name == 'C' {
				between := Domain{min(from.X, c.end().X), max(from.X, c.end().X)}
				between = Domain{between.Low - 2*rounding, between.High + 2*rounding}
				if !extremes(from.X, c.numbers[0], c.numbers[2], c.end().X, between) {
					t.Fatalf("from %v the curve %v leaves %v", from, c.numbers, between)
				}
			}
			from = c.end()
		}
	})
}

// extremes reports whether the cubic a, b, c, d stays within the domain.
func extremes(a, b, c, d float64, within Domain) bool {
	for i := range 33 {
		t := float64(i) / 32
		if p := bezier(Point{X: a}, Point{X: b}, Point{X: c}, Point{X: d}, t); !within.Contains(p.X) {
			return false
		}
	}
	return true
}

// cubicError bounds |curve - sine| of the monotone curve through 9 values of half a
// wave of 50 px, away from its crest: well under a pixel.
const cubicError = 0.5

func TestAppendMonotoneFollowsASmoothFunction(t *testing.T) {
	f := NewFrame(Box(0, 0, 100, 100), Domain{0, math.Pi / 2}, Domain{-1, 1})
	xs, ys := make([]float64, 9), make([]float64, 9)
	for i := range xs {
		xs[i] = math.Pi / 2 * float64(i) / 8
		ys[i] = math.Sin(xs[i])
	}
	from := Point{}
	for _, c := range parse(t, f.AppendMonotone(nil, Horizontal, xs, ys)) {
		if c.name == 'C' {
			middle := bezier(from, Point{c.numbers[0], c.numbers[1]}, Point{c.numbers[2], c.numbers[3]}, c.end(), 0.5)
			if want := f.Y.At(math.Sin(f.X.Invert(middle.X))); !near(middle.Y, want, cubicError) {
				t.Errorf("at %v the curve is at %v, want %v", middle.X, middle.Y, want)
			}
		}
		from = c.end()
	}
}
