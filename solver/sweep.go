package solver

import (
	"fmt"
	"math"
)

// Motion says which wheels move along a sweep.
type Motion uint8

// The motions of an axle. In a roll the left wheel takes +travel and the right
// one -travel, which is a negative roll of the body by ISO 8855.
const (
	BothWheels Motion = iota
	LeftWheel
	RightWheel
	RollMotion
)

var motionNames = [...]string{"both", "left", "right", "roll"}

// String returns the name of the motion.
func (m Motion) String() string { return motionNames[m] }

// ParseMotion returns the motion called name.
func ParseMotion(name string) (Motion, error) {
	for i, n := range motionNames {
		if n == name {
			return Motion(i), nil
		}
	}
	return 0, &InputError{"motion", fmt.Sprintf("is %q; use both, left, right or roll", name)}
}

// rates returns the travel of each wheel by that asked for.
func (m Motion) rates() [2]float64 {
	return [...][2]float64{{1, 1}, {1, 0}, {0, 1}, {1, -1}}[m]
}

// Attitude is where a sweep starts from: the axle's heave in mm, bump positive,
// the body's roll by ISO 8855 (positive when its left side is up) as the travel
// of the right wheel less that of the left, halved, in mm, and the steering input
// in mm or radians.
type Attitude struct {
	Heave, Roll, Steer float64
}

// travel returns the travel of a wheel in the attitude, mm.
func (a Attitude) travel(s Side) float64 {
	if s == Left {
		return a.Heave - a.Roll
	}
	return a.Heave + a.Roll
}

// SweepInput says which positions a sweep takes.
type SweepInput struct {
	// Travels are the travels asked for, mm, ascending.
	Travels []float64
	Motion  Motion
	From    Attitude
	// Sides restricts the sweep; a solid axle always moves whole.
	Sides Selection
	// By asks for the derivatives of the toe by these parameters of the axle, and
	// with them by the travel and the steering input.
	By *Tangents
	// ToeOnly leaves out all results but travel, toe and what By asks for: enough
	// for searches and series, which look at many cars.
	ToeOnly bool
	// Ground asks for scrub radius, trail, half-track and wheelbase change too.
	Ground bool
	// Instant asks for exact rates, instant centres and roll-centre heights.
	Instant bool
	// Joints asks for the angles of these joints.
	Joints *Joints
	// RestOnly restricts Ground, Instant and Joints to the position at travel 0: enough
	// for [NewFigures], and a third of the time.
	RestOnly bool
}

// fully reports whether all that is asked for is asked at a travel.
func (in *SweepInput) fully(travel float64) bool { return !in.RestOnly || travel == 0 }

// Curve is what a sweep returns of one side: the positions reached, ascending.
type Curve struct {
	Positions []Position
	Reach     Reach
	rates     []float64 // by position: each parameter, the travel, the steering
	columns   int       // of rates
}

// Rest returns the position at travel 0, from where toe change counts; nil where there is
// none.
func (c *Curve) Rest() *Position {
	if i := homeOf(c.Positions); i >= 0 {
		return &c.Positions[i]
	}
	return nil
}

// ToeRate returns the derivative of the toe of position i by parameter k of the
// sweep's By, in radians by mm, or by radian for an angle. It is NaN exactly at a
// lock, where the toe has none.
func (c *Curve) ToeRate(i, k int) float64 { return c.rates[i*c.columns+k] }

// ToeTravelRate returns the derivative of the toe of position i by the travel
// asked of the sweep, in radians by mm. Like [Curve.ToeRate] it belongs to a
// sweep with By, which may be of no parameters.
func (c *Curve) ToeTravelRate(i int) float64 { return c.row(i)[c.columns-2] }

// ToeSteerRate returns likewise the derivative of the toe of position i by the
// steering input, in radians by mm of a rack or by radian of a pitman arm.
func (c *Curve) ToeSteerRate(i int) float64 { return c.row(i)[c.columns-1] }

// row returns the derivatives of position i.
func (c *Curve) row(i int) []float64 { return c.rates[i*c.columns : (i+1)*c.columns] }

// fillRates sets the derivatives of position i to v.
func (c *Curve) fillRates(i int, v float64) {
	for k := range c.row(i) {
		c.row(i)[k] = v
	}
}

