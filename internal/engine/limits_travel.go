package engine

import (
	"errors"
	"math"
	"sync"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/optimize/nlp"
	"toewright/solver"
)

const (
	// limitPiece is the longest piece of travel, mm, between the positions in which joints
	// and clearances are looked at first, and fewestPieces how many there are at least:
	// [optimize.Extreme] looks between. Angles and distances of a linkage bend over some
	// tens of mm.
	limitPiece   = 12.5
	fewestPieces = 8
)

// limitTravels returns the travels at which joints and clearances are looked at first.
func (s *sweeper) limitTravels() ([]float64, error) {
	mm := s.grid.mm
	lo, hi := mm[0], mm[len(mm)-1]
	pieces := max(fewestPieces, math.Ceil((hi-lo)/limitPiece))
	return solver.Grid(hi, -lo, (hi-lo)/pieces)
}

// scratch is memory for what is looked at through the travel.
type scratch struct {
	curves [2]solver.Curve
	placed solver.Placed
	forces [2]solver.Forces
	rates  []solver.Forces
	values [2][]float64 // by side, at the travels looked at first
}

// scratchPool lends scratches to the goroutines that share a limit.
type scratchPool struct{ sync.Pool }

func (p *scratchPool) borrow() *scratch {
	if s, ok := p.Get().(*scratch); ok {
		return s
	}
	return &scratch{}
}

// probe looks at a result through the travel, about p.from.
type probe interface {
	// sample sets the values of the sides that are looked at, at the travels of the meter.
	sample(p *posed, out *[2][]float64) error
	// mirrored reports whether it sees the same on both sides of a car that is its own
	// mirror image.
	mirrored(p *posed) bool
	// at returns the value of one side at one travel.
	at(p *posed, s solver.Side, travel float64) (float64, error)
}

// along returns the range of what a probe sees over the whole travel, at each steering
// input of the limit. One position that cannot be taken leaves the car without.
func (m *limitMeter) along(p *posed, work *scratch, look probe) optimize.LimitRange {
	out := optimize.NewLimitRange()
	moved := *p
	for _, steer := range m.steers(p.from.Steer) {
		moved.from.Steer = steer
		moved.sides = m.looked(&moved, look)
		for _, s := range moved.sides {
			work.values[s] = work.values[s][:0]
		}
		if err := look.sample(&moved, &work.values); err != nil {
			return m.lack(&moved, err)
		}
		for _, s := range moved.sides {
			if err := m.see(&moved, s, work.values[s], look, &out); err != nil {
				return m.lack(&moved, err)
			}
		}
	}
	return out
}

// looked returns the sides that a probe looks at: one wheel stands for both where they do
// the same.
func (m *limitMeter) looked(p *posed, look probe) []solver.Side {
	one := len(m.sides) > 1 && p.from.Steer == 0 && p.from.Roll == 0 && m.design.Mirrored() && look.mirrored(p)
	for _, c := range p.car.Changes() {
		one = one && c.Sides == solver.BothSides
	}
	if one {
		return m.sides[:1]
	}
	return m.sides
}

// see takes the extremes of one side that the limit bounds into account.
func (m *limitMeter) see(p *posed, s solver.Side, values []float64, look probe, out *optimize.LimitRange) (err error) {
	curve := func(travel float64) float64 {
		v, e := look.at(p, s, travel)
		if e != nil {
			err = e
		}
		return v
	}
	for _, least := range [2]bool{false, true} {
		if least && m.l.Min == nil || !least && m.l.Max == nil {
			continue
		}
		travel, v := nlp.Extreme(m.travels, values, least, curve)
		out.See(v, optimize.LimitPlace{Side: s, Travel: travel, Steer: p.from.Steer})
	}
	return err
}

// steers returns the steering inputs, mm or radians, at which the limit is looked at in an
// attitude that is steered by own.
func (m *limitMeter) steers(own float64) []float64 {
	if m.l.At != study.AtLock {
		return []float64{own}
	}
	lock := m.steer(m.doc.Steering.Lock)
	return []float64{own, lock, -lock}
}

// errShort is why a curve that ends before the travels asked for has no extremes; where it
// ends stands in the place.
var errShort = errors.New("the window is not reached")

// lack returns the range of a car that does not reach a position about p.from: the place
// is where a wheel's travel ends.
func (m *limitMeter) lack(p *posed, err error) optimize.LimitRange {
	var curves [2]solver.Curve
	in := solver.SweepInput{ToeOnly: true, Travels: m.travels, From: p.from}
	at := optimize.LimitPlace{Side: m.sides[0], Steer: p.from.Steer}
	if e := p.car.Sweep(p.ws, &in, &curves); e != nil {
		var reach *solver.ReachError
		if errors.As(e, &reach) {
			at.Side, at.Link = reach.Side, reach.Link
		}
		return optimize.Lack(at, e)
	}
	for _, s := range m.sides {
		switch r := &curves[s].Reach; {
		case r.Whole():
			continue
		case r.BumpEnds && !(r.DroopEnds && r.Droop < r.Bump):
			at.Side, at.Link, at.Travel = s, r.BumpLink, r.Bump
		default:
			at.Side, at.Link, at.Travel = s, r.DroopLink, -r.Droop
		}
		break
	}
	return optimize.Lack(at, err)
}

