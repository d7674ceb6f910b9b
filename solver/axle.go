package solver

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Axle is a candidate: a design with its parts changed and its setpoints solved,
// ready to be moved. It is immutable and may be shared; each goroutine that
// moves it needs a [Workspace] of its own.
type Axle struct {
	assembler  *Assembler
	changes    []Change
	hold       Hold
	rods       *Rods     // of a car as built, else nil
	sides      Selection // assembled; the rest is as in the base car
	gear       Gear
	tyreRadius float64
	static     []*staticUnit    // in units
	units      [2]*staticUnit   // one of a solid axle
	room       [2]*staticCorner // memory of units, by unit, for [Assembler.Reassemble]

	corners [2]*corner // of an independent suspension
	beam    *beam      // of a solid axle
	balls   [2]innerBall
	drag    innerBall
	home    [2]Vec     // contact points in the static position, as left ones
	low     [2]float64 // heights of the wheels' lowest points there
}

// link takes what is moved from the solved static position.
func (x *Axle) link() {
	for _, s := range x.static {
		if s.u.beam {
			x.beam = s.beam
			x.drag = x.inner(s.pts[s.u.geared().inner], Left)
		} else {
			side := s.u.wheels[0].side
			x.corners[side] = s.corner
			x.balls[side] = x.inner(side.Mirrored(s.pts[s.u.geared().inner]), side)
		}
		x.setHome(s)
	}
}

// inner is [Gear.inner] of the axle's gear. On a rack all balls of a side move
// alike, wherever they stand.
func (x *Axle) inner(p Vec, s Side) innerBall {
	if r := x.assembler.racks[s]; r != nil {
		return r
	}
	return x.gear.inner(p, s)
}

// setHome records the contact points and the lowest points of a unit's static position.
func (x *Axle) setHome(s *staticUnit) {
	for i := range s.u.wheels {
		w := &s.u.wheels[i]
		centre, spin := s.pts[w.centre], s.spins[i]
		if w.flipped {
			centre, spin = w.side.Mirrored(centre), w.side.Mirrored(spin)
		}
		x.home[w.side], x.low[w.side] = contact(centre, spin, x.tyreRadius), lowest(centre, spin, x.tyreRadius)
	}
}

// build makes c the corner of a static position, its closed form in f.
func (c *corner) build(s *staticUnit, f *closedForm) {
	w := &s.u.wheels[0]
	o := s.pts[w.centre]
	c.n, c.wheel, c.spin = len(s.u.rods), o, s.spins[0]
	for i := range s.u.rods {
		c.rods[i] = s.rod(&s.u.rods[i], o)
	}
	c.tie = s.rod(s.u.tie(), o)
	if t := s.u.strut; t != nil {
		on := s.pts[t.lower]
		axis := r3.Sub(s.pts[t.carried], on)
		c.strut = &strut{top: s.pts[t.top], on: r3.Sub(on, o), dir: r3.Unit(axis), span: norm(axis)}
	}
	c.axis.kind = w.axis.kind
	switch w.axis.kind {
	case ballJointAxis:
		c.axis.lower, c.axis.upper = r3.Sub(s.pts[w.axis.lower], o), r3.Sub(s.pts[w.axis.upper], o)
	case mountAxis:
		c.axis.lower, c.axis.upper = r3.Sub(s.pts[w.axis.lower], o), s.pts[w.axis.upper]
	}
	c.pair = c.bestPair()
	c.closed = newClosedForm(c, s.u, f)
}

// rod returns a rod at its length in the static position, its outer joint given from o.
func (s *staticUnit) rod(r *rodSpec, o Vec) rod {
	return newRod(r.name, s.pts[r.inner], s.pts[r.outer], o)
}

// newBeam builds a solid axle from its static position.
func newBeam(s *staticUnit) *beam {
	u, pts := s.u, s.pts
	o := r3.Scale(0.5, r3.Add(pts[u.wheels[0].centre], pts[u.wheels[1].centre]))
	b := &beam{o: o, pulls: u.points[axleDrag+1].body - leftBody}
	for i := range b.links {
		b.links[i] = s.rod(&u.rods[i], o)
	}
	for i := range u.wheels {
		b.ends[i] = newKingpin(&u.wheels[i], pts, s.spins[i], o)
	}
	b.drag = s.rod(&u.steer[dragLinkRod], pts[u.wheels[b.pulls].axis.lower])
	t := u.tie()
	b.tie = norm(r3.Sub(pts[t.outer], pts[t.inner]))
	b.triple = b.bestTriple()
	return b
}

func newKingpin(w *wheelSpec, pts []Vec, spin, o Vec) kingpin {
	foot := pts[w.axis.lower]
	rise := r3.Sub(pts[w.axis.upper], foot)
	return kingpin{
		foot: r3.Sub(foot, o), dir: r3.Unit(rise), rise: rise,
		wheel: r3.Sub(pts[w.centre], foot), height: pts[w.centre].Z,
		arm: r3.Sub(pts[w.arm], foot), spin: spin,
	}
}

// Design returns the design that the axle is a candidate of.
func (x *Axle) Design() *Design { return &x.assembler.design }

// Changes returns the changes that make it this candidate.
func (x *Axle) Changes() []Change { return x.changes }

// Gear returns the steering gear, its points changed.
func (x *Axle) Gear() *Gear { return &x.gear }

// gearBall returns the ball that the gear moves for a side: one for both of a
// solid axle. It is nil without a gear.
func (x *Axle) gearBall(s Side) innerBall {
	if x.beam != nil {
		return x.drag
	}
	return x.balls[s]
}

// steerReach is [Gear.Reach] of the axle's gear, from the four-bar it has built.
func (x *Axle) steerReach() (lo, hi float64) {
	if b := x.bar(); b != nil {
		return b.lock(-1), b.lock(1)
	}
	return math.Inf(-1), math.Inf(1)
}

// bar returns the axle's pitman, centre link and idler arm; nil where it has none.
func (x *Axle) bar() *fourBar {
	if b, ok := x.gearBall(Left).(*linkBall); ok {
		return b.bar
	}
	return nil
}

// TyreRadius returns the tyre radius in mm, changes included.
func (x *Axle) TyreRadius() float64 { return x.tyreRadius }

// Solid reports whether both wheels hang on one beam, so that each moves the
// other.
func (x *Axle) Solid() bool { return x.beam != nil }

// StaticPoint returns the place in V of a side's hardpoint, by its index in
// Kind.SidePoints, in the static position of the candidate.
func (x *Axle) StaticPoint(s Side, i int) Vec {
	if x.beam != nil {
		return x.static[0].pts[int(s)*axleSidePoints+i]
	}
	return s.Mirrored(x.static[s].pts[i])
}

// StaticCommonPoint returns the place in V of a point of neither side, by its
// index in Kind.CommonPoints, in the static position of the candidate.
func (x *Axle) StaticCommonPoint(i int) Vec { return x.static[0].pts[axleLinks+i] }

// staticWheel sets out to a wheel in the static position, as a left one.
func (x *Axle) staticWheel(s Side, out *wheelPose) {
	var q state
	if x.beam != nil {
		at := x.beam.poseOf(&q)
		x.beam.wheelOf(&at, int(s), out)
		return
	}
	at := x.corners[s].poseOf(&q, 0)
	x.corners[s].wheelOf(&at, out)
}

// Hold returns the setpoints that the axle was assembled to hold.
func (x *Axle) Hold() Hold { return x.hold }
