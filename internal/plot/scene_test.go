package plot

import (
	"math"

	"toewright/internal/number"
)

// The scenes are whole pictures of an invented car, made of the pieces of the
// package as the page and the report make theirs.

// toeCurves returns n invented toe curves over 81 travels.
func toeCurves(n int) []Curve {
	curves := make([]Curve, n)
	for i := range curves {
		c := Curve{X: make([]float64, 81), Y: make([]float64, 81)}
		for j := range c.X {
			travel := float64(j) - 40
			slope, bend := 0.02-0.005*float64(i), 1e-4*float64(i-3)
			c.X[j], c.Y[j] = slope*travel+bend*travel*travel, travel
		}
		curves[i] = c
	}
	return curves
}

func chartScene() Picture {
	names := []string{"base", "ball 6 mm lower", "ball 12 mm lower", "rack 5 mm up", "arm 8 mm longer"}
	chart := Chart{
		Area: Box(10, 10, 380, 480), Along: Vertical, Size: 12,
		X:      ChartAxis{Domain: Domain{-1.1, 1.1}, Label: "toe change, deg, toe-in positive"},
		Y:      ChartAxis{Domain: Domain{-42, 42}, Label: "travel, mm, bump positive"},
		Target: Curve{X: []float64{-0.1, 0.1}, Y: []float64{-40, 40}},
	}
	for i, c := range toeCurves(len(names)) {
		s := ChartSeries{Name: names[i], Style: i, Curve: c, Markers: 10}
		if i == 2 {
			for _, toe := range c.X {
				s.Low, s.High = append(s.Low, toe-0.08), append(s.High, toe+0.08)
			}
		}
		chart.Series = append(chart.Series, s)
	}
	readings := Curve{X: []float64{0.62, 0.28, 0, -0.33, -0.7}, Y: []float64{30, 15, 0, -15, -30}}
	chart.Series = append(chart.Series, ChartSeries{Name: "readings", Style: 7, Curve: readings, Markers: 1, Readings: true})
	picture := Picture{Width: 400, Height: 500}
	picture.Chart(chart)
	return picture
}

// side returns a point of the left side, or mirrored of the right.
func side(right bool, v Vec) Vec {
	if right {
		v.Y = -v.Y
	}
	return v
}

// carPoints are the invented points of a left side, in the order: lower pivot, lower
// ball, upper pivot, upper ball, inner and outer ball of the tie rod, wheel centre.
var carPoints = []Vec{{0, 340, 190}, {0, 690, 165}, {0, 420, 450}, {-10, 660, 430}, {130, 360, 215}, {125, 690, 190}, {0, 760, 300}}

func linkageScene() Picture {
	picture := Picture{Width: 640, Height: 560}
	var all []Vec
	for _, right := range []bool{false, true} {
		for _, dy := range []float64{-110, 110} {
			for _, dz := range []float64{-310, 310} {
				all = append(all, side(right, carPoints[6].Add(Vec{Y: dy, Z: dz})))
			}
		}
	}
	front := Fit(Behind, Box(40, 20, 560, 240), all...)
	orbit := Fit(Orbit(0.5, 0.35), Box(40, 290, 400, 180), all...)
	for _, p := range []Projection{front, orbit} {
		for _, right := range []bool{false, true} {
			picture.side(p, right)
		}
	}
	picture.dimensions(front)
	picture.TitleBlock(Box(430, 480, 200, 70), [][]Field{
		{{Label: "drawing", Value: "Steering arm, left", Part: 2}, {Label: "rev.", Value: "B"}},
		{{Label: "scale", Value: "none"}, {Label: "unit", Value: "mm"}, {Label: "car", Value: "invented, of no make at all"}},
	}, 12)
	return picture
}