// angle measures the misalignment of a joint along the travel, degrees.
func angle(of func(*solver.JointAngles) solver.Angle) measuring {
	look := func(m *limitMeter, p *posed, work *scratch) *jointProbe {
		return &jointProbe{m: m, work: work, of: of, in: solver.SweepInput{Joints: m.joints(p.car), Sides: m.selection()}}
	}
	return measuring{
		all: func(m *limitMeter, p *posed) optimize.LimitRange {
			work := m.idle.borrow()
			defer m.idle.Put(work)
			return m.along(p, work, look(m, p, work))
		},
		spot: func(m *limitMeter, p *posed, at optimize.LimitPlace) (float64, error) {
			work := m.idle.borrow()
			defer m.idle.Put(work)
			return lookAt(p, look(m, p, work), at)
		},
		oneWheel: true,
	}
}

// lookAt returns what a probe sees at one place.
func lookAt(p *posed, look probe, at optimize.LimitPlace) (float64, error) {
	moved := *p
	moved.from.Steer = at.Steer
	return look.at(&moved, at.Side, at.Travel)
}

// selection returns the sides that the limit is for.
func (m *limitMeter) selection() solver.Selection { return selectionOf(m.sides) }

// selectionOf returns the selection of some sides, one at least.
func selectionOf(sides []solver.Side) solver.Selection {
	switch {
	case len(sides) > 1:
		return solver.BothSides
	case sides[0] == solver.Left:
		return solver.LeftOnly
	}
	return solver.RightOnly
}

// jointProbe looks at the angle of a joint.
type jointProbe struct {
	m    *limitMeter
	work *scratch
	of   func(*solver.JointAngles) solver.Angle
	in   solver.SweepInput
	one  [1]float64
}

func (j *jointProbe) sample(p *posed, out *[2][]float64) error {
	j.in.From, j.in.Travels, j.in.Sides = p.from, j.m.travels, selectionOf(p.sides)
	if err := p.car.Sweep(p.ws, &j.in, &j.work.curves); err != nil {
		return err
	}
	for _, s := range p.sides {
		c := &j.work.curves[s]
		if !c.Reach.Whole() {
			return errShort
		}
		for i := range c.Positions {
			out[s] = append(out[s], j.of(&c.Positions[i].Joints).Degrees())
		}
	}
	return nil
}

// mirrored: only where the axes that angles count from are.
func (j *jointProbe) mirrored(*posed) bool {
	same := func(of [2]solver.Joint) bool {
		l, r := of[solver.Left].Axis, of[solver.Right].Axis
		return l.X == r.X && l.Y == -r.Y && l.Z == r.Z
	}
	return same(j.in.Joints.Inner) && same(j.in.Joints.Outer)
}

func (j *jointProbe) at(p *posed, s solver.Side, travel float64) (float64, error) {
	j.one[0] = travel
	j.in.From, j.in.Travels, j.in.Sides = p.from, j.one[:], solver.LeftOnly
	if s == solver.Right {
		j.in.Sides = solver.RightOnly
	}
	if err := p.car.Sweep(p.ws, &j.in, &j.work.curves); err != nil {
		return 0, err
	}
	c := &j.work.curves[s]
	if len(c.Positions) == 0 {
		return 0, errShort
	}
	return j.of(&c.Positions[0].Joints).Degrees(), nil
}

// clearance is the distance of the part from the plane, the rim or the link along the
// travel, the part's own radius taken off.
func (m *limitMeter) clearance(p *posed) optimize.LimitRange {
	work := m.idle.borrow()
	defer m.idle.Put(work)
	return m.along(p, work, &gapProbe{m, work})
}

// clearanceAt is the clearance at one place.
func (m *limitMeter) clearanceAt(p *posed, at optimize.LimitPlace) (float64, error) {
	work := m.idle.borrow()
	defer m.idle.Put(work)
	return lookAt(p, &gapProbe{m, work}, at)
}

// gapProbe looks at the distance of a part from what bounds it.
type gapProbe struct {
	m    *limitMeter
	work *scratch
}

func (g *gapProbe) sample(p *posed, out *[2][]float64) error {
	for _, t := range g.m.travels {
		if err := g.place(p, selectionOf(p.sides), t); err != nil {
			return err
		}
		for _, s := range p.sides {
			out[s] = append(out[s], g.value(p, s))
		}
	}
	return nil
}

// mirrored: planes are, as links and rims.
func (g *gapProbe) mirrored(*posed) bool { return true }

func (g *gapProbe) at(p *posed, s solver.Side, travel float64) (float64, error) {
	if err := g.place(p, selectionOf([]solver.Side{s}), travel); err != nil {
		return 0, err
	}
	return g.value(p, s), nil
}

// place moves sides of the car to a travel about p.from.
func (g *gapProbe) place(p *posed, sides solver.Selection, travel float64) error {
	heave := p.from.Heave + travel
	return p.car.PlaceSides(p.ws, sides, [2]float64{heave - p.from.Roll, heave + p.from.Roll}, p.from.Steer, &g.work.placed)
}

// value returns the clearance where the car was placed, in the file's unit.
func (g *gapProbe) value(p *posed, s solver.Side) float64 {
	return g.m.length(g.m.gap(p.car.Design().Kind, &g.work.placed, s)) - g.m.l.Radius
}
