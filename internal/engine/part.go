package engine

import (
	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/study"
	"toewright/solver"
)

// ArmPart is a side's steering arm as a part to be made: where its hole, its face and its
// bolts stand in the file's own static position, with the candidate's part on and its
// setpoints not turned in, in vehicle axes and the file's units.
type ArmPart struct {
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
	// Sizes are those by which the ball is found from the part's datums, three directions
	// square to each other.
	Sizes [3]PartSize `json:"sizes"`
	// Zones are those within which the ball may lie: square to the stud, and along it.
	Zones [2]PartZone `json:"zones"`
}

// PartFace is the face that an arm is bolted to. Axes are the directions of length 1 of its
// normal, which points from knuckle to arm, of the line of its bolts, and across them.
type PartFace struct {
	Point [3]float64    `json:"point"`
	Axes  [3][3]float64 `json:"axes"`
	Bolts [][3]float64  `json:"bolts,omitzero"`
}

// PartSize is how far the ball stands from a point along a direction of length 1, in the
// file's units: exactly, to be made on the shop's step, and on the original arm.
type PartSize struct {
	Of    string     `json:"of"` // "face", "bolts", "across"; without a face "forward", "outboard", "up"
	From  [3]float64 `json:"from"`
	Along [3]float64 `json:"along"`
	Exact float64    `json:"exact"`
	Make  float64    `json:"make"`
	Was   float64    `json:"was"`
}

// PartZone is by how much a place may be off: the width of the whole zone in the file's
// units, 0 where the study assumes nothing, and the tolerances that it is made of.
type PartZone struct {
	Width float64           `json:"width,omitzero"`
	Of    []study.Tolerance `json:"of,omitzero"`
}

func (c *cars) armPart(r *solver.ArmReport, step float64) ArmPart {
	now := r3.Add(r.Original.Hole, r.Side.Mirrored(r.Car))
	out := ArmPart{
		Hole: c.lengths(now), Original: c.lengths(r.Original.Hole),
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
	out.Sizes = out.sizes(r.Side, step)
	out.Zones = c.zones(r.Side, r.Original.Stud)
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

// LowestBolt returns the bolt that stands lowest in the car, or else the point of the face:
// where sizes along and across the bolts are taken from.
func (f *PartFace) LowestBolt() [3]float64 {
	if len(f.Bolts) == 0 {
		return f.Point
	}
	low := f.Bolts[0]
	for _, b := range f.Bolts[1:] {
		if b[2] < low[2] {
			low = b
		}
	}
	return low
}
