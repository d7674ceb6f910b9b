package model

import (
	"maps"
	"math"
	"slices"

	"toewright/internal/engine"
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
	if g.study.Search == nil {
		return nil
	}
	return g.study.Search.Limits
}

// Least returns the place of the least figure, and the figure; ok is false where there
// is none.
func (t *Terrain) Least() (x, y float64, figure solver.Angle, ok bool) {
	least := math.Inf(1)
	for i, v := range t.Cells {
		if v < least {
			x, y, least = t.X.At(i%t.Size, t.Size), t.Y.At(i/t.Size, t.Size), v
		}
	}
	return x, y, solver.Angle(least), !math.IsInf(least, 1)
}
