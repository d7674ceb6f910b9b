package ui

import (
	"math"

	"toewright/app/model"
	"toewright/app/plot"
	"toewright/solver"
)

// lines returns the axes, the contour lines and the candidates as a picture.
func (m *chartPicture) lines() string {
	f, g := m.frame(), m.grid()
	p := plot.Picture{Width: mapWidth, Height: mapHeight}
	var contours plot.Contours
	var labels []plot.Point
	for _, level := range levels(g.Z) {
		p.Draw("contour", f.AppendContour(nil, &contours, g, level))
		for contours.Reset(g, level); contours.Next(); {
			if at, ok := f.ContourLabel(contours.Line(), mapText*6); ok && standsClear(labels, at.At) {
				labels = append(labels, at.At)
				p.Write("figure", at, mapText*0.85, m.Bench.numbers().ToeNumber(solver.Deg(level)))
			}
		}
	}
	m.axes(&p, f)
	m.marks(&p, f)
	return string(plot.Document{Title: "Map of the toe change", Picture: p}.AppendInline(nil))
}

// standsClear reports whether a label at a place stands clear of the others.
func standsClear(labels []plot.Point, at plot.Point) bool {
	for _, other := range labels {
		if at.Sub(other).Length() < 3*mapText {
			return false
		}
	}
	return true
}

// levels returns the levels of the contour lines: 1, 2 and 5 times a power of ten, so
// that the bottom of a valley has as many as its sides. The lowest is the first above
// the least value that a gauge can show.
func levels(values []float64) []float64 {
	d, ok := plot.DomainOf(values)
	if !ok {
		return nil
	}
	var list []float64
	for power := -3; power <= 2; power++ {
		for _, digit := range []float64{1, 2, 5} {
			if level := digit * math.Pow10(power); level > d.Low && level < d.High {
				list = append(list, level)
			}
		}
	}
	return list
}

// axes draws frame, ticks and labels.
func (m *chartPicture) axes(p *plot.Picture, f plot.Frame) {
	p.Draw("frame", plot.Path{}.Rect(f.Area))
	for _, t := range plot.Ticks(nil, f.X.Domain, 6) {
		p.Write("tick", plot.Anchor{At: plot.Point{X: f.X.At(t.Value), Y: f.Area.Max.Y + mapText*1.2}, Align: plot.Middle}, mapText, t.Label)
	}
	for _, t := range plot.Ticks(nil, f.Y.Domain, 6) {
		p.Write("tick", plot.Anchor{At: plot.Point{X: f.Area.Min.X - 4, Y: f.Y.At(t.Value) + mapText*0.35}, Align: plot.End}, mapText, t.Label)
	}
	p.Write("label", plot.Anchor{At: plot.Point{X: f.Area.Centre().X, Y: mapHeight - 6}, Align: plot.Middle}, mapText, m.label(m.Result.X.Parameter))
	p.Write("label", plot.Anchor{At: plot.Point{X: mapText, Y: f.Area.Centre().Y}, Align: plot.Middle, Turn: -90}, mapText, m.label(m.Result.Y.Parameter))
}

// label names an axis with its unit, that of the file.
func (m *chartPicture) label(key string) string {
	p, sides, err := solver.FindParameter(m.Bench.cars().Design, key)
	if err != nil {
		return key
	}
	unit := string(m.Result.Units)
	if p.Quantity == solver.AngleQuantity {
		unit = "deg"
	}
	return p.Label + sideWord(sides) + ", " + unit
}

// marks draws the cars where they stand on the map.
func (m *chartPicture) marks(p *plot.Picture, f plot.Frame) {
	for _, car := range m.Bench.cars().List {
		at := f.At(m.at(car, m.Result.X.Parameter), m.at(car, m.Result.Y.Parameter))
		if f.Area.Contains(at) {
			style := plot.SeriesStyle(car.Index)
			p.Draw("mark "+style.Class, plot.Path{}.Marker(style.Marker, at, 5))
		}
	}
}

func (m *chartPicture) at(car *model.Car, key string) float64 {
	return m.Bench.Desk.ValueOf(car.Index, key)
}
