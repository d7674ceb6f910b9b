package engine

import (
	"math"

	"toewright/internal/study"
)

// towards are what a step along each car axis is called, forward and back.
var towards = [3][2]string{{"forward", "rearward"}, {"outboard", "inboard"}, {"up", "down"}}

// Towards returns the word for where a direction in vehicle axes goes most on a side.
func Towards(side string, d [3]float64) string {
	if side == string(study.Right) {
		d[1] = -d[1]
	}
	most := 0
	for i := range d {
		if math.Abs(d[i]) > math.Abs(d[most]) {
			most = i
		}
	}
	if d[most] < 0 {
		return towards[most][1]
	}
	return towards[most][0]
}

// Words says from where to where a size of a side's arm goes.
func (p *ArmPart) Words(side string, i int) string {
	z := &p.Sizes[i]
	d := z.Along
	for k := range d {
		d[k] *= z.Sign()
	}
	return p.start(z) + ", " + Towards(side, d)
}

// start says where a size starts, by the datums of the drawing.
func (p *ArmPart) start(z *PartSize) string {
	switch {
	case p.Face == nil:
		return "from the original ball A"
	case z.Of == "face":
		return "from face A"
	case len(p.Face.Bolts) == 0:
		return "from the point of the face"
	case z.Of == "bolts":
		return "from the lower bolt, along B"
	}
	return "from the lower bolt, across B"
}

// Sign is that of the size, by which it is drawn and written without one.
func (z *PartSize) Sign() float64 { return math.Copysign(1, z.Exact) }

// Alike reports whether two arms have the same sizes to the last decimal that is shown in a
// unit, as mirror images have.
func Alike(a, b *ArmSide, write func(float64) string) bool {
	for i := range a.Part.Sizes {
		x, y := &a.Part.Sizes[i], &b.Part.Sizes[i]
		if a.Part.Words(a.Side, i) != b.Part.Words(b.Side, i) || write(x.Exact) != write(y.Exact) || write(x.Was) != write(y.Was) {
			return false
		}
	}
	return true
}
