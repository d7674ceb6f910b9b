package model

import (
	"maps"

	"toewright/internal/study"
)

// PointRow is a hardpoint as it stands in a table of points.
type PointRow struct {
	study.PlacedPoint
	Label string
}

// PointRows lists the points of a side as the car's type has them, and behind them those of
// no side. The right side has none of its own where it is the mirror image of the left.
func PointRows(d *study.Document, side study.Side) (rows []PointRow) {
	labels := d.PointLabels()
	for _, p := range d.Points() {
		if p.Side == side || p.Side == "" {
			rows = append(rows, PointRow{p, labels[p.Name]})
		}
	}
	return rows
}

// SetPoint moves one coordinate of a point, in file units. It is the car's own from then
// on, be it the number that stood there before.
func (s *Session) SetPoint(p study.PlacedPoint, axis int, value float64) error {
	p.Place[axis] = value
	return s.edit("move "+s.doc.PointName(p), "", func(d *study.Document) { d.SetPoint(p) }, func(d *study.Document) {
		d.Attribute(s.doc, study.FromTyping)
		d.SetSource(d.SourcePath(p)+"."+axisName(axis), study.FromTyping)
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