// reserve makes room for n positions, each with a number of derivatives.
func (c *Curve) reserve(n, columns int) {
	c.Positions = resize(c.Positions, n)
	c.columns = columns
	if cap(c.rates) < n*columns {
		c.rates = make([]float64, n*columns)
	}
	c.rates = c.rates[:n*columns]
}

// trim leaves the positions from first up to end.
func (c *Curve) trim(first, end int) {
	copy(c.rates, c.rates[first*c.columns:])
	c.rates = c.rates[:(end-first)*c.columns]
	copy(c.Positions, c.Positions[first:end])
	c.Positions = c.Positions[:end-first]
}

// rateColumns returns the number of derivatives of each position: by the
// parameters, the travel and the steering.
func (in *SweepInput) rateColumns() int {
	if in.By == nil {
		return 0
	}
	return in.By.Len() + 2
}

// Grid returns the travels from -droop to bump in mm, ascending: the multiples of step
// and both ends of the window, whatever the step. It returns an error where there are
// none or more than a million.
func Grid(bump, droop, step float64) ([]float64, error) {
	if !(bump >= 0 && droop >= 0) || math.IsInf(bump, 0) || math.IsInf(droop, 0) {
		return nil, &InputError{"travel", fmt.Sprintf("bump %.4g mm and droop %.4g mm must be 0 or more", bump, droop)}
	}
	if !(step > 0) || !((bump+droop)/step <= maxGrid) {
		return nil, &InputError{"travel.step", fmt.Sprintf("is %.4g mm: must be positive and give at most %d positions", step, maxGrid)}
	}
	below, above := gridSteps(droop, step), gridSteps(bump, step)
	out := make([]float64, 0, below+1+above)
	for k := -below; k <= above; k++ {
		out = append(out, float64(k)*step)
	}
	if below > 0 {
		out[0] = -droop
	}
	if above > 0 {
		out[below+above] = bump
	}
	return out, nil
}

// gridSteps returns the number of steps, the last of which may be a shorter one, from 0
// to the end of a window in a [Grid].
func gridSteps(end, step float64) int { return int(math.Ceil(end/step - gridSlack)) }

const (
	maxGrid = 1_000_000
	// gridSlack keeps the last step of a window that is a whole number of steps
	// but for rounding.
	gridSlack = 1e-9
)

// Sweep moves the axle through the travels of in and sets out to what each side
// does. It allocates nothing where out has room. Where the linkage locks, the
// positions before the lock are returned and Reach says where and why; an error
// means that not even the start can be reached.
func (x *Axle) Sweep(ws *Workspace, in *SweepInput, out *[2]Curve) error {
	for _, s := range Sides {
		out[s].Positions = out[s].Positions[:0]
		out[s].Reach = Reach{}
	}
	if in.By != nil && in.By.axle != x {
		return &InputError{"derivatives", "are asked by the tangents of another axle"}
	}
	if err := x.checkSteer(in.From.Steer); err != nil {
		return err
	}
	if x.beam != nil {
		return x.sweepBeam(ws, in, out)
	}
	for _, s := range Sides {
		if !in.Sides.Includes(s) {
			continue
		}
		if err := x.sweepCorner(ws, in, s, &out[s]); err != nil {
			return err
		}
	}
	return nil
}

// checkSteer refuses a steering input that the gear itself cannot follow.
func (x *Axle) checkSteer(steer float64) error {
	if steer == 0 {
		return nil
	}
	if x.gear.Kind == NoGear {
		return &InputError{"steer", "is asked of an axle without steering"}
	}
	if math.IsNaN(steer) || math.IsInf(steer, 0) {
		return &InputError{"steer", "is not a number"}
	}
	if b := x.bar(); b == nil || b.clear(steer) {
		return nil
	}
	lo, hi := x.steerReach()
	if !(steer > lo && steer < hi) {
		return &InputError{"steer", fmt.Sprintf("%.4g deg is beyond the gear's lock: centre link and idler arm come in line at %.4g and %.4g deg",
			Angle(steer).Degrees(), Angle(lo).Degrees(), Angle(hi).Degrees())}
	}
	return nil
}
