package plot

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// field returns the grid of a function over n × m values on 0..1 × 0..1.
func field(n, m int, z func(x, y float64) float64) Grid {
	g := Grid{X: steps(n), Y: steps(m), Z: make([]float64, n*m)}
	for i := range g.Z {
		g.Z[i] = z(g.X[i%n], g.Y[i/n])
	}
	return g
}

func steps(n int) []float64 {
	list := make([]float64, n)
	for i := range list {
		list[i] = float64(i) / float64(n-1)
	}
	return list
}

// lines returns the contour lines of a level and how many are closed.
func lines(g Grid, level float64) (list [][]Point, closed int) {
	var c Contours
	for c.Reset(g, level); c.Next(); {
		list = append(list, append([]Point(nil), c.Line()...))
		if c.Closed() {
			closed++
		}
	}
	return list, closed
}

func TestContourOfAPlaneIsStraight(t *testing.T) {
	g := field(9, 7, func(x, y float64) float64 { return x + y })
	const level, tolerance = 0.77, 1e-15
	list, closed := lines(g, level)
	if len(list) != 1 || closed != 0 {
		t.Fatalf("%d lines, %d of them closed, want a single open one", len(list), closed)
	}
	for _, p := range list[0] {
		if !near(p.X+p.Y, level, tolerance) {
			t.Errorf("%v is not on x + y = %v", p, level)
		}
	}
	first, last := list[0][0], list[0][len(list[0])-1]
	if min(first.X, last.X) != 0 || min(first.Y, last.Y) != 0 {
		t.Errorf("the line leads from %v to %v, want from edge to edge", first, last)
	}
}

func TestContourOfABowlIsACircle(t *testing.T) {
	g := field(41, 41, func(x, y float64) float64 { return math.Hypot(x-0.5, y-0.5) })
	list, closed := lines(g, 0.3)
	if len(list) != 1 || closed != 1 {
		t.Fatalf("%d lines, %d of them closed, want a single closed one", len(list), closed)
	}
	// The field is curved along an edge by at most 1/r: h²/8r with h = 1/40.
	const tolerance = 1.0 / 40 / 40 / 8 / 0.3
	for _, p := range list[0] {
		if r := p.Sub(Point{0.5, 0.5}).Length(); !near(r, 0.3, tolerance) {
			t.Errorf("%v is at %v from the middle, want 0.3", p, r)
		}
	}
}

func TestContourSaddle(t *testing.T) {
	tests := []struct {
		name string
		z    []float64 // at 0,0 then 1,0 then 0,1 then 1,1
		side func(Point) float64
	}{
		// The heights of 3 across a pass of 1.75 stay joined at level 1: each line cuts off
		// a low corner, so that it keeps x - y of one sign.
		{"pass above", []float64{3, 0.5, 0.5, 3}, func(p Point) float64 { return p.X - p.Y }},
		{"pass below", []float64{1.5, -2, -2, 1.5}, func(p Point) float64 { return p.X + p.Y - 1 }},
		{"pass above, other corners", []float64{0.5, 3, 3, 0.5}, func(p Point) float64 { return p.X + p.Y - 1 }},
		{"pass below, other corners", []float64{-2, 1.5, 1.5, -2}, func(p Point) float64 { return p.X - p.Y }},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			list, closed := lines(Grid{X: steps(2), Y: steps(2), Z: tt.z}, 1)
			if len(list) != 2 || closed != 0 {
				t.Fatalf("lines %v, want two open ones", list)
			}
			for _, line := range list {
				if len(line) != 2 || !(tt.side(line[0])*tt.side(line[1]) > 0) {
					t.Errorf("line %v does not cut off a corner", line)
				}
			}
		})
	}
}

func TestContourHole(t *testing.T) {
	g := field(9, 9, func(x, y float64) float64 {
		if math.Abs(x-0.5) < 0.1 {
			return nan
		}
		return y
	})
	list, closed := lines(g, 0.3)
	if len(list) != 2 || closed != 0 {
		t.Fatalf("%d lines, %d closed, want one at each side of the hole", len(list), closed)
	}
	for _, line := range list {
		for _, p := range line {
			if math.Abs(p.X-0.5) < 0.1 {
				t.Errorf("%v is in the hole", p)
			}
		}
	}
}