func (p *Picture) side(v Projection, right bool) {
	at := func(i int) Point { return v.At(side(right, carPoints[i])) }
	wheel := Wheel{Centre: side(right, carPoints[6]), Axis: side(right, SpindleAxis(0.03, -0.02)), Radius: 300, Width: 195}
	rim := wheel
	rim.Radius = 190
	p.Draw("part", v.AppendDisc(v.AppendTyre(nil, wheel), rim))
	p.Draw("part", AppendBar(AppendBar(AppendBar(nil, at(0), at(1), 5, 4), at(2), at(3), 5, 4), at(4), at(5), 3, 3))
	p.Draw("part", AppendStrut(nil, at(1).Add(Point{0, -20}), at(2).Add(Point{0, -60}), 10))
}

func (p *Picture) dimensions(v Projection) {
	const size = 9
	var d Dimension
	at := func(i int) Point { return v.At(carPoints[i]) }
	d.Horizontal(at(4), at(5), at(5).Y+45, TextWidth("330.0", size), size)
	p.Dimension(&d, size, "330.0")
	d.Vertical(at(3), at(1), at(1).X-60, TextWidth("265.0", size), size)
	p.Dimension(&d, size, "265.0")
	d.Vertical(at(1), at(5), at(5).X-30, TextWidth("25.0", size), size)
	p.Dimension(&d, size, "25.0")
	d.Angle(at(1), at(3), at(1).Add(Point{0, -10}), 70, TextWidth("6.5°", size), size)
	p.Dimension(&d, size, "6.5°")
}

// valley is a field as toe error has it over two heights: a narrow valley across,
// and a corner out of reach.
func valley(n int) Grid {
	g := field(n, n, func(x, y float64) float64 {
		if x+y > 1.8 {
			return math.NaN()
		}
		u, v := x-0.9*y-0.1, x+y-0.8
		return 3*math.Abs(u) + 0.4*v*v
	})
	return g
}

func mapScene() Picture {
	picture := Picture{Width: 320, Height: 320}
	g := valley(33)
	f := NewFrame(Box(10, 10, 300, 300), Domain{0, 1}, Domain{0, 1})
	var c Contours
	for _, level := range g.Levels(8) {
		picture.Draw("thin", f.AppendContour(nil, &c, g, level))
		for c.Reset(g, level); c.Next(); {
			if label, ok := f.ContourLabel(c.Line(), 120); ok {
				picture.Write("figure", label, 9, number.Decimal(level, 1))
			}
		}
	}
	picture.Draw("frame", Path{}.Rect(f.Area))
	return picture
}

func spreadScene() Picture {
	picture := Picture{Width: 400, Height: 400}
	edges, counts := []float64{-0.6, -0.4, -0.2, 0, 0.2, 0.4, 0.6}, []int{20, 40, 60, 50, 30, 10}
	f := NewFrame(Box(10, 150, 180, 100), Domain{edges[0], edges[len(edges)-1]}, Domain{0, 60})
	picture.Draw("bar", f.AppendBins(nil, edges, counts))
	picture.Draw("frame", Path{}.Rect(f.Area))
	xs, ys := []float64{10, 25, 20, 60, 70, 90}, []float64{0.9, 0.5, 0.7, 0.2, 0.6, 0.1}
	shelf := NewFrame(Box(210, 150, 180, 100), Domain{0, 100}, Domain{0, 1})
	picture.Draw("thin", shelf.AppendStaircase(nil, xs, ys, Undominated(xs, ys)))
	picture.Draw("mark s0", shelf.AppendMarkers(nil, Disc, 4, xs, ys, 1))
	picture.Draw("frame", Path{}.Rect(shelf.Area))
	for i, c := range toeCurves(MaxSeries) {
		x := 10 + 42*float64(i)
		line, zero := AppendSpark(nil, nil, Box(x, 270, 36, 80), Vertical, c, Domain{-1, 1}, Domain{-40, 40})
		picture.Draw("zero", zero)
		picture.Draw("line "+SeriesStyle(i).Class, line)
		picture.Draw("mark "+SeriesStyle(i).Class, Path{}.Marker(SeriesStyle(i).Marker, Point{x + 18, 370}, 5))
	}
	return picture
}
