package plot

// Marker is the shape of a point on a curve.
type Marker uint8

// The shapes, as many as there are series. They differ in outline, not only in the
// way they are turned, and cover about the same area.
const (
	Disc Marker = iota
	Square
	Up
	Diamond
	Down
	Plus
	Cross
	Star
	Bar
)

// outlines are the corners of the shapes that are polygons, for a size of 1.
var outlines = [...][]Point{
	Square:  {{-0.88, -0.88}, {0.88, -0.88}, {0.88, 0.88}, {-0.88, 0.88}},
	Up:      {{0, -1.3}, {1.25, 0.85}, {-1.25, 0.85}},
	Diamond: {{0, -1.4}, {1.1, 0}, {0, 1.4}, {-1.1, 0}},
	Down:    {{0, 1.3}, {-1.25, -0.85}, {1.25, -0.85}},
	Plus: {{-0.33, -1.4}, {0.33, -1.4}, {0.33, -0.33}, {1.4, -0.33}, {1.4, 0.33}, {0.33, 0.33},
		{0.33, 1.4}, {-0.33, 1.4}, {-0.33, 0.33}, {-1.4, 0.33}, {-1.4, -0.33}, {-0.33, -0.33}},
	Cross: {{-1.22, -0.76}, {-0.76, -1.22}, {0, -0.47}, {0.76, -1.22}, {1.22, -0.76}, {0.47, 0},
		{1.22, 0.76}, {0.76, 1.22}, {0, 0.47}, {-0.76, 1.22}, {-1.22, 0.76}, {-0.47, 0}},
	Star: {{0, -1.5}, {0.45, -0.6}, {1.43, -0.46}, {0.73, 0.24}, {0.88, 1.21}, {0, 0.75},
		{-0.88, 1.21}, {-0.73, 0.24}, {-1.43, -0.46}, {-0.45, -0.6}},
	Bar: {{-1.6, -0.5}, {1.6, -0.5}, {1.6, 0.5}, {-1.6, 0.5}},
}

// Marker appends a shape about c; size is the radius of the disc.
func (p Path) Marker(m Marker, c Point, size float64) Path {
	if m == Disc || int(m) >= len(outlines) {
		return p.Circle(c, size)
	}
	for i, corner := range outlines[m] {
		q := c.Add(corner.Times(size))
		if i == 0 {
			p = p.MoveTo(q)
		} else {
			p = p.LineTo(q)
		}
	}
	return p.Close()
}

// AppendMarkers appends a shape at every n-th of the values (xs[i], ys[i]) that is
// within the frame, starting at the first.
func (f Frame) AppendMarkers(dst Path, m Marker, size float64, xs, ys []float64, every int) Path {
	for i := 0; i < min(len(xs), len(ys)); i += max(every, 1) {
		if p := f.At(xs[i], ys[i]); f.Area.Contains(p) {
			dst = dst.Marker(m, p, size)
		}
	}
	return dst
}
