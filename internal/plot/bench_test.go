package plot

import "testing"

// A redraw of a drag: eight candidates, 81 travels each.
func BenchmarkCurves(b *testing.B) {
	curves, f := toeCurves(8), toeFrame()
	kinds := []struct {
		name   string
		append func(Path, Curve) Path
	}{
		{"line", func(p Path, c Curve) Path { return f.AppendLine(p, c.X, c.Y) }},
		{"monotone", func(p Path, c Curve) Path { return f.AppendMonotone(p, Vertical, c.X, c.Y) }},
		{"smooth", func(p Path, c Curve) Path { return f.AppendSmooth(p, c.X, c.Y) }},
		{"band", func(p Path, c Curve) Path { return f.AppendBand(p, Vertical, c.Y, c.X, curves[0].X) }},
		{"markers", func(p Path, c Curve) Path { return f.AppendMarkers(p, Star, 3, c.X, c.Y, 10) }},
	}
	for _, kind := range kinds {
		b.Run(kind.name, func(b *testing.B) {
			paths := make([]Path, len(curves))
			b.ReportAllocs()
			for b.Loop() {
				for i, c := range curves {
					paths[i] = kind.append(paths[i][:0], c)
				}
			}
		})
	}
}

func BenchmarkHit(b *testing.B) {
	curves, f := toeCurves(8), toeFrame()
	b.ReportAllocs()
	for b.Loop() {
		f.Hit(curves, Point{140, 200}, 20)
	}
}

func BenchmarkContour(b *testing.B) {
	g, f := valley(64), NewFrame(Box(0, 0, 400, 400), Domain{0, 1}, Domain{0, 1})
	levels := g.Levels(10)
	var c Contours
	var path Path
	b.ReportAllocs()
	for b.Loop() {
		path = path[:0]
		for _, level := range levels {
			path = f.AppendContour(path, &c, g, level)
		}
	}
}

func BenchmarkPixels(b *testing.B) {
	g := valley(64)
	levels := g.Levels(10)
	ramp := Ramp(len(levels)+1, false)
	var classes []uint8
	var pixels []byte
	b.ReportAllocs()
	for b.Loop() {
		classes = Classify(classes[:0], g.Z, levels)
		pixels = AppendPixels(pixels[:0], classes, len(g.X), ramp)
	}
}
