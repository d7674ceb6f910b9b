package plot

import (
	"math"
	"testing"
)

// meshOf returns a grid of a function over -2 to 2 and 0 to 3.
func meshOf(columns, rows int, f func(x, y float64) float64) Grid {
	g := Grid{}
	for i := range columns {
		g.X = append(g.X, -2+4*float64(i)/float64(columns-1))
	}
	for j := range rows {
		g.Y = append(g.Y, 3*float64(j)/float64(rows-1))
		for _, x := range g.X {
			g.Z = append(g.Z, f(x, g.Y[j]))
		}
	}
	return g
}

// TestRefinedQuadraticIsExact refines the square of a distance from a slanted line, as a
// mean square of toe is: the valley is found between the places of the field.
func TestRefinedQuadraticIsExact(t *testing.T) {
	const tolerance = 1e-12 // rounding of some tens of sums about 10
	valley := func(x, y float64) float64 { return (x - 0.6*y + 0.1) * (x - 0.6*y + 0.1) }
	for _, n := range []int{2, 3, 8} {
		got := meshOf(6, 4, valley).Refined(n)
		if len(got.X) != 5*n+1 || len(got.Y) != 3*n+1 || len(got.Z) != len(got.X)*len(got.Y) {
			t.Fatalf("n = %d: %d by %d places, %d values", n, len(got.X), len(got.Y), len(got.Z))
		}
		for j, y := range got.Y {
			for i, x := range got.X {
				if z, want := got.Z[j*len(got.X)+i], valley(x, y); !(math.Abs(z-want) <= tolerance) {
					t.Errorf("n = %d: field at %.3f, %.3f = %g, want %g", n, x, y, z, want)
				}
			}
		}
	}
}

// TestRefinedKeepsHoles refines a plane with a hole: the hole spreads to the cells that
// touch it and no further, and what is left is the plane.
func TestRefinedKeepsHoles(t *testing.T) {
	const tolerance = 1e-12
	plane := func(x, y float64) float64 { return 1 + x - 2*y }
	g := meshOf(9, 9, plane)
	g.Z[4*9+4] = math.NaN()
	got := g.Refined(2)
	holes := 0
	for j, y := range got.Y {
		for i, x := range got.X {
			z := got.Z[j*len(got.X)+i]
			if math.IsNaN(z) {
				holes++
				if dx, dy := i-8, j-8; dx < -1 || dx > 1 || dy < -1 || dy > 1 {
					t.Errorf("a hole at %d, %d, away from that of the field", i, j)
				}
			} else if want := plane(x, y); !(math.Abs(z-want) <= tolerance) {
				t.Errorf("plane at %.3f, %.3f = %g, want %g", x, y, z, want)
			}
		}
	}
	if holes != 9 {
		t.Errorf("%d holes, want the 9 that touch the one of the field", holes)
	}
}

func TestRefinedLeavesSmallFieldsAlone(t *testing.T) {
	for _, tt := range []struct{ columns, rows, n int }{{2, 5, 4}, {5, 2, 4}, {5, 5, 1}} {
		g := meshOf(tt.columns, tt.rows, math.Hypot)
		if got := g.Refined(tt.n); len(got.Z) != len(g.Z) {
			t.Errorf("%d by %d refined by %d has %d values, want %d", tt.columns, tt.rows, tt.n, len(got.Z), len(g.Z))
		}
	}
}
