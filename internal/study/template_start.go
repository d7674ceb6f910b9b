package study

import "maps"

// Start returns a new study of a car of the template's kind: hardpoints, steering gear,
// wheel and static alignment over the usual window, and nothing else. Every number says
// that it is the template's until another takes its place.
func (t Template) Start() *Document {
	d := t.Document().Geometry()
	d.Name = t.Title
	d.Sources = Sources{AnyNumber: FromTemplate}
	return d
}

// Geometry returns a study of the document's car alone: hardpoints, steering gear, wheel
// and static alignment with their sources, in its units. Candidates, readings, parts and
// what else was asked or stated stay behind.
func (d *Document) Geometry() *Document {
	g := &Document{
		Format: Format, Name: d.Name, Units: d.Units, Display: d.Display,
		Vehicle:    Vehicle{TyreRadius: d.Vehicle.TyreRadius, Axle: d.Vehicle.Axle},
		Suspension: d.Suspension,
		Steering:   d.Steering.geometry(),
		Sources:    maps.Clone(d.Sources),
	}
	g.Suspension.Left = d.Suspension.Left.geometry()
	if d.Suspension.Right != nil {
		right := d.Suspension.Right.geometry()
		g.Suspension.Right = &right
	}
	g = g.Clone()
	if g.Display != nil {
		g.Display.Yardstick = ""
	}
	g.resource(g.Sources.At)
	return g
}

// geometry returns the corner's points and static alignment.
func (c Corner) geometry() Corner { return Corner{Points: c.Points, Toe: c.Toe, Camber: c.Camber} }

// geometry returns the gear's places and axes.
func (s *Steering) geometry() *Steering {
	if s == nil {
		return nil
	}
	g := *s
	g.PerTurn, g.Lock = 0, 0
	return &g
}
