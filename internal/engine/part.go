package engine

import (
	"cmp"
	"context"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/study"
	"toewright/solver"
)

// ArmPart is a side's steering arm as a part to be made: where its hole, its face and its
// bolts stand in the file's own static position, with the candidate's part on and its
// setpoints not turned in, in vehicle axes and the file's units.
type ArmPart struct {
	Side string `json:"side"`
	// Hole is the centre of the outer ball, Original where it was before.
	Hole     [3]float64 `json:"hole"`
	Original [3]float64 `json:"original"`
	Stud     [3]float64 `json:"stud"` // direction of length 1
	// Clamped is where the stud's axis passes the face of the eye that clamps it: below the
	// ball by the stud's height where the study states one, else at the ball itself.
	Clamped [3]float64 `json:"clamped"`
	// Face is what the arm is bolted to, nil where the study states none.
	Face *PartFace `json:"face,omitzero"`
	// Diameters and thickness are those of the study's arm; 0 where it states none. Small
	// is at the other face of the eye.
	Large        float64 `json:"large,omitzero"`
	Small        float64 `json:"small,omitzero"`
	Thickness    float64 `json:"thickness,omitzero"`
	BoltDiameter float64 `json:"boltDiameter,omitzero"`
}

// PartFace is the face that an arm is bolted to. Axes are the directions of length 1 of its
// normal, which points from knuckle to arm, of the line of its bolts, and across them.
type PartFace struct {
	Point [3]float64    `json:"point"`
	Axes  [3][3]float64 `json:"axes"`
	Bolts [][3]float64  `json:"bolts,omitzero"`
}

// ArmParts returns both steering arms of a candidate as parts to be made, left then right.
func ArmParts(ctx context.Context, d *study.Document, o ArmOptions) ([]ArmPart, error) {
	c, err := newCars(d)
	if err != nil {
		return nil, err
	}
	car, err := c.byName(cmp.Or(o.Candidate, study.BaseName))
	if err != nil {
		return nil, err
	}
	original, err := c.original(car)
	if err != nil {
		return nil, err
	}
	var parts []ArmPart
	for _, s := range solver.Sides {
		r := car.axle.ArmReport(original, s, c.armFace(s))
		parts = append(parts, c.armPart(&r))
	}
	return parts, ctx.Err()
}

func (c *cars) armPart(r *solver.ArmReport) ArmPart {
	now := r3.Add(r.Original.Hole, r.Side.Mirrored(r.Car))
	out := ArmPart{
		Side: r.Side.String(), Hole: c.lengths(now), Original: c.lengths(r.Original.Hole),
		Stud: components(r.Original.Stud), Clamped: c.lengths(now), Face: c.partFace(r.Side),
	}
	if ball := c.doc.OuterBall(); ball != nil && ball.Stud != nil {
		height := c.doc.Units.Millimetres(ball.Stud.Height)
		out.Clamped = c.lengths(r3.Sub(now, r3.Scale(height, r.Original.Stud)))
	}
	if a := c.doc.Arm; a != nil {
		out.Thickness, out.BoltDiameter, out.Small = a.Thickness, a.BoltDiameter, a.SmallDiameter()
		if a.Hole != nil {
			out.Large = a.Hole.LargeDiameter
		}
	}
	return out
}

// partFace returns the face of a side's arm, nil where the study states none.
func (c *cars) partFace(s solver.Side) *PartFace {
	face := c.armFace(s)
	if face == nil {
		return nil
	}
	f := c.doc.Suspension.Corner(study.Side(s.String())).ArmFace
	out := &PartFace{Point: f.Point}
	for _, b := range f.Bolts {
		out.Bolts = append(out.Bolts, b)
	}
	for i, axis := range face.Axes(s) {
		out.Axes[i] = components(s.Mirrored(axis))
	}
	return out
}
