package solver

import (
	"fmt"
	"math"
)

// SteerInput says which steering inputs [Axle.Steer] takes.
type SteerInput struct {
	Inputs []float64 // mm or radians, ascending; see [Gear]
	// At is the heave and roll at which the wheels are steered; its Steer is
	// left out of account.
	At Attitude
	// Joints asks for the angles of these joints.
	Joints *Joints
}

// SteerPoint is an axle at one steering input.
type SteerPoint struct {
	Input float64
	// Wheel are the wheels' steer angles from straight ahead, positive to the
	// left: static toe is left out.
	Wheel [2]Angle
	// Rate are their exact derivatives by the input, in radians per mm or per
	// radian, negative for a gear whose positive input steers to the right.
	Rate [2]float64
	// Position says all else of each wheel; its Travel is the wheel's own.
	Position [2]Position
}

// Turn returns the turn that the wheels are steered into.
func (p *SteerPoint) Turn() Turn { return NewTurn(p.Wheel) }

// MeanRate returns the mean of the wheels' rates.
func (p *SteerPoint) MeanRate() float64 { return (p.Rate[Left] + p.Rate[Right]) / 2 }

// SteerCurve is what [Axle.Steer] returns: the points reached, ascending.
type SteerCurve struct {
	Points []SteerPoint
	Reach  SteerReach
}

// SteerReach says where the steering locks within the inputs asked for.
type SteerReach struct {
	Lo, Hi SteerEnd
}

// SteerEnd is one end of the steering's reach.
type SteerEnd struct {
	Locked bool
	Input  float64 // at the lock, mm or radians
	Side   Side
	Link   string // that stands in the way
	Unsure bool   // the linkage could not be followed, though no lock was found
}

// gearLock names the gear itself as what stands in the way.
const gearLock = "centre link and idler arm in line"

// Steer moves the gear through the inputs of in, the wheels held at their travels,
// and sets out to what both wheels do. It allocates nothing where out has room.
// Inputs beyond a lock of either side are left out and Reach says so.
func (x *Axle) Steer(ws *Workspace, in *SteerInput, out *SteerCurve) error {
	out.Points, out.Reach = resizePoints(out.Points, len(in.Inputs)), SteerReach{}
	if err := x.needsGear(); err != nil {
		return err
	}
	for _, u := range in.Inputs {
		if math.IsNaN(u) || math.IsInf(u, 0) {
			return &InputError{"steer", "is not a number"}
		}
	}
	r := steerRun{x: x, ws: ws, in: in, out: out}
	r.first, r.end = r.within(x.steerReach())
	for _, s := range Sides {
		if err := r.run(s); err != nil {
			return err
		}
	}
	n := copy(out.Points, out.Points[r.first:r.end])
	out.Points = out.Points[:n]
	return nil
}

func (x *Axle) needsGear() error {
	if x.gear.Kind == NoGear {
		return &InputError{"steer", "is asked of an axle without steering"}
	}
	return nil
}

func resizePoints(ps []SteerPoint, n int) []SteerPoint {
	if cap(ps) < n {
		return make([]SteerPoint, n)
	}
	return ps[:n]
}

// steerRun steers both sides, one after the other. Points from first up to end
// have been reached by all sides so far.
type steerRun struct {
	x          *Axle
	ws         *Workspace
	in         *SteerInput
	out        *SteerCurve
	first, end int
}

// within returns which inputs the gear itself allows, and says which end locks.
func (r *steerRun) within(lo, hi float64) (first, end int) {
	in := r.in.Inputs
	for end = len(in); end > 0 && !(in[end-1] < hi); end-- {
		r.out.Reach.Hi = SteerEnd{Locked: true, Input: hi, Link: gearLock}
	}
	for first = 0; first < end && !(in[first] > lo); first++ {
		r.out.Reach.Lo = SteerEnd{Locked: true, Input: lo, Link: gearLock}
	}
	return first, end
}

// run steers side s outward from straight ahead, to both locks. The first side of
// a solid axle takes the other along.
func (r *steerRun) run(s Side) error {
	x, ws := r.x, r.ws
	if x.beam != nil && s == Right {
		return nil
	}
	sys, err := x.startSteer(ws, r.in.At, s)
	if err != nil {
		return err
	}
	straight := x.straight(ws, r.in.At, s)
	inputs := r.in.Inputs[r.first:r.end]
	base, zero := r.first, splitAtZero(inputs)
	visit := func(i int, u float64) { r.visit(s, base+i, u, straight) }
	up := x.follow(ws, sys, inputs[zero:], 1, func(i int, u float64) { visit(zero+i, u) })
	down := x.follow(ws, sys, inputs[:zero], -1, visit)
	r.first, r.end = base+zero-down.count, base+zero+up.count
	r.out.Reach.Hi.lock(x, s, up.end)
	r.out.Reach.Lo.lock(x, s, down.end)
	return nil
}

// lock records what ended a run, if anything did: it ended before what had been
// recorded, as later runs go no farther.
func (e *SteerEnd) lock(x *Axle, s Side, d *deadlock) {
	if d != nil {
		*e = SteerEnd{Locked: true, Input: d.s, Side: s, Link: x.steerLink(s, d.link), Unsure: d.lost}
	}
}

// visit sets point i to where the tracer stands.
func (r *steerRun) visit(s Side, i int, input float64, straight [2]Angle) {
	p := &r.out.Points[i]
	p.Input = input
	r.x.steerPoint(r.ws, r.in, s, straight, p)
}

// SteerLockError reports a wheel angle that the steering does not reach.
type SteerLockError struct {
	Side  Side
	Wheel Angle // asked for, positive to the left
	Lock  Angle // reached
	Input float64
	Link  string // what stands in the way
}

func (e *SteerLockError) Error() string {
	return fmt.Sprintf("solver: %s wheel: steering stops at %.4g deg, short of %.4g deg: %s stands in the way",
		e.Side, e.Lock.Degrees(), e.Wheel.Degrees(), e.Link)
}
