package plot

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// unitTolerance is a few roundings of numbers near 1.
const unitTolerance = 1e-14

func sameView(a, b View) bool {
	return a.Right.Sub(b.Right).Length() < unitTolerance && a.Up.Sub(b.Up).Length() < unitTolerance &&
		a.Out.Sub(b.Out).Length() < unitTolerance
}

func TestElevations(t *testing.T) {
	left, forward, up := Vec{Y: 1}, Vec{X: 1}, Vec{Z: 1}
	tests := []struct {
		name              string
		view              View
		left, forward, up Point // on the paper, y down
	}{
		{"behind", Behind, Point{-1, 0}, Point{}, Point{0, -1}},
		{"plan", Plan, Point{-1, 0}, Point{0, -1}, Point{}},
		{"left side", LeftSide, Point{}, Point{-1, 0}, Point{0, -1}},
		{"right side", RightSide, Point{}, Point{1, 0}, Point{0, -1}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := Projection{View: tt.view, Scale: 1}
			if p.At(left) != tt.left || p.At(forward) != tt.forward || p.At(up) != tt.up {
				t.Errorf("left, forward and up lie at %v, %v, %v, want %v, %v, %v",
					p.At(left), p.At(forward), p.At(up), tt.left, tt.forward, tt.up)
			}
		})
	}
}

func TestOrbitMeetsTheElevations(t *testing.T) {
	tests := []struct {
		name       string
		yaw, pitch float64
		want       View
	}{
		{"behind", 0, 0, Behind},
		{"from above", 0, math.Pi / 2, Plan},
		{"a quarter turn", math.Pi / 2, 0, RightSide},
		{"a quarter turn back", -math.Pi / 2, 0, LeftSide},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Orbit(tt.yaw, tt.pitch); !sameView(got, tt.want) {
				t.Errorf("Orbit(%v, %v) = %v, want %v", tt.yaw, tt.pitch, got, tt.want)
			}
		})
	}
}

func TestOrbitIsSquareAndRightHanded(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := Orbit(rapid.Float64Range(-10, 10).Draw(t, "yaw"), rapid.Float64Range(-10, 10).Draw(t, "pitch"))
		if got := v.Right.Cross(v.Up).Sub(v.Out).Length(); got > unitTolerance {
			t.Fatalf("right by up misses out by %v", got)
		}
		if !near(v.Right.Length(), 1, unitTolerance) || !near(v.Up.Length(), 1, unitTolerance) {
			t.Fatalf("%v is not of length 1", v)
		}
	})
}

func TestProjectionDragFollowsThePointer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Projection{View: Orbit(rapid.Float64Range(-3, 3).Draw(t, "yaw"), rapid.Float64Range(-1, 1).Draw(t, "pitch")), Scale: 0.4}
		step := points(t, "step")
		v := p.Drag(step)
		if got := p.Step(v); !nearPoint(got, step, 1e-9) {
			t.Fatalf("the pointer went %v, the point %v", step, got)
		}
		if depth := p.Depth(v); !near(depth, 0, 1e-9) {
			t.Fatalf("dragging moved the point %v out of the paper's plane", depth)
		}
	})
}

func TestProjectionDepth(t *testing.T) {
	p := Projection{View: Behind, Centre: Vec{X: 10}, Scale: 3}
	if got := p.Depth(Vec{X: -20}); got != 30 {
		t.Errorf("a point 30 mm nearer to the reader has depth %v", got)
	}
}

func TestFit(t *testing.T) {
	area := Box(10, 20, 400, 100)
	tests := []struct {
		name   string
		points []Vec
		scale  float64
	}{
		{"as wide as it goes", []Vec{{0, 700, 0}, {0, -900, 100}}, 0.25},
		{"as high as it goes", []Vec{{0, 10, 0}, {0, -10, 500}}, 0.2},
		{"a level line", []Vec{{0, 10, 5}, {0, -10, 5}}, 20},
		{"one point", []Vec{{1, 2, 3}}, 1},
		{"nothing", nil, 1},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := Fit(Behind, area, tt.points...)
			if !near(p.Scale, tt.scale, 1e-12) {
				t.Errorf("scale = %v, want %v", p.Scale, tt.scale)
			}
			var xs, ys []float64
			for _, v := range tt.points {
				at := p.At(v)
				xs, ys = append(xs, at.X), append(ys, at.Y)
				if !area.Inset(-1e-9, -1e-9, -1e-9, -1e-9).Contains(at) {
					t.Errorf("%v lies at %v, outside %v", v, at, area)
				}
			}
			x, ok := DomainOf(xs)
			y, _ := DomainOf(ys)
			if ok && !nearPoint(Point{x.Low + x.High, y.Low + y.High}.Times(0.5), area.Centre(), 1e-9) {
				t.Errorf("the points span %v and %v, not about the middle", x, y)
			}
		})
	}
}
