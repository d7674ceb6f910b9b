package drawing

import (
	"cmp"
	"context"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// part is one steering arm to be made, mm, in vehicle axes.
type part struct {
	study *study.Document
	style number.Style
	side  string
	title string

	hole, was r3.Vec // centre of the outer ball, and of the original one
	stud      r3.Vec // direction of length 1, towards the ball
	clamped   r3.Vec // where the stud's axis passes the face that clamps it
	face      *face  // nil where the study states none

	large, small, thickness, bolt float64 // diameters and the eye's thickness; 0 where not stated
}

// face is what the arm is bolted to: a point of it, its normal towards the arm, the line of
// its bolts, and the bolts.
type face struct {
	point, normal, along r3.Vec
	bolts                []r3.Vec
}

func newPart(ctx context.Context, d *study.Document, o *Options) (*part, error) {
	side := cmp.Or(o.Side, "left")
	parts, err := engine.ArmParts(ctx, d, engine.ArmOptions{Candidate: o.Candidate})
	if err != nil {
		return nil, err
	}
	for i := range parts {
		if parts[i].Side == side {
			p := partOf(d, &parts[i])
			p.title = side + " steering arm, " + cmp.Or(o.Candidate, study.BaseName)
			return p, nil
		}
	}
	return nil, &engine.Error{Key: "side", Message: "is neither left nor right"}
}

func partOf(d *study.Document, a *engine.ArmPart) *part {
	mm := d.Units.Millimetres
	place := func(v [3]float64) r3.Vec { return r3.Vec{X: mm(v[0]), Y: mm(v[1]), Z: mm(v[2])} }
	p := &part{
		study: d, style: d.Style(), side: a.Side,
		hole: place(a.Hole), was: place(a.Original), stud: direction(a.Stud), clamped: place(a.Clamped),
		large: mm(a.Large), small: mm(a.Small), thickness: mm(a.Thickness), bolt: mm(a.BoltDiameter),
	}
	if f := a.Face; f != nil {
		p.face = &face{point: place(f.Point), normal: direction(f.Axes[0]), along: direction(f.Axes[1])}
		for _, b := range f.Bolts {
			p.face.bolts = append(p.face.bolts, place(b))
		}
	}
	return p
}

func direction(v [3]float64) r3.Vec { return r3.Vec{X: v[0], Y: v[1], Z: v[2]} }

// number returns the part's number, "" where the study states none.
func (p *part) number() string {
	a := p.study.Arm
	switch {
	case a == nil:
		return ""
	case p.side == "right":
		return a.NumberRight
	}
	return a.NumberLeft
}

// origin returns the first bolt, or else the point of the face: where sizes along and across
// the bolts are taken from.
func (f *face) origin() r3.Vec {
	if len(f.bolts) > 0 {
		return f.bolts[0]
	}
	return f.point
}

// farEnd returns where the stud's axis leaves the eye.
func (p *part) farEnd() r3.Vec { return r3.Sub(p.clamped, r3.Scale(p.thickness, p.stud)) }
