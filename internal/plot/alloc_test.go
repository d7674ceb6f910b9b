package plot

import "testing"

// With buffers that have grown once, a redraw allocates nothing.
func TestAppendReusesItsBuffers(t *testing.T) {
	curves, f := toeCurves(2), toeFrame()
	c, high := curves[0], curves[1].X
	view := Projection{View: Orbit(0.3, 0.2), Scale: 0.3}
	wheel := Wheel{Axis: Vec{Y: 1}, Radius: 300, Width: 200}
	grid, walker, dimension := valley(16), Contours{}, Dimension{}
	draws := map[string]func(Path) Path{
		"line":     func(p Path) Path { return f.AppendLine(p, c.X, c.Y) },
		"monotone": func(p Path) Path { return f.AppendMonotone(p, Vertical, c.X, c.Y) },
		"smooth":   func(p Path) Path { return f.AppendSmooth(p, c.X, c.Y) },
		"band":     func(p Path) Path { return f.AppendBand(p, Vertical, c.Y, c.X, high) },
		"markers":  func(p Path) Path { return f.AppendMarkers(p, Star, 3, c.X, c.Y, 10) },
		"contour":  func(p Path) Path { return f.AppendContour(p, &walker, grid, 0.5) },
		"tyre":     func(p Path) Path { return view.AppendTyre(p, wheel) },
		"strut":    func(p Path) Path { return AppendStrut(p, Point{0, 0}, Point{20, 90}, 9) },
		"dimension": func(p Path) Path {
			dimension.Vertical(Point{0, 0}, Point{20, 90}, 40, 20, 10)
			return append(p, dimension.Lines...)
		},
	}
	for name, draw := range draws {
		t.Run(name, func(t *testing.T) {
			path := draw(nil)
			if len(path) == 0 {
				t.Fatal("nothing was drawn")
			}
			if n := testing.AllocsPerRun(20, func() { path = draw(path[:0]) }); n != 0 {
				t.Errorf("%v allocations, want none", n)
			}
		})
	}
}
