package optimize

import (
	"fmt"

	"toewright/solver"
)

// FitPrior says how well a parameter of a car was known before any reading.
type FitPrior struct {
	Parameter solver.Parameter
	Sides     solver.Selection
	SD        float64 // standard deviation, mm or radians
	// Shared says that both sides are off alike; else each by itself.
	Shared bool
}

// Unknown is what a fit looks for: by how much a parameter of the car differs
// from the file, in mm or radians, or an error of how the readings were taken.
type Unknown struct {
	Parameter solver.Parameter // of a CarUnknown
	Sides     solver.Selection
	SD        float64 // standard deviation before the readings
	Kind      UnknownKind
	// Mark and Axis are the mark of the tape, and its coordinate from 0 to 2, of a
	// MarkUnknown.
	Mark, Axis int
}

// UnknownKind is what an unknown is about.
type UnknownKind uint8

// The kinds of unknowns.
const (
	CarUnknown UnknownKind = iota
	// TravelZeroUnknown is what has to be added to the travels read on a side, mm.
	TravelZeroUnknown
	// SteerZeroUnknown is where the steering stood when it was called straight
	// ahead, mm of a rack or radians of a pitman arm.
	SteerZeroUnknown
	// GaugeSlopeUnknown is what the gauge of a side gains with travel, length by length.
	GaugeSlopeUnknown
	// MarkUnknown is how far a mark of the tape stands from where it was put, mm.
	MarkUnknown
)

// Key names the unknown: the parameter's key, "travelZero", "steerZero" or
// "gaugeSlope", with the side it is restricted to; "mark.0.x" is of the tape's first mark.
func (u *Unknown) Key() string {
	switch u.Kind {
	case TravelZeroUnknown:
		return "travelZero" + u.Sides.Suffix()
	case SteerZeroUnknown:
		return "steerZero"
	case GaugeSlopeUnknown:
		return "gaugeSlope" + u.Sides.Suffix()
	case MarkUnknown:
		return fmt.Sprintf("mark.%d%s", u.Mark, axes[u.Axis])
	}
	return u.Parameter.Key + u.Sides.Suffix()
}

// unknowns returns what a fit looks for, those of the car first.
func (p *GaugeFit) unknowns() []Unknown {
	read := p.sidesRead()
	var us []Unknown
	for _, prior := range p.priors() {
		for _, sides := range p.sidesOf(prior, read) {
			us = append(us, Unknown{Parameter: prior.Parameter, Sides: sides, SD: prior.SD})
		}
	}
	if p.TravelZero > 0 {
		for _, s := range read {
			us = append(us, Unknown{Sides: only(s), SD: p.TravelZero, Kind: TravelZeroUnknown})
		}
	}
	if p.SteerZero > 0 {
		us = append(us, Unknown{SD: p.SteerZero, Kind: SteerZeroUnknown})
	}
	for _, s := range read {
		if sd := p.slopeSD(s); sd > 0 {
			us = append(us, Unknown{Sides: only(s), SD: sd, Kind: GaugeSlopeUnknown})
		}
	}
	if p.Taped != nil {
		us = append(us, p.Taped.unknowns()...)
	}
	return us
}

// slopeSD returns the standard deviation of the slope of a side's gauge: the largest
// stated by its runs.
func (p *GaugeFit) slopeSD(side solver.Side) float64 {
	sd := 0.0
	for i := range p.Sets {
		if s := &p.Sets[i]; s.Side == side {
			sd = max(sd, s.SlopeSD)
		}
	}
	return sd
}

// only selects one side.
func only(s solver.Side) solver.Selection {
	if s == solver.Right {
		return solver.RightOnly
	}
	return solver.LeftOnly
}

// sidesOf returns the selections for which a prior is an unknown of its own: the
// sides that were read, or both where one side of a solid axle moves the other.
func (p *GaugeFit) sidesOf(prior FitPrior, read []solver.Side) []solver.Selection {
	if prior.Shared || !prior.Parameter.Sided() {
		return []solver.Selection{prior.Sides}
	}
	if p.solid() {
		read = solver.Sides[:]
	}
	var out []solver.Selection
	for _, s := range read {
		if prior.Sides.Includes(s) {
			out = append(out, only(s))
		}
	}
	return out
}

// priors returns those given, or by default those of a car measured by tape:
// every coordinate of every hardpoint with the registry's tolerance. The points
// of the gear are among them only where the steering may be off centre, since
// straight ahead they do nothing.
func (p *GaugeFit) priors() []FitPrior {
	if p.Priors != nil {
		return p.Priors
	}
	var out []FitPrior
	for _, q := range solver.Parameters(p.Base.Design()) {
		if q.Coordinate() && (p.SteerZero > 0 || !q.OfGear()) {
			out = append(out, FitPrior{Parameter: q, SD: q.Tolerance})
		}
	}
	return out
}

// solid reports whether the car has a solid axle: common points make one.
func (p *GaugeFit) solid() bool { return len(p.Base.Design().Kind.CommonPoints) > 0 }

// sidesRead returns the sides that have readings.
func (p *GaugeFit) sidesRead() []solver.Side {
	var out []solver.Side
	for _, s := range solver.Sides {
		for i := range p.Sets {
			if p.Sets[i].Side == s {
				out = append(out, s)
				break
			}
		}
	}
	return out
}

// carOf returns the changes of a car with parts fitted that is off by the values
// x of the unknowns.
func carOf(base *solver.Assembler, parts []solver.Change, us []Unknown, x []float64) []solver.Change {
	out := append(make([]solver.Change, 0, len(parts)+len(us)), parts...)
	for k := range us {
		u := &us[k]
		if u.Kind != CarUnknown {
			continue
		}
		c := solver.Change{Parameter: u.Parameter, Sides: u.Sides, Value: x[k]}
		if u.Parameter.Absolute {
			c.Value += settingIn(base, out, &c)
		}
		out = append(out, c)
	}
	return out
}

// seedsOf returns the changes by which the unknowns of the car are derivatives.
func seedsOf(us []Unknown) []solver.Change {
	var out []solver.Change
	for k := range us {
		if us[k].Kind == CarUnknown {
			out = append(out, solver.Change{Parameter: us[k].Parameter, Sides: us[k].Sides})
		}
	}
	return out
}
