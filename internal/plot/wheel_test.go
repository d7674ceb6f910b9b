package plot

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestSpindleAxis(t *testing.T) {
	tests := []struct {
		name        string
		toe, camber float64
		ok          func(Vec) bool
	}{
		{"straight", 0, 0, func(v Vec) bool { return v == Vec{Y: 1} }},
		{"toe-in: the spindle swings forward", 0.1, 0, func(v Vec) bool { return v.X > 0 && v.Z == 0 }},
		{"top outboard: the spindle dips", 0, 0.1, func(v Vec) bool { return v.Z < 0 && v.X == 0 }},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			v := SpindleAxis(tt.toe, tt.camber)
			if !tt.ok(v) || !near(v.Length(), 1, unitTolerance) {
				t.Errorf("SpindleAxis(%v, %v) = %v", tt.toe, tt.camber, v)
			}
		})
	}
}

func TestAppendTyre(t *testing.T) {
	p := Projection{View: Behind, Scale: 1}
	wheel := Wheel{Axis: Vec{Y: 2}, Radius: 300, Width: 200}
	tests := []struct {
		name string
		view View
		want string
	}{
		{"section", Behind, "M-100 300A0 300 -180 0 1 -100 -300L100 -300A0 300 -180 0 1 100 300Z"},
		{"from its side", LeftSide, "M0 -300A300 300 0 0 1 0 300L0 300A300 300 0 0 1 0 -300Z" +
			"M0 -300A300 300 0 0 1 0 300A300 300 0 0 1 0 -300Z"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p.View = tt.view
			if got := p.AppendTyre(nil, wheel).String(); got != tt.want {
				t.Errorf("AppendTyre = %q, want %q", got, tt.want)
			}
		})
	}
}

// Every point of the projected circle must be on the ellipse that is drawn.
func TestDiscIsTheProjectedCircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Projection{View: Orbit(rapid.Float64Range(-3, 3).Draw(t, "yaw"), rapid.Float64Range(-1.5, 1.5).Draw(t, "pitch")), Scale: 0.5}
		w := Wheel{Axis: SpindleAxis(rapid.Float64Range(-1, 1).Draw(t, "toe"), rapid.Float64Range(-1, 1).Draw(t, "camber")), Radius: 300}
		d := p.disc(w)
		if d.minor < 1 {
			t.Skip("seen edge on: the ellipse's equation divides by its width")
		}
		first := w.Axis.Cross(Vec{Z: 1})
		first = first.Times(1 / first.Length())
		second := w.Axis.Cross(first)
		sinTurn, cosTurn := math.Sincos(d.turn * math.Pi / 180)
		for i := range 12 {
			sin, cos := math.Sincos(float64(i) * math.Pi / 6)
			q := p.Step(first.Times(w.Radius * cos).Add(second.Times(w.Radius * sin)))
			u, v := q.X*cosTurn+q.Y*sinTurn, q.Y*cosTurn-q.X*sinTurn
			if got := u*u/d.minor/d.minor + v*v/d.major/d.major; !near(got, 1, 1e-6) {
				t.Fatalf("point %v of the circle is at %v of the ellipse, want 1", q, got)
			}
		}
	})
}

func TestTyreLeansByCamber(t *testing.T) {
	p := Projection{View: Behind, Scale: 1}
	camber := 0.1
	w := Wheel{Axis: SpindleAxis(0, camber), Radius: 300, Width: 200}
	points := corners(t, p.AppendTyre(nil, w))
	// Two upper and two lower corners of the section: their middles are on the wheel's
	// mid-plane, which leans outboard, to the left for a left wheel, at the top.
	var top, bottom Point
	for _, q := range points[:4] {
		if q.Y < 0 {
			top = top.Add(q.Times(0.5))
		} else {
			bottom = bottom.Add(q.Times(0.5))
		}
	}
	d := top.Sub(bottom)
	if got := math.Atan2(-d.X, -d.Y); !near(got, camber, 1e-4) { // 0.01 of 600
		t.Errorf("the tyre leans outboard by %v rad, want %v", got, camber)
	}
}

// SpindleAxis returns the direction of a left wheel's spindle, outboard, from toe
// and camber in radians, toe-in and top outboard positive. A right wheel's is its
// mirror image, with y negative.
func SpindleAxis(toe, camber float64) Vec {
	sinToe, cosToe := math.Sincos(toe)
	sinCamber, cosCamber := math.Sincos(camber)
	return Vec{sinToe * cosCamber, cosToe * cosCamber, -sinCamber}
}
