package plot

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

var nan = math.NaN()

func TestAppendLine(t *testing.T) {
	f := NewFrame(Box(0, 0, 100, 100), Domain{0, 10}, Domain{0, 10})
	tests := []struct {
		name   string
		xs, ys []float64
		want   string
	}{
		{"straight", []float64{0, 5, 10}, []float64{0, 5, 5}, "M0 100L50 50L100 50"},
		{"gap", []float64{0, 1, 2, 3, 4}, []float64{0, 1, nan, 3, 4}, "M0 100L10 90M30 70L40 60"},
		{"infinite is a gap", []float64{0, 1, math.Inf(1), 3, 4}, []float64{0, 1, 2, 3, 4}, "M0 100L10 90M30 70L40 60"},
		{"alone between gaps", []float64{0, 1, 2}, []float64{nan, 1, nan}, ""},
		{"out and in again", []float64{0, 5, 10}, []float64{5, 15, 5}, "M0 50L25 0M75 0L100 50"},
		{"lists of two lengths", []float64{0, 10, 20}, []float64{0, 10}, "M0 100L100 0"},
		{"nothing", nil, nil, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := f.AppendLine(nil, tt.xs, tt.ys).String(); got != tt.want {
				t.Errorf("AppendLine = %q, want %q", got, tt.want)
			}
		})
	}
}

// wild draws values of which some lie outside 0..10 and some are gaps.
func wild(t *rapid.T, label string, n int) []float64 {
	list := make([]float64, n)
	for i := range list {
		list[i] = rapid.OneOf(rapid.Float64Range(-30, 40), rapid.Just(nan)).Draw(t, label)
	}
	return list
}

// rising draws n values that grow from about -5 to about 15.
func rising(t *rapid.T, n int) []float64 {
	list := make([]float64, n)
	for i := range list {
		list[i] = -5 + 20*(float64(i)+rapid.Float64Range(0, 0.9).Draw(t, "at"))/float64(n)
	}
	return list
}

func TestCurvesStayInTheFrame(t *testing.T) {
	area := Box(12.5, 20, 100, 150)
	f := NewFrame(area, Domain{0, 10}, Domain{0, 10})
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 20).Draw(t, "n")
		at, u, v := rising(t, n), wild(t, "u", n), wild(t, "v", n)
		wantWithin(t, f.AppendLine(nil, u, v), area)
		wantWithin(t, f.AppendSmooth(nil, u, v), area)
		wantWithin(t, f.AppendMonotone(nil, Vertical, u, at), area)
		wantWithin(t, f.AppendMonotone(nil, Horizontal, at, u), area)
		wantWithin(t, f.AppendBand(nil, Vertical, at, u, v), area)
		wantWithin(t, f.AppendBand(nil, Horizontal, at, u, v), area)
	})
}

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
