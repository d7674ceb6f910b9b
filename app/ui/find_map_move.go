package ui

import (
	"math"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/solver"
)

// mapMove brings the selected car to another place on a map.
type mapMove struct {
	bench bench
	on    *model.Terrain
}

// set gives the car the values of a place, in file units or degrees. Those of a run are
// undone together.
func (m mapMove) set(x, y float64, run string) error {
	if err := m.bench.Desk.Set(m.on.X.Key, within(&m.on.X, x), run); err != nil {
		return err
	}
	return m.bench.Desk.Set(m.on.Y.Key, within(&m.on.Y, y), run)
}

// within returns a value of an axis no finer than a hundredth of its unit, which is
// finer than a hand, and not beyond the ends of the map.
func within(a *model.MapAxis, v float64) float64 {
	return math.Max(a.Low, math.Min(a.High, math.Round(v*100)/100))
}

// to goes to a place in one step and tells of it.
func (m mapMove) to(ctx app.Context, x, y float64) {
	err := m.bench.change(ctx, func() error { return m.set(x, y, "map") })
	m.bench.session().EndRun()
	if m.bench.tell(ctx, err); err == nil {
		m.bench.Say(ctx, m.where(), m.bench.Undo)
	}
}

// where says where the selected car is.
func (m mapMove) where() string {
	d, n, car := m.bench.document(), m.bench.numbers(), m.bench.Desk.Selected()
	at := func(a *model.MapAxis) string {
		return n.Value(d, a.Parameter, m.bench.Desk.ValueOf(car.Index, a.Key))
	}
	text := carName(car) + ": " + at(&m.on.X) + ", " + at(&m.on.Y)
	if car.Err != nil {
		return text + ": " + plain(car.Err)
	}
	return text + ", RMS " + n.ToeText(car.Figures[solver.Left].RMS)
}

// key goes a step by an arrow key, ten with Shift, or with Home to the least toe change.
// It reports whether the key meant anything.
func (m mapMove) key(ctx app.Context, key string, shift bool) bool {
	if key == "Home" {
		if x, y, _, ok := m.on.Least(); ok {
			m.to(ctx, x, y)
		}
		return true
	}
	arrow, ok := arrows[key]
	if !ok {
		return false
	}
	if shift {
		arrow = arrow.Times(tenfold)
	}
	index := m.bench.Desk.Selected().Index
	x := m.bench.Desk.ValueOf(index, m.on.X.Key) + arrow.X*m.step(&m.on.X)
	y := m.bench.Desk.ValueOf(index, m.on.Y.Key) - arrow.Y*m.step(&m.on.Y)
	m.bench.edit(ctx, func() error { return m.set(x, y, "map keys") })
	m.bench.Desk.Said = m.where()
	return true
}

// angleStep is the step of an arrow key along an angle, degrees.
const angleStep = 0.1

// step is that of an arrow key: a spacer, or a tenth of a degree.
func (m mapMove) step(a *model.MapAxis) float64 {
	if a.Parameter.Quantity == solver.AngleQuantity {
		return angleStep
	}
	return m.bench.document().Units.FromMillimetres(m.bench.Desk.Spacer())
}