func TestContourOfTooLittle(t *testing.T) {
	for _, g := range []Grid{{}, {X: []float64{0}, Y: []float64{0, 1}, Z: []float64{0, 1}}} {
		if list, _ := lines(g, 0.5); len(list) != 0 {
			t.Errorf("%v has contour lines %v", g, list)
		}
	}
}

// Every edge that the level crosses is on exactly one line, once.
func TestContourVisitsEachCrossingOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, m := rapid.IntRange(2, 7).Draw(t, "n"), rapid.IntRange(2, 7).Draw(t, "m")
		value := rapid.OneOf(rapid.Float64Range(-1, 1), rapid.SampledFrom([]float64{0, 0, 1, nan}))
		g := Grid{X: steps(n), Y: steps(m), Z: rapid.SliceOfN(value, n*m, n*m).Draw(t, "z")}
		got := 0
		list, _ := lines(g, 0)
		for _, line := range list {
			got += len(line)
		}
		if want := crossedEdges(g, 0); got != want {
			t.Fatalf("lines through %d edges, want %d", got, want)
		}
	})
}

// crossedEdges counts the edges of whole cells between values on both sides of level.
func crossedEdges(g Grid, level float64) int {
	crossed := map[[2]Point]bool{}
	for row := range len(g.Y) - 1 {
		for col := range len(g.X) - 1 {
			c := cell{col, row}
			whole := finite(g.value(c, 0) + g.value(c, 1) + g.value(c, 2) + g.value(c, 3))
			for i := range 4 {
				j := (i + 1) % 4
				if whole && (g.value(c, i) >= level) != (g.value(c, j) >= level) {
					a, b := g.place(c, i), g.place(c, j)
					if a.X > b.X || a.Y > b.Y {
						a, b = b, a
					}
					crossed[[2]Point{a, b}] = true
				}
			}
		}
	}
	return len(crossed)
}

func TestAppendContour(t *testing.T) {
	g := field(3, 3, func(x, y float64) float64 { return max(math.Abs(x-0.5), math.Abs(y-0.5)) })
	f := NewFrame(Box(0, 0, 100, 100), Domain{0, 1}, Domain{0, 1})
	var c Contours
	if got, want := f.AppendContour(nil, &c, g, 0.25).String(), "M25 50L50 25L75 50L50 75L25 50"; got != want {
		t.Errorf("closed line = %q, want %q", got, want)
	}
	f.X.Low = 0.5
	wantWithin(t, f.AppendContour(nil, &c, g, 0.25), f.Area)
}

func TestContourLabel(t *testing.T) {
	f := NewFrame(Box(0, 0, 100, 100), Domain{0, 10}, Domain{0, 10})
	tests := []struct {
		name string
		line []Point
		want Anchor
		ok   bool
	}{
		{"half way", []Point{{0, 2.5}, {2.5, 2.5}, {10, 2.5}}, Anchor{Point{50, 75}, Middle, 0}, true},
		{"not on its head", []Point{{10, 10}, {0, 0}}, Anchor{Point{50, 50}, Middle, -45}, true},
		{"upward", []Point{{5, 0}, {5, 10}}, Anchor{Point{50, 50}, Middle, -90}, true},
		{"outside", []Point{{20, 0}, {20, 10}}, Anchor{}, false},
		{"too short", []Point{{0, 0}, {1, 0}}, Anchor{}, false},
		{"single point", []Point{{5, 5}}, Anchor{}, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, ok := f.ContourLabel(tt.line, 30)
			if ok != tt.ok || ok && (!nearPoint(got.At, tt.want.At, 1e-9) || !near(got.Turn, tt.want.Turn, 1e-9)) {
				t.Errorf("ContourLabel = %v, %v, want %v, %v", got, ok, tt.want, tt.ok)
			}
		})
	}
}
