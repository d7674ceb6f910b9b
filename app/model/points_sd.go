package model

import (
	"cmp"
	"errors"
	"slices"
	"strings"

	"toewright/internal/study"
	"toewright/solver"
)

// PointSD writes by how much a fit of readings takes the coordinates of a point to be off, one
// standard deviation: what the study states, else what is usual for a tape. "" is said of a
// template's, which nobody measured, of one that the fit holds for exact, and of a mount.
func PointSD(d *study.Document, p *PointRow) string {
	if p.at != nil {
		return ""
	}
	var each [3]string
	for axis := range each {
		each[axis] = coordinateSD(d, p, axis)
	}
	if each[0] == each[1] && each[1] == each[2] {
		return each[0]
	}
	for axis := range each {
		each[axis] = cmp.Or(each[axis], "–")
	}
	return strings.Join(each[:], " ")
}

func coordinateSD(d *study.Document, p *PointRow, axis int) string {
	n := NumbersOf(d)
	switch {
	case IsTheirs(d, p, axis):
		return ""
	case d.Priors == nil && ofGear(p):
		return "" // straight ahead it does nothing
	case d.Priors == nil:
		return n.TravelNumber(solver.CoordinateTolerance)
	}
	for _, prior := range d.Priors {
		key, side, _ := strings.Cut(prior.Parameter, "@")
		if key == p.Name+"."+axisName(axis) && (side == "" || side == string(p.Side)) {
			return n.TravelNumber(d.Units.Millimetres(prior.SD))
		}
	}
	return ""
}

// ofGear reports whether a point is of the steering gear.
func ofGear(p *PointRow) bool {
	return slices.ContainsFunc(solver.GearPoints, func(h solver.Hardpoint) bool { return h.Name == p.Name })
}

// errNegativeSD is what a standard deviation below 0 is refused with.
var errNegativeSD = errors.New("a standard deviation is 0, which is exact, or more")

// HasPointSD reports whether a standard deviation can be stated for a point: mounts have none, of a
// template's nobody knows it, and where a tape has been used its measures say how well the points
// are known.
func HasPointSD(d *study.Document, p *PointRow) bool {
	return p.at == nil && len(d.Measures()) == 0 && !IsTheirs(d, p, 0) && !IsTheirs(d, p, 1) && !IsTheirs(d, p, 2)
}

// PointSDNumber is what the field of a point's standard deviation holds: 0 of one that is exact,
// nothing where its coordinates differ in it.
func PointSDNumber(d *study.Document, p *PointRow) string {
	sd := PointSD(d, p)
	if strings.Contains(sd, " ") {
		return ""
	}
	return cmp.Or(sd, "0")
}

// TypePointSD states by how much the coordinates of a point may be off, one standard deviation in
// the length that is shown; 0 or nothing is exact. What the study said nothing of keeps what is
// usual, which is then stated too: where a study states one, all others are exact.
func (s *Session) TypePointSD(p PointRow, text string) error {
	mm := 0.0
	if text = strings.TrimSpace(text); text != "" {
		var err error
		if mm, err = NumbersOf(s.doc).ParseLength(text); err != nil {
			return err
		}
	}
	if !(mm >= 0) {
		return errNegativeSD
	}
	return s.edit("how well "+strings.ToLower(p.Label)+" is known", "", func(d *study.Document) {
		if d.Priors == nil {
			d.Priors = usualPriors(d, s.Cars().Design)
		}
		for axis := range GridColumns {
			statePrior(d, p.Name+"."+axisName(axis), p.Side, d.Units.FromMillimetres(mm))
		}
	}, s.from(study.FromTyping))
}

// ForgetSDs goes back to what is usual for all points.
func (s *Session) ForgetSDs() error {
	return s.edit("points as well known as is usual", "", func(d *study.Document) { d.Priors = nil }, s.from(""))
}

// usualPriors states what a fit takes where a study states none.
func usualPriors(d *study.Document, design *solver.Design) (list []study.Prior) {
	for _, q := range solver.Parameters(design) {
		if q.Coordinate() && !q.OfGear() {
			list = append(list, study.Prior{Parameter: q.Key, SD: d.FromSolver(q, q.Tolerance)})
		}
	}
	return list
}

// statePrior states the standard deviation of a coordinate, in file units; 0 is exact. Of a car
// whose right side has its own points it is that of one side: what was said of both stays of the
// other, unless they are off alike.
func statePrior(d *study.Document, key string, side study.Side, sd float64) {
	state := study.Prior{Parameter: key, SD: sd}
	list := []study.Prior{} // none stated is not the usual ones: all are exact
	for _, q := range d.Priors {
		of, at, _ := strings.Cut(q.Parameter, "@")
		switch {
		case of != key:
			list = append(list, q)
		case q.Shared:
			state.Shared = true
		case d.Suspension.Right == nil || side == "" || at == string(side):
		default:
			q.Parameter = key + "@" + string(otherSide(side))
			list = append(list, q)
		}
	}
	if d.Suspension.Right != nil && side != "" && !state.Shared {
		state.Parameter += "@" + string(side)
	}
	if sd > 0 {
		list = append(list, state)
	}
	d.Priors = list
}

func otherSide(side study.Side) study.Side {
	if side == study.Left {
		return study.Right
	}
	return study.Left
}
