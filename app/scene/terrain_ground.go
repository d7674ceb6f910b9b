package scene

import (
	"math"
	"strconv"

	"toewright/app/model"
	"toewright/internal/plot"
)

// Ground draws the contour lines of a field with their levels, the limits and the axes. It
// calls between between the parts of the work.
func (t *Terrain) Ground(g plot.Grid, levels []float64, between func()) plot.Picture {
	f := t.Frame()
	p := plot.Picture{Width: TerrainWidth, Height: TerrainHeight}
	lines, labels := contours(f, g, levels, between)
	p.Draw("contour", lines)
	names := t.limits(&p, f)
	for _, l := range labels {
		if standsClear(names, l.at.At) {
			p.Write("figure", l.at, labelText, l.text)
		}
	}
	t.axes(&p, f)
	return p
}

// labelText is the text size of what is written on lines, in CSS pixels.
const labelText = terrainText

// lineLabel is what is written along a line, from its middle.
type lineLabel struct {
	at   plot.Anchor
	text string
}

// distance returns how far a place is from the text of a label, in CSS pixels.
func (l lineLabel) distance(at plot.Point) float64 {
	// A letter is half as wide as it is high, near enough.
	half := float64(len(l.text)) * labelText / 4
	sin, cos := math.Sincos(l.at.Turn * math.Pi / 180)
	d := at.Sub(l.at.At)
	along, across := d.X*cos+d.Y*sin, d.Y*cos-d.X*sin
	return math.Hypot(max(math.Abs(along)-half, 0), across)
}

// leastLabelled is the shortest contour line that bears its level, in texts' heights.
const leastLabelled = 6

// contours returns the contour lines of all levels, and the labels of those that are
// long enough and stand clear of the others.
func contours(f plot.Frame, g plot.Grid, levels []float64, between func()) (lines plot.Path, labels []lineLabel) {
	var c plot.Contours
	for _, level := range levels {
		for c.Reset(g, level); c.Next(); {
			lines = f.AppendContourLine(lines, &c)
			at, ok := f.ContourLabel(c.Line(), leastLabelled*terrainText)
			if ok && standsClear(labels, at.At) {
				labels = append(labels, lineLabel{at, strconv.FormatFloat(level, 'f', -1, 64)})
			}
		}
		between()
	}
	return lines, labels
}

// standsClear reports whether a label at a place stands clear of the others.
func standsClear(labels []lineLabel, at plot.Point) bool {
	for _, other := range labels {
		if other.distance(at) < 2.5*terrainText {
			return false
		}
	}
	return true
}

// axes draws frame, ticks and labels.
func (t *Terrain) axes(p *plot.Picture, f plot.Frame) {
	p.Draw("frame", plot.Path{}.Rect(f.Area))
	var marks plot.Path
	for _, tick := range plot.Ticks(nil, f.X.Domain, 6) {
		x := f.X.At(tick.Value)
		marks = marks.Polyline(plot.Point{X: x, Y: f.Area.Max.Y}, plot.Point{X: x, Y: f.Area.Max.Y + 3})
		p.Write("tick", plot.Anchor{At: plot.Point{X: x, Y: f.Area.Max.Y + 4 + terrainText}, Align: plot.Middle}, terrainText, tick.Label)
	}
	for _, tick := range plot.Ticks(nil, f.Y.Domain, 6) {
		y := f.Y.At(tick.Value)
		marks = marks.Polyline(plot.Point{X: f.Area.Min.X, Y: y}, plot.Point{X: f.Area.Min.X - 3, Y: y})
		p.Write("tick", plot.Anchor{At: plot.Point{X: f.Area.Min.X - 5, Y: y + terrainText*0.35}, Align: plot.End}, terrainText, tick.Label)
	}
	p.Draw("thin", marks)
	p.Write("label", plot.Anchor{At: plot.Point{X: f.Area.Centre().X, Y: TerrainHeight - 5}, Align: plot.Middle}, terrainText, t.label(&t.Map.X))
	p.Write("label", plot.Anchor{At: plot.Point{X: terrainText, Y: f.Area.Centre().Y}, Align: plot.Middle, Turn: -90}, terrainText, t.label(&t.Map.Y))
}

// label names an axis with its unit.
func (t *Terrain) label(a *model.MapAxis) string {
	name := a.Parameter.Label
	if suffix := a.Sides.Suffix(); suffix != "" {
		name += ", " + suffix[1:]
	}
	return name + ", " + model.NumbersOf(t.Desk.Session.Document()).ValueUnit(a.Parameter)
}
