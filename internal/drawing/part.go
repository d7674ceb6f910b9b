package drawing

import (
	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// part is one steering arm to be made, mm, in vehicle axes.
type part struct {
	*engine.ArmSide
	study *study.Document
	style number.Style
	title string
	car   string  // candidate
	step  float64 // on which the sizes to make lie, in the file's units

	firstAngle bool // projection of the views, else third angle

	hole, was r3.Vec // centre of the outer ball, and of the original one
	stud      r3.Vec // direction of length 1, towards the ball
	clamped   r3.Vec // where the stud's axis passes the face that clamps it
	face      *face  // nil where the study states none

	large, small, thickness, bolt float64 // diameters and the eye's thickness; 0 where not stated

	axis, foot r3.Vec // of steering: direction of length 1, and point at the original ball's height
	sizes      [3]size
}

// face is what the arm is bolted to: a point of it, its normal towards the arm, its bolts,
// and the one that sizes are taken from.
type face struct {
	point, normal, lowest r3.Vec
	bolts                 []r3.Vec
}

// size is how far the ball stands from a datum along a direction of length 1, mm.
type size struct {
	*engine.PartSize
	along            r3.Vec
	exact, made, was float64
}

func partOf(d *study.Document, a *engine.ArmSide, candidate string) *part {
	mm, q := d.Units.Millimetres, &a.Part
	place := func(v [3]float64) r3.Vec { return r3.Vec{X: mm(v[0]), Y: mm(v[1]), Z: mm(v[2])} }
	p := &part{
		ArmSide: a, study: d, style: d.Style(), title: a.Side + " steering arm, " + candidate, car: candidate,
		hole: place(q.Hole), was: place(q.Original), stud: direction(q.Stud), clamped: place(q.Clamped),
		large: mm(q.Large), small: mm(q.Small), thickness: mm(q.Thickness), bolt: mm(q.BoltDiameter),
		axis: direction(a.Place.Axis), foot: place(a.Place.Foot),
	}
	if f := q.Face; f != nil {
		p.face = &face{point: place(f.Point), normal: direction(f.Axes[0]), lowest: place(f.LowestBolt())}
		for _, b := range f.Bolts {
			p.face.bolts = append(p.face.bolts, place(b))
		}
	}
	for i := range q.Sizes {
		z := &q.Sizes[i]
		p.sizes[i] = size{z, direction(z.Along), mm(z.Exact), mm(z.Make), mm(z.Was)}
	}
	return p
}

func direction(v [3]float64) r3.Vec { return r3.Vec{X: v[0], Y: v[1], Z: v[2]} }

// arm returns what the study states of the arm as a part.
func (p *part) arm() *study.Arm {
	if p.study.Arm == nil {
		return &study.Arm{}
	}
	return p.study.Arm
}

// number returns the part's number, "" where the study states none.
func (p *part) number() string {
	if p.Side == "right" {
		return p.arm().NumberRight
	}
	return p.arm().NumberLeft
}

// farEnd returns where the stud's axis leaves the eye.
func (p *part) farEnd() r3.Vec { return r3.Sub(p.clamped, r3.Scale(p.thickness, p.stud)) }

// outboard returns the direction away from the car's middle.
func (p *part) outboard() r3.Vec {
	if p.Side == "right" {
		return r3.Vec{Y: -1}
	}
	return r3.Vec{Y: 1}
}

// towards returns the word for where a direction goes most.
func (p *part) towards(d r3.Vec) string { return engine.Towards(p.Side, [3]float64{d.X, d.Y, d.Z}) }

func abs(x float64) float64 { return max(x, -x) }

// length writes a length with its decimals alone.
func (p *part) length(mm float64) string { return p.style.LengthDecimal(mm) }
