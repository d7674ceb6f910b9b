package solver

// Rods are the lengths, in mm, of the rods that set toe: what an alignment turns,
// and what a car leaves the line with where there is none.
type Rods struct {
	Tie  [2]float64 // tie rod of each side; a solid axle's one tie rod is both
	Drag float64    // drag link of a solid axle, else 0
}

// Rods returns the lengths of the rods that set toe in the static position.
func (x *Axle) Rods() Rods {
	r := Rods{Tie: [2]float64{x.TieRodLength(Left), x.TieRodLength(Right)}}
	if x.beam != nil {
		r.Drag = x.beam.drag.l
	}
	return r
}

// AssembleBuilt is [Assembler.AssembleSides] of a car as it leaves the line: its
// rods have the given lengths, and static toe is what comes of them, whatever hold
// and changes say of toe. Changes of the rods' own lengths are added to them. Camber
// and caster are re-set as hold says.
func (a *Assembler) AssembleBuilt(sides Selection, changes []Change, hold Hold, rods *Rods) (*Axle, error) {
	return a.assemble(sides, changes, hold, rods)
}

// steeringRod names a rod that sets toe.
type steeringRod uint8

const (
	tieRodRod steeringRod = iota
	dragLinkRod
)

// of returns the length of a unit's rod.
func (r *Rods) of(u *unit, rod steeringRod) float64 {
	if rod == dragLinkRod {
		return r.Drag
	}
	return r.Tie[u.wheels[0].side]
}

// setRods sets the lengths of the rods of a unit where toe floats.
func (s *setpoints) setRods(u *unit, built *Rods, pts []dvec, cs []applied) {
	for _, rod := range u.steeringRods() {
		s.rods[rod] = u.rodLength(rod, built, pts, cs)
	}
}

// steeringRods returns the rods of u that set toe, in the order in which an axle
// holds them: the drag link its own knuckle and the tie rod the other.
func (u *unit) steeringRods() []steeringRod {
	return axleRods[len(axleRods)-len(u.steer):]
}

var axleRods = [...]steeringRod{dragLinkRod, tieRodRod}

// rodLength returns on what way a rod's length goes where toe floats: from what it
// is among pts, before any part is exchanged, to the same or to that of a car as
// built, and by as much more as cs say.
func (u *unit) rodLength(rod steeringRod, built *Rods, pts []dvec, cs []applied) target {
	r := &u.steer[rod]
	l := steady(pts[r.outer].less(pts[r.inner]).norm())
	if built != nil {
		l.to = constant(built.of(u, rod))
	}
	for _, c := range cs {
		if c.Parameter.stage == rodStage && c.Parameter.rod == rod && u.touches(c.Change) {
			l.to = l.to.plus(c.amount())
		}
	}
	return l
}

// hasLength holds a rod that sets toe at a length of its own.
type hasLength struct {
	rodSpec
	target
}

func (k *hasLength) link() string { return k.name }

func (k *hasLength) value(c *configuration) dual {
	d, l := c.pts[k.outer].less(c.pts[k.inner]), k.at(c.blend)
	return d.dot(d).less(l.times(l)).over(l.scaled(2))
}
