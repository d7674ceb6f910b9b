package scene

import (
	"math"

	"toewright/app/model"
	"toewright/internal/plot"
	"toewright/solver"
)

// Terrain draws a map: what lies on the ground once for each map, the cars upon it in
// every frame.
type Terrain struct {
	Desk *model.Desk
	Map  *model.Terrain
}

// The size of a map in CSS pixels before it is fitted to its column, the room for its
// labels, and the size of these.
const (
	TerrainWidth, TerrainHeight               = 360.0, 320.0
	terrainLeft, terrainBottom, terrainMargin = 46.0, 36.0, 10.0
	terrainText                               = 12.0
)

// The least number of steps along a map as it is drawn: of one that is done about a
// phone's pixels, of others what a frame of the screen has time for.
const fineSteps, liveSteps = 120, 60

// Frame puts values in the units shown on the picture.
func (t *Terrain) Frame() plot.Frame {
	area := plot.Box(0, 0, TerrainWidth, TerrainHeight).Inset(terrainLeft, terrainMargin, terrainMargin, terrainBottom)
	return plot.NewFrame(area, t.domain(&t.Map.X), t.domain(&t.Map.Y))
}

// domain is that of an axis in the unit shown.
func (t *Terrain) domain(a *model.MapAxis) plot.Domain {
	return plot.Domain{Low: t.shown(a, a.Low), High: t.shown(a, a.High)}
}

// shown returns a value of an axis in the unit shown.
func (t *Terrain) shown(a *model.MapAxis, value float64) float64 {
	if a.Parameter.Quantity == solver.AngleQuantity {
		return value
	}
	doc := t.Desk.Session.Document()
	return doc.Units.Convert(value, model.NumbersOf(doc).Units)
}

// Values returns the values of the axes, in file units or degrees, at a place on the
// picture; ok is false beside the map.
func (t *Terrain) Values(at plot.Point) (x, y float64, ok bool) {
	f := t.Frame()
	x, y = f.Invert(at)
	share := func(d plot.Domain, v float64) float64 { return (v - d.Low) / d.Span() }
	mix := func(a *model.MapAxis, k float64) float64 { return a.Low + k*(a.High-a.Low) }
	return mix(&t.Map.X, share(f.X.Domain, x)), mix(&t.Map.Y, share(f.Y.Domain, y)), f.Area.Contains(at)
}

// Field returns the toe change in the unit shown, finer than it was computed: its square
// is smooth where it has itself the crease of a valley, so that the valley is found
// between the places that were computed.
func (t *Terrain) Field() plot.Grid {
	n := model.NumbersOf(t.Desk.Session.Document())
	g := t.inUnits(t.Map.Places(t.Map.Size))
	g.Z = make([]float64, len(t.Map.Cells))
	for i, figure := range t.Map.Cells {
		z := n.ToeValue(solver.Angle(figure))
		g.Z[i] = z * z
	}
	steps := liveSteps
	if t.Map.Size >= model.FullMap {
		steps = fineSteps
	}
	g = g.Refined((steps + t.Map.Size - 1) / t.Map.Size)
	for i, square := range g.Z {
		g.Z[i] = math.Sqrt(max(square, 0))
	}
	return g
}

// inUnits returns a field of the map by places in the units shown.
func (t *Terrain) inUnits(g plot.Grid) plot.Grid {
	out := plot.Grid{Z: g.Z}
	for _, x := range g.X {
		out.X = append(out.X, t.shown(&t.Map.X, x))
	}
	for _, y := range g.Y {
		out.Y = append(out.Y, t.shown(&t.Map.Y, y))
	}
	return out
}

// mostLevels is how many contour lines are drawn: with more, those at the bottom of a
// valley run into one another.
const mostLevels = 7

// Levels returns the levels of the contour lines of a field: 1, 2 and 5 times a power of
// ten, so that the bottom of a valley has as many as its sides.
func Levels(g plot.Grid) []float64 {
	d, ok := plot.DomainOf(g.Z)
	if !ok {
		return nil
	}
	var list []float64
	for power := -4; power <= 2; power++ {
		for _, digit := range []float64{1, 2, 5} {
			if level := digit * math.Pow10(power); level > d.Low && level < d.High {
				list = append(list, level)
			}
		}
	}
	return list[max(len(list)-mostLevels, 0):]
}
