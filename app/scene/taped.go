package scene

import (
	"maps"
	"math"
	"slices"

	"toewright/internal/engine"
	"toewright/internal/plot"
	"toewright/internal/study"
	"toewright/solver"
)

// The size of the picture of a measure, its texts and its rim, in pixels.
const tapedWidth, tapedHeight, tapedText, tapedRim = 480.0, 300.0, 15.0, 30.0

// tapedViews are how a corner can be seen, by the axes that run across and up, and the sense
// of the one across.
var tapedViews = []struct {
	name       string
	across, up int
	sense      float64
}{
	{"from behind", 1, 2, -1}, {"from above, forward up", 1, 0, -1}, {"from the left, forward to the left", 0, 2, -1},
}

// Taped draws the corner of a measure with its marks, and the measure on it, in the view that
// shows it longest.
func Taped(d *study.Document, of *engine.NextTape) plot.Picture {
	c := newTapedCorner(d, of)
	c.fit()
	p := plot.Picture{Width: tapedWidth, Height: tapedHeight}
	c.draw(&p)
	return p
}

// tapedCorner is a side of the car with its marks, in file units.
type tapedCorner struct {
	doc      *study.Document
	points   map[string]study.Vec3 // of the side, by their names in the kind
	marks    map[string]study.Vec3
	from, to study.Vec3
	mark     string // that the measure begins at; "" for none
	view     int
	scale    float64
	middle   plot.Point
}

func newTapedCorner(d *study.Document, of *engine.NextTape) *tapedCorner {
	c := &tapedCorner{doc: d, points: map[string]study.Vec3{}, marks: d.Measured.Marks}
	end, _ := d.TapedPoint(of.Of)
	for _, p := range d.TapePoints() {
		if p.Side == end.Side || p.Side == "" || end.Side == "" {
			c.points[p.Name] = p.Place
		}
	}
	c.to, c.from = end.Place, end.Place
	switch p, ok := d.TapedPoint(of.From); {
	case of.Kind == "height":
		c.from[2] = 0
	case of.Kind == "side":
		c.from[1] = 0
	case of.Kind == "station":
		c.from[0] = 0
	case ok:
		c.from = p.Place
	default:
		c.mark, c.from = of.From, c.marks[of.From]
	}
	longest := 0.0
	for i, v := range tapedViews {
		if l := math.Hypot(c.to[v.across]-c.from[v.across], c.to[v.up]-c.from[v.up]); l > longest*1.05 {
			c.view, longest = i, l
		}
	}
	return c
}

// flat returns where a place lies in the view, in file units.
func (c *tapedCorner) flat(p study.Vec3) plot.Point {
	v := &tapedViews[c.view]
	return plot.Point{X: v.sense * p[v.across], Y: -p[v.up]}
}

// fit sets the scale at which all of the corner stands on the paper.
func (c *tapedCorner) fit() {
	low, high := c.flat(c.from), c.flat(c.from)
	for p := range everyPlace(c.points, c.marks, map[string]study.Vec3{"": c.to}) {
		q := c.flat(p)
		low, high = plot.Point{X: min(low.X, q.X), Y: min(low.Y, q.Y)}, plot.Point{X: max(high.X, q.X), Y: max(high.Y, q.Y)}
	}
	c.middle = low.Add(high).Times(0.5)
	c.scale = min((tapedWidth-2*tapedRim)/max(high.X-low.X, 1), (tapedHeight-3*tapedRim)/max(high.Y-low.Y, 1))
}

// everyPlace goes over the places of maps.
func everyPlace(list ...map[string]study.Vec3) func(func(study.Vec3) bool) {
	return func(yield func(study.Vec3) bool) {
		for _, m := range list {
			for _, p := range m {
				if !yield(p) {
					return
				}
			}
		}
	}
}

// at returns where a place lies on the paper.
func (c *tapedCorner) at(p study.Vec3) plot.Point {
	return c.flat(p).Sub(c.middle).Times(c.scale).Add(plot.Point{X: tapedWidth / 2, Y: tapedHeight/2 + tapedRim/2})
}

// draw draws parts, marks and the measure.
func (c *tapedCorner) draw(p *plot.Picture) {
	var parts, dots, crosses plot.Path
	kind, err := solver.KindByName(c.doc.Suspension.Type)
	if err != nil {
		return
	}
	line := func(a, b int) {
		if a != b {
			parts = parts.Polyline(c.at(c.points[kind.SidePoints[a].Name]), c.at(c.points[kind.SidePoints[b].Name]))
		}
	}
	o := kind.Outline()
	line(o.Axis[0], o.Axis[1])
	line(o.Strut[0], o.Strut[1])
	for _, r := range o.Rods {
		line(r.Inner, r.Outer)
	}
	roles := map[solver.Role]int{}
	for i, h := range kind.SidePoints {
		roles[h.Role] = i
	}
	if inner, ok := roles[solver.TieRodInnerRole]; ok {
		line(inner, roles[solver.TieRodOuterRole])
	}
	for _, q := range c.points {
		dots = dots.Circle(c.at(q), 3)
	}
	p.Draw("part", parts)
	p.Draw("head", dots)
	var named []plot.Point // a name that would lie on another is left out, that of the measure's mark never
	for _, name := range append([]string{c.mark}, slices.Sorted(maps.Keys(c.marks))...) {
		mark, ok := c.marks[name]
		if !ok {
			continue
		}
		q := c.at(mark)
		crosses = crosses.Polyline(q.Add(plot.Point{X: -5}), q.Add(plot.Point{X: 5})).Polyline(q.Add(plot.Point{Y: -5}), q.Add(plot.Point{Y: 5}))
		if !slices.ContainsFunc(named, func(n plot.Point) bool { return n.Sub(q).Length() < tapedText }) {
			p.Write("figure", plot.Anchor{At: q.Add(plot.Point{X: 8, Y: -6})}, tapedText, name)
			named = append(named, q)
		}
	}
	p.Draw("thin", crosses)
	a, b := c.at(c.from), c.at(c.to)
	p.Draw("measure", plot.Path(nil).Polyline(a, b))
	p.Draw("measured", plot.Path(nil).Circle(a, 6).Circle(b, 6))
	p.Write("figure", plot.Anchor{At: plot.Point{X: 4, Y: tapedText}}, tapedText, tapedViews[c.view].name)
}
