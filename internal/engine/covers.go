package engine

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// CoversOptions say what is asked of which car. The zero value takes what the study says.
type CoversOptions struct {
	Candidate string   `json:"candidate,omitzero"` // where empty, that of the study's yield, else the base car
	Limit     *float64 `json:"limit,omitzero"`     // degrees; nil is that of the study's yield
	Figure    string   `json:"figure,omitzero"`    // "peak" or "rms"; where empty, that of the study's yield, else "peak"
	By        string   `json:"by,omitzero"`        // parameters with commas between; where empty, the set-up's
}

// CoversResult is what [Covers] returns: lengths in the file's units, angles in degrees.
type CoversResult struct {
	Units     study.Units `json:"units"`
	Candidate string      `json:"candidate"`
	Window    Window      `json:"window"`
	Figure    string      `json:"figure"` // "peak" or "rms" of toe change less target
	Limit     float64     `json:"limit"`
	Is        Number      `json:"is"` // the figure of the car as it stands, the worse wheel's; none where it has none
	Covers    []Cover     `json:"covers"`
}

// Cover is the whole interval of one parameter, about the car's own value, within which the
// figure of the worse wheel stays within the limit, everything else as it stands.
type Cover struct {
	Parameter string `json:"parameter"`
	Own       Number `json:"own"` // of a setting that both wheels have, the mean of theirs
	// Low and High are the ends, none where the limit is not held at Own.
	Low      Number   `json:"low"`
	High     Number   `json:"high"`
	LowEnd   string   `json:"lowEnd,omitzero"` // "limit", "lock" or, where it was looked no further, "bound"
	HighEnd  string   `json:"highEnd,omitzero"`
	AtLow    *CoverAt `json:"atLow,omitzero"`
	AtHigh   *CoverAt `json:"atHigh,omitzero"`
	LowLink  string   `json:"lowLink,omitzero"` // what is in the way at a lock
	HighLink string   `json:"highLink,omitzero"`
	Problem  string   `json:"problem,omitzero"` // why there is no interval
}

// CoverAt is the wheel and the travel that decide at an end.
type CoverAt struct {
	Travel float64 `json:"travel"`
	Side   string  `json:"side"`
}

// coveredSetUp are the parameters that are asked about where none are named.
var coveredSetUp = []string{"caster", "camber", "rideHeight", "tyreRadius", "lowerBallJointHeight", "upperBallJointHeight"}

// Covers returns which set-ups a car's parts serve: for each parameter the interval within
// which the figure stays within the limit over the study's travel.
func Covers(ctx context.Context, d *study.Document, o CoversOptions) (*CoversResult, error) {
	c, err := newCoverer(d, &o)
	if err != nil {
		return nil, err
	}
	free, err := c.parameters(o.By)
	if err != nil {
		return nil, err
	}
	out := &CoversResult{
		Units: d.Units, Candidate: c.car.name, Window: Window(c.window),
		Figure: c.measure.String(), Limit: c.limit, Is: none,
	}
	for i := range free {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		one, is, err := c.cover(&free[i])
		if err != nil {
			return nil, err
		}
		out.Is = is
		out.Covers = append(out.Covers, one)
	}
	return out, nil
}

// coverer asks which set-ups a car serves.
type coverer struct {
	*sweeper
	car     car
	judge   optimize.Judge
	measure optimize.Measure
	limit   float64 // degrees
}

func newCoverer(d *study.Document, o *CoversOptions) (*coverer, error) {
	sweep, err := newSweeper(d, d.Window(), "")
	if err != nil {
		return nil, err
	}
	c := &coverer{sweeper: sweep}
	if err := c.resolveTarget(); err != nil {
		return nil, err
	}
	y, limit, err := yieldAsked(d, o.Candidate, o.Figure, o.Limit)
	switch {
	case err != nil:
		return nil, err
	case limit == nil:
		return nil, wrongf("limit", "is missing: give --limit in degrees, or state yield.limit")
	}
	c.limit, c.measure = *limit, measureOf(y.Figure)
	if c.car, err = c.byName(y.Candidate); err != nil {
		return nil, err
	}
	c.judge, err = c.judging(c.car, "")
	return c, err
}

