package model

import (
	"maps"
	"math"
	"slices"

	"toewright/internal/engine"
	"toewright/internal/plot"
	"toewright/internal/study"
	"toewright/solver"
)

// Terrain is the toe change of a car over two of its parameters, as a map shows it.
type Terrain struct {
	Ground
	// Size is the number of places along either axis.
	Size int
	// Cells are the figure in radians, row after row from the low end of Y; NaN where
	// the car cannot be built or does not reach its window.
	Cells []float64
	// Room is how far each limit of the search is from being broken, over RoomSize by
	// RoomSize places, in the limit's unit.
	Room     [][]float64
	RoomSize int
}

// Ground is what a map lies on: the car but for the two parameters that the map has
// along its axes, which are the same wherever the car stands on it.
type Ground struct {
	X, Y    MapAxis
	Car     string // its name in the study
	Figure  string // "rms" or "peak"
	study   *study.Document
	design  *solver.Design
	changes study.Changes
	hold    []string
}

// GroundOf returns the ground of a map about the selected car.
func (d *Desk) GroundOf(x, y string) (Ground, error) {
	doc, cars, car := d.Session.Document(), d.Session.Cars(), d.Selected()
	g := Ground{Car: car.Name, Figure: "rms", study: doc, design: cars.Design, changes: maps.Clone(car.Changes), hold: car.Hold}
	if doc.Search != nil && doc.Search.Minimise != "" {
		g.Figure = doc.Search.Minimise
	}
	var err error
	if g.X, err = d.MapAxisOf(x); err != nil {
		return g, err
	}
	if g.Y, err = d.MapAxisOf(y); err != nil {
		return g, err
	}
	delete(g.changes, x)
	delete(g.changes, y)
	return g, nil
}

// Same reports whether a map of one ground is one of the other too. Any edit but one of
// candidates makes another ground.
func (g *Ground) Same(o *Ground) bool {
	same := func(a, b MapAxis) bool { return a.Key == b.Key && a.Low == b.Low && a.High == b.High }
	return g.design == o.design && same(g.X, o.X) && same(g.Y, o.Y) && g.holds(o.changes, o.hold)
}

// holds reports whether a car with some changes lies on the ground.
func (g *Ground) holds(changes study.Changes, hold []string) bool {
	rest := maps.Clone(changes)
	delete(rest, g.X.Key)
	delete(rest, g.Y.Key)
	return maps.Equal(g.changes, rest) && slices.Equal(g.hold, hold) && (g.hold == nil) == (hold == nil)
}

// Holds reports whether a car lies on the ground: whether the map's figure at its place
// is its own.
func (g *Ground) Holds(car *Car) bool { return g.holds(car.Changes, car.Hold) }

// Study returns the study for a worker, without what a map does not need, which would
// only have to be carried to it.
func (g *Ground) Study() *study.Document {
	d := *g.study
	d.Readings, d.Catalogue, d.Tolerances, d.Yield, d.Display, d.Candidates = nil, nil, nil, nil, nil, nil
	if k := g.study.Candidate(g.Car); k != nil {
		d.Candidates = []study.Candidate{*k}
	}
	return &d
}

// Options returns what a worker is asked for.
func (g *Ground) Options(size int) engine.MapOptions {
	return engine.MapOptions{
		X: g.X.Key, Y: g.Y.Key, XMin: &g.X.Low, XMax: &g.X.High, YMin: &g.Y.Low, YMax: &g.Y.High,
		Candidate: g.Car, Figure: g.Figure, Columns: &size, Rows: &size,
	}
}

// Limits returns the limits that the ground's study states.
func (g *Ground) Limits() []study.Limit {
	if g.study == nil || g.study.Search == nil {
		return nil
	}
	return g.study.Search.Limits
}

// Awaited reports whether the limits are not looked at yet: which car is the least of those
// that hold them is not known before.
func (t *Terrain) Awaited() bool { return len(t.Limits()) > 0 && t.Room == nil }

// Least returns the place of the least figure of the cars that hold all limits, and the
// figure; ok is false where there is none, or the limits are awaited.
func (t *Terrain) Least() (x, y float64, figure solver.Angle, ok bool) {
	least, fields := math.Inf(1), t.RoomFields()
	for i, v := range t.Cells {
		if t.Awaited() || !(v < least) {
			continue
		}
		if cx, cy := t.X.At(i%t.Size, t.Size), t.Y.At(i/t.Size, t.Size); !Forbidden(fields, cx, cy) {
			x, y, least = cx, cy, v
		}
	}
	return x, y, solver.Angle(least), !math.IsInf(least, 1)
}

// Places returns the places of a map of a size, by the values of the axes.
func (t *Terrain) Places(size int) (g plot.Grid) {
	for i := range size {
		g.X, g.Y = append(g.X, t.X.At(i, size)), append(g.Y, t.Y.At(i, size))
	}
	return g
}

// roomSteps is into how many steps each step of the limits' field is divided to be shown.
const roomSteps = 4

// RoomFields returns the room to each limit over the map, finer than it was looked at, by
// the values of the axes.
func (t *Terrain) RoomFields() (fields []plot.Grid) {
	g := t.Places(t.RoomSize)
	for _, room := range t.Room {
		g.Z = room
		fields = append(fields, g.Refined(roomSteps))
	}
	return fields
}

// Forbidden reports whether a limit is broken at a place, as fields of the room to each
// have it.
func Forbidden(fields []plot.Grid, x, y float64) bool {
	return slices.ContainsFunc(fields, func(g plot.Grid) bool { return g.Nearest(x, y) < 0 })
}
