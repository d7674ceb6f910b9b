package engine

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// sizes returns the sizes of the ball, each to be made on a step: from the face and its
// lowest bolt, or without a face from the original ball along the axes of the car.
func (p *ArmPart) sizes(s solver.Side, step float64) (out [3]PartSize) {
	names, from := [3]string{"forward", "outboard", "up"}, [3][3]float64{p.Original, p.Original, p.Original}
	along := [3][3]float64{{1}, components(s.Mirrored(solver.Vec{Y: 1})), {0, 0, 1}}
	if f := p.Face; f != nil {
		low := f.LowestBolt()
		names, from, along = [3]string{"face", "bolts", "across"}, [3][3]float64{f.Point, low, low}, f.Axes
	}
	for i := range out {
		z := &out[i]
		z.Of, z.From, z.Along = names[i], from[i], along[i]
		z.Exact, z.Was = z.of(p.Hole), z.of(p.Original)
		z.Make = math.Round(z.Exact/step) * step
	}
	return out
}

func (z *PartSize) of(at [3]float64) float64 {
	return r3.Dot(vecOf(z.Along), r3.Sub(vecOf(at), vecOf(z.From)))
}

func vecOf(v [3]float64) r3.Vec { return r3.Vec{X: v[0], Y: v[1], Z: v[2]} }

// Off returns what is made less what is exact.
func (z *PartSize) Off() float64 { return z.Make - z.Exact }

// finestStep returns the last decimal of a length as it is shown, in the file's units.
func finestStep(d *study.Document) float64 {
	return d.Units.FromMillimetres(number.LastDecimal(d.Style().Units))
}

// placing are the parameters that place the outer ball in its knuckle.
var placing = [3]string{"tieRodOuterHeight", "steeringArmLength", "steeringArmOffset"}

// madeChanges returns the changes of a car whose outer balls stand where their sizes to make
// put them, its parts else as they are. The ball moves straight along each of three
// directions by as much as its parameter says, so that three steps tell how far along each.
func (s *sweeper) madeChanges(car car, original *solver.Axle, sides []ArmSide) ([]solver.Change, error) {
	changes := slices.Clip(car.axle.Changes())
	out := changes
	for _, side := range solver.Sides {
		was := car.axle.ArmReport(original, side, nil).Car
		var m [3]solver.Vec
		var keys [3]solver.Change
		for i, key := range placing {
			p, sides, err := solver.FindParameter(s.design, key+"@"+side.String())
			if err != nil {
				return nil, err
			}
			keys[i] = solver.Change{Parameter: p, Sides: sides}
			step := keys[i]
			step.Value = 1
			moved, err := s.base.Assemble(append(changes, step), car.axle.Hold())
			if err != nil {
				return nil, err
			}
			m[i] = r3.Sub(moved.ArmReport(original, side, nil).Car, was)
		}
		by := side.Mirrored(s.roundedBy(&sides[side].Part))
		volume := r3.Dot(m[0], r3.Cross(m[1], m[2]))
		for i := range keys {
			a, b := m[(i+1)%3], m[(i+2)%3]
			keys[i].Value = r3.Dot(by, r3.Cross(a, b)) / volume
			out = append(out, keys[i])
		}
	}
	return out, nil
}

// roundedBy returns by how much a ball to be made stands off the exact one, mm.
func (c *cars) roundedBy(p *ArmPart) (by solver.Vec) {
	for i := range p.Sizes {
		z := &p.Sizes[i]
		by = r3.Add(by, r3.Scale(c.doc.Units.Millimetres(z.Off()), vecOf(z.Along)))
	}
	return by
}

// zones returns the zones square to the stud and along it: no wider than what the study's
// tolerances of the arm, and of the ball's own coordinates, assume. A normal spread is asked
// for to three standard deviations.
func (c *cars) zones(s solver.Side, stud solver.Vec) (out [2]PartZone) {
	for _, t := range c.doc.Tolerances {
		p, sides, err := solver.FindParameter(c.design, t.Parameter)
		if err != nil || !sides.Includes(s) {
			continue
		}
		along, ok := alongStud(p.Key, stud)
		if !ok {
			continue
		}
		z := &out[0]
		if along {
			z = &out[1]
		}
		width := 2 * t.PlusMinus
		if t.SD > 0 {
			width = 2 * standardWidth * t.SD
		}
		if z.Width == 0 || width < z.Width {
			z.Width = width
		}
		z.Of = append(z.Of, t)
	}
	return out
}

// standardWidth is how many standard deviations a stated one is asked for to either side.
const standardWidth = 3

// steepStud is the cosine beyond which a coordinate counts as along the stud.
const steepStud = math.Sqrt2 / 2

// alongStud reports whether a parameter places the outer ball, and whether along its stud.
func alongStud(key string, stud solver.Vec) (along, ok bool) {
	switch key {
	case "tieRodOuterHeight":
		return true, true
	case "steeringArmLength", "steeringArmOffset":
		return false, true
	case "tieRodOuter.x":
		return math.Abs(stud.X) > steepStud, true
	case "tieRodOuter.y":
		return math.Abs(stud.Y) > steepStud, true
	case "tieRodOuter.z":
		return math.Abs(stud.Z) > steepStud, true
	}
	return false, false
}