// parameters returns those named, with commas between, or those of the set-up that the car
// has; their bounds are the registry's.
func (c *coverer) parameters(by string) (out []optimize.Free, err error) {
	keys := coveredSetUp
	if by != "" {
		keys = strings.Split(by, ",")
	}
	for _, key := range keys {
		p, sides, err := solver.FindParameter(c.design, strings.TrimSpace(key))
		if err != nil && by == "" {
			continue // a car without it
		}
		if err != nil {
			return nil, wrongf("by", "%s", bare(err))
		}
		if slices.ContainsFunc(out, func(f optimize.Free) bool { return f.Parameter.Key == p.Key && f.Sides == sides }) {
			return nil, wrongf("by", "names %s twice", key)
		}
		out = append(out, optimize.Free{Parameter: p, Sides: sides, Min: p.Min, Max: p.Max})
	}
	return out, nil
}

// cover returns the interval of one parameter, and the figure at the car's own value.
func (c *coverer) cover(f *optimize.Free) (Cover, Number, error) {
	own, err := c.own(f)
	if err != nil {
		return Cover{}, none, err
	}
	out := Cover{Parameter: f.Key(), Own: Number(c.doc.FromSolver(f.Parameter, own)), Low: none, High: none}
	ask := optimize.Covers{
		Judge: c.judge, Changes: c.car.axle.Changes(), Free: *f, Own: own,
		Limit: solver.Deg(c.limit), Measure: c.measure,
	}
	found, err := ask.Find()
	if err != nil {
		return out, none, explain(err, "")
	}
	is := degrees(found.Own.Of(c.measure).Radians())
	if !found.Held {
		out.Problem = c.notHeld(is)
		return out, is, nil
	}
	out.Low, out.LowEnd, out.AtLow, out.LowLink = c.coverEnd(f, &ask, &found.Low)
	out.High, out.HighEnd, out.AtHigh, out.HighLink = c.coverEnd(f, &ask, &found.High)
	return out, is, nil
}

// notHeld says why there is no interval about a car with a figure.
func (c *coverer) notHeld(is Number) string {
	if !is.Valid() {
		return "the car as it stands does not reach the window"
	}
	return fmt.Sprintf("the car as it stands has a %s of %.4f deg, more than the limit of %g deg", c.measure, float64(is), c.limit)
}

// own returns the value that the car has of a parameter, as package solver has it: that of
// its changes, of a setting without one what the car stands at. Where the sides differ it is
// the mean of both.
func (c *coverer) own(f *optimize.Free) (float64, error) {
	if err := c.move(c.car, Attitude{}); err != nil {
		return 0, err
	}
	sum, n := 0.0, 0.0
	for _, side := range solver.Sides {
		if f.Sides.Includes(side) {
			sum, n = sum+c.ownOf(&f.Parameter, side), n+1
		}
	}
	return sum / n, nil
}

func (c *coverer) ownOf(p *solver.Parameter, side solver.Side) float64 {
	for _, change := range c.car.axle.Changes() {
		if change.Parameter.Key == p.Key && change.Sides.Includes(side) {
			return change.Value
		}
	}
	for _, at := range c.curves[side].Positions {
		if at.Travel == 0 && p.Absolute {
			return map[string]float64{"toe": at.Toe.Radians(), "camber": at.Camber.Radians(), "caster": at.Caster.Radians()}[p.Key]
		}
	}
	return 0
}

// coverEnd returns an end of an interval in the file's units, and what is in the way where
// it is a lock.
func (c *coverer) coverEnd(f *optimize.Free, ask *optimize.Covers, e *optimize.CoverEnd) (value Number, by string, at *CoverAt, link string) {
	value, by = Number(c.doc.FromSolver(f.Parameter, e.Value)), e.By.String()
	at = &CoverAt{c.length(e.Travel), e.Side.String()}
	if e.By == optimize.AtLock {
		link = c.linkAt(ask, e.Beyond)
	}
	return value, by, at, link
}

// linkAt returns what keeps the car from the window, or from being built, with the
// parameter at a value.
func (c *coverer) linkAt(ask *optimize.Covers, x float64) string {
	axle, err := c.base.Assemble(ask.ChangesAt(x), ask.Hold)
	if err != nil {
		return bare(err)
	}
	if err := c.move(car{c.car.name, axle}, Attitude{}); err != nil {
		return bare(err)
	}
	for _, side := range solver.Sides {
		if r := c.reach(&c.curves[side].Reach); r != nil {
			return r.Link
		}
	}
	return ""
}
