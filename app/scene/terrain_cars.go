package scene

import (
	"toewright/app/model"
	"toewright/internal/plot"
)

// The sizes of what stands on a map, in CSS pixels.
const (
	carMark   = 5.0 // of a car
	leastMark = 6.0 // of the place of the least toe change
)

// Cars draws the least place of the map, the cross-hair of the selected car and each car
// where it stands: filled where the map's figure is its own, open where the car differs
// in more than the two parameters.
func (t *Terrain) Cars() plot.Picture {
	f := t.Frame()
	p := plot.Picture{Width: TerrainWidth, Height: TerrainHeight}
	t.least(&p, f)
	t.crosshair(&p, f)
	selected := t.Desk.Selected()
	for _, car := range t.Desk.Session.Cars().List {
		if car != selected && !car.Hidden && car.Err == nil {
			t.car(&p, f, car, carMark)
		}
	}
	t.car(&p, f, selected, 1.5*carMark)
	return p
}

// at returns the place of a car on the picture.
func (t *Terrain) at(f plot.Frame, car *model.Car) plot.Point {
	value := func(a *model.MapAxis) float64 { return t.shown(a, t.Desk.ValueOf(car.Index, a.Key)) }
	return f.At(value(&t.Map.X), value(&t.Map.Y))
}

// car marks a car, if it is on the map.
func (t *Terrain) car(p *plot.Picture, f plot.Frame, car *model.Car, size float64) {
	at := t.at(f, car)
	if !f.Area.Contains(at) {
		return
	}
	style := plot.SeriesStyle(car.Index)
	class := "mark "
	if !t.Map.Holds(car) {
		class = "apart "
	}
	p.Draw(class+style.Class, plot.Path{}.Marker(style.Marker, at, size))
}

// least marks the place of the least toe change by a ring with a cross in it.
func (t *Terrain) least(p *plot.Picture, f plot.Frame) {
	x, y, _, ok := t.Map.Least()
	if !ok {
		return
	}
	at := f.At(t.shown(&t.Map.X, x), t.shown(&t.Map.Y, y))
	p.Draw("least", plot.Path{}.Circle(at, leastMark).
		Polyline(at.Add(plot.Point{X: -1.6 * leastMark}), at.Add(plot.Point{X: 1.6 * leastMark})).
		Polyline(at.Add(plot.Point{Y: -1.6 * leastMark}), at.Add(plot.Point{Y: 1.6 * leastMark})))
}

// crosshair leads from the axes to the selected car.
func (t *Terrain) crosshair(p *plot.Picture, f plot.Frame) {
	at := t.at(f, t.Desk.Selected())
	if !f.Area.Contains(at) {
		return
	}
	p.Draw("crosshair", plot.Path{}.
		Polyline(plot.Point{X: at.X, Y: f.Area.Min.Y}, plot.Point{X: at.X, Y: f.Area.Max.Y}).
		Polyline(plot.Point{X: f.Area.Min.X, Y: at.Y}, plot.Point{X: f.Area.Max.X, Y: at.Y}))
}
