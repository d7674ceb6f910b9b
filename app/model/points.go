package model

import (
	"maps"
	"strings"

	"toewright/internal/study"
)

// PointRow is a place of the car as it stands in a table: a hardpoint, or what the study
// states besides by its place.
type PointRow struct {
	study.PlacedPoint
	Label     string
	Path      string // Path is that by which its sources are known.
	Direction bool   // Direction says that it is three numbers of any length, and no place.

	at func(*study.Document) *study.Vec3 // nil of a hardpoint
}

// PointRows lists the places of a side as the car's type has them, behind them those of no
// side, and what else is stated of the side. The right side has none of its own where it is
// the mirror image of the left.
func PointRows(d *study.Document, side study.Side) (rows []PointRow) {
	labels := d.PointLabels()
	for _, p := range d.Points() {
		if p.Side == side || p.Side == "" {
			rows = append(rows, PointRow{PlacedPoint: p, Label: labels[p.Name], Path: d.SourcePath(p)})
		}
	}
	if side == study.Right && d.Suspension.Right == nil {
		return rows
	}
	return append(rows, mountsOf(d, side)...)
}

// put sets the place in a document.
func (p *PointRow) put(d *study.Document, place study.Vec3) {
	if p.at != nil {
		*p.at(d) = place
		return
	}
	own := p.PlacedPoint
	own.Place = place
	d.SetPoint(own)
}

// CellID is the id of a coordinate's cell on the page.
func (p *PointRow) CellID(axis int) string {
	return "point-" + strings.ReplaceAll(p.Name, ".", "-") + string(p.Side) + "-" + axisName(axis)
}

// SetPlace moves one coordinate of a place, in file units. It is the car's own from then on,
// be it the number that stood there before.
func (s *Session) SetPlace(p PointRow, axis int, value float64) error {
	p.Place[axis] = value
	return s.edit("move "+strings.ToLower(p.Label), "", func(d *study.Document) { p.put(d, p.Place) }, func(d *study.Document) {
		d.Attribute(s.doc, study.FromTyping)
		d.SetSource(p.Path+"."+axisName(axis), study.FromTyping)
	})
}

// TakePoints puts the points of a table in their places, in one step. A point of a right
// side that mirrors the left gives that side points of its own.
func (s *Session) TakePoints(points []study.PlacedPoint) error {
	return s.edit("points from a table", "", setPoints(points), func(d *study.Document) {
		d.Attribute(s.doc, study.FromFile)
		for _, p := range points {
			d.SetSource(d.SourcePath(p), study.FromFile)
		}
	})
}

// setPoints returns an edit that moves several points.
func setPoints(points []study.PlacedPoint) func(*study.Document) {
	return func(d *study.Document) {
		for _, p := range points {
			d.SetPoint(p)
		}
	}
}

// Shift moves all points by the same way, in file units: onto another datum. Where they
// come from stays as it was.
func (s *Session) Shift(by study.Vec3) error {
	points := s.doc.Points()
	for i := range points {
		for k := range by {
			points[i].Place[k] += by[k]
		}
	}
	move := func(d *study.Document) {
		setPoints(points)(d)
		d.ShiftMounts(by)
	}
	return s.edit("shift all points", "", move, s.from(""))
}

// MirrorRight makes the right side the mirror image of the left.
func (s *Session) MirrorRight() error {
	return s.mirror("mirror the left side", study.Left, func(d *study.Document) {
		if d.Suspension.Common != nil {
			right := d.Suspension.Left.Mirrored()
			d.Suspension.Right = &right
			return
		}
		d.Suspension.Right = nil
	})
}

// MirrorLeft makes the left side the mirror image of the right.
func (s *Session) MirrorLeft() error {
	return s.mirror("mirror the right side", study.Right, func(d *study.Document) {
		if d.Suspension.Right != nil {
			d.Suspension.Left = d.Suspension.Right.Mirrored()
		}
	})
}

// mirror makes an edit by which both sides have the numbers of one, and their sources.
func (s *Session) mirror(label string, of study.Side, change func(*study.Document)) error {
	return s.edit(label, "", change, func(d *study.Document) {
		d.Attribute(s.doc, "")
		d.MirrorSources(of)
	})
}

// OwnRight gives the right side points of its own, the mirrored ones to begin with.
func (s *Session) OwnRight() error {
	return s.Edit("points of the right side", "", func(d *study.Document) {
		right := d.Suspension.Corner(study.Right)
		right.Points = maps.Clone(right.Points)
		d.Suspension.Right = &right
	})
}

// SetStatic sets the toe or camber in degrees that a side's points stand for.
func (s *Session) SetStatic(side study.Side, label string, put func(*study.Corner)) error {
	return s.Edit(label, "", func(d *study.Document) {
		if side == study.Right {
			if d.Suspension.Right != nil {
				put(d.Suspension.Right)
			}
			return
		}
		put(&d.Suspension.Left)
	})
}
