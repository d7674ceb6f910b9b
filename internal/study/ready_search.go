package study

import (
	"fmt"
	"strings"
)

// ReadyToSearch returns an error that names the key where the study has no search
// or one that cannot run: no variables, bounds without room, a target that is no
// function of travel, limits without a bound.
func (d *Document) ReadyToSearch() error {
	s := d.Search
	if s == nil {
		return problemf("search", "missing; state variables with their bounds").err()
	}
	return first(
		func() *problem { return windowProblem("search.window", d.SearchWindow()) },
		s.variablesProblem,
		func() *problem { return d.targetProblem() },
		func() *problem { return curveProblem("search.target", s.Target) },
		func() *problem { return curveProblem("search.targetRight", s.TargetRight) },
		s.weightsProblem, s.scenariosProblem, d.steeredProblem, d.limitsProblem, s.percentileProblem,
	).err()
}

// variablesProblem refuses variables that are none, stand twice or have no room.
func (s *Search) variablesProblem() *problem {
	if len(s.Variables) == 0 {
		return problemf("search.variables", "none given; free at least one parameter")
	}
	seen := map[string]bool{}
	for i, v := range s.Variables {
		path := fmt.Sprintf("search.variables.%d", i)
		if seen[v.Parameter] {
			return problemf(path+".parameter", "%s is a variable already", v.Parameter)
		}
		seen[v.Parameter] = true
		if p := boundsProblem(path, v.Min, v.Max); p != nil {
			return p
		}
		if v.Grid > 0 && len(v.Sizes) > 0 {
			return problemf(path+".sizes", "want either grid or sizes")
		}
	}
	return nil
}

// targetProblem refuses a target that is stated twice or is the curve of no car.
func (d *Document) targetProblem() *problem {
	s, stated := d.Search, 0
	for _, given := range [3]bool{len(s.Target) > 0 || len(s.TargetRight) > 0, s.TargetOf != "", s.TargetSlope != 0} {
		if given {
			stated++
		}
	}
	switch {
	case stated > 1:
		return problemf("search", "states the target more than once; want target, targetOf or targetSlope")
	case s.TargetOf == "" || s.TargetOf == BaseName || d.Candidate(s.TargetOf) != nil:
		return nil
	}
	return problemf("search.targetOf", "no candidate is called %.60q", s.TargetOf)
}

// curveProblem refuses a curve whose travel does not grow from point to point.
func curveProblem(path string, curve [][2]float64) *problem {
	for i := 1; i < len(curve); i++ {
		if !(curve[i][0] > curve[i-1][0]) {
			return problemf(fmt.Sprintf("%s.%d", path, i), "travel %g does not follow %g; list the points by growing travel", curve[i][0], curve[i-1][0])
		}
	}
	return nil
}

// weightsProblem refuses weights with a negative one or with none above 0.
func (s *Search) weightsProblem() *problem {
	largest := 0.0
	for i, point := range s.Weights {
		if !(point[1] >= 0) {
			return problemf(fmt.Sprintf("search.weights.%d.1", i), "want a weight of 0 or more, got %g", point[1])
		}
		largest = max(largest, point[1])
	}
	if len(s.Weights) > 0 && !(largest > 0) {
		return problemf("search.weights", "all are 0; give at least one travel a weight")
	}
	return curveProblem("search.weights", s.Weights)
}

// scenariosProblem refuses scenarios none of which counts.
func (s *Search) scenariosProblem() *problem {
	total := 0.0
	for i := range s.Scenarios {
		total += s.Scenarios[i].Counts()
	}
	if len(s.Scenarios) > 0 && !(total > 0) {
		return problemf("search.scenarios", "all weights are 0; give at least one a weight")
	}
	return nil
}

// steeredProblem refuses a set-up that is steered on an axle that is not.
func (d *Document) steeredProblem() *problem {
	for i := range d.Search.Scenarios {
		c := &d.Search.Scenarios[i]
		if a := c.Attitude; a != nil && a.Steer != 0 && c.Counts() > 0 && (d.Steering == nil || d.Steering.Type == NoGear) {
			return problemf(fmt.Sprintf("search.scenarios.%d.attitude.steer", i), "is %g on an axle without steering; leave it out, or state the gear in steering", a.Steer)
		}
	}
	return nil
}

// percentileProblem refuses what is not a percentage of cars; 0 stands for none.
func (s *Search) percentileProblem() *problem {
	if !(s.Percentile < 100) {
		return problemf("search.percentile", "want less than 100, got %g", s.Percentile)
	}
	return nil
}

// limitsProblem refuses limits that cannot be judged.
func (d *Document) limitsProblem() *problem {
	for i := range d.Search.Limits {
		if p := d.limitProblem(i); p != nil {
			return p
		}
	}
	return nil
}

// ReadyToLimit returns an error that names the key where limit i of the search cannot
// be judged as it is stated: it has no bound, is a clearance that does not say from
// what, cannot be at lock (see [Document.LimitAtLock]), is of a part that the car does not
// have, or the study lacks what it needs.
func (d *Document) ReadyToLimit(i int) error {
	return first(func() *problem { return d.limitProblem(i) }, func() *problem { return d.needProblem(i) }).err()
}

func (d *Document) limitProblem(i int) *problem {
	l, path := d.Bounded(&d.Search.Limits[i]), fmt.Sprintf("search.limits.%d", i)
	return first(
		func() *problem { return l.boundProblem(path) },
		func() *problem { return l.placeProblem(path) },
		func() *problem { return d.lockProblem(i) },
	)
}

// needProblem refuses a limit of a part that the car does not have, or for which the
// study lacks something.
func (d *Document) needProblem(i int) *problem {
	l, path := &d.Search.Limits[i], fmt.Sprintf("search.limits.%d", i)
	k, _ := KindOfLimit(l.Result)
	if !d.Has(k) {
		part := "drag link"
		if k.Face {
			part = "bolted steering arm"
		}
		return problemf(path+".result", "%s is of the %s, which a %s does not have", l.Result, part, d.Suspension.Type)
	}
	for _, p := range ClearParts {
		if p.Key == l.Of && p.SolidAxle && !d.HasDragLink() {
			return problemf(path+".of", "%s is a part that a %s does not have", l.Of, d.Suspension.Type)
		}
	}
	for _, n := range k.needs {
		if !n.stated(d) {
			return problemf(n.key, "is missing: the limit on %s needs %s", l.Result, n.what)
		}
	}
	if k.Loaded {
		return d.loadProblem()
	}
	return nil
}

// LoadLacks names what a figure of loads needs and the study does not state, "" where it is
// all there or the car has no such part.
func (d *Document) LoadLacks(k *LimitKind) string {
	for _, n := range k.needs {
		if d.Has(k) && !n.stated(d) {
			return n.what
		}
	}
	return ""
}

// LimitAtLock returns an error that names the key where limit i of the search states
// "at" and cannot: its result is not looked at through the travel, or the study states
// no steering lock.
func (d *Document) LimitAtLock(i int) error { return d.lockProblem(i).err() }

func (d *Document) lockProblem(i int) *problem {
	l, path := &d.Search.Limits[i], fmt.Sprintf("search.limits.%d.at", i)
	switch g := d.Steering; {
	case l.At == "":
		return nil
	case l.Result == "turningCircle":
		return problemf(path, "is not for turningCircle, which is taken at full lock as it is; leave it out")
	case !l.Travels():
		return problemf(path, "is for %s, which are looked at through the travel, not for %s; leave it out", travelling(), l.Result)
	case l.At != AtLock:
		return nil
	case g == nil || g.Type == NoGear:
		return problemf(path, "asks for full lock of an axle without a steering gear; leave it out")
	case g.Lock == 0:
		return problemf(path, "asks for full lock, which the study does not state; state steering.lock, the most steering input to either side")
	}
	return nil
}

func (l *Limit) boundProblem(path string) *problem {
	switch {
	case l.Min == nil && l.Max == nil:
		return problemf(path, "want min, max or both%s", l.boundElsewhere())
	case l.Min != nil && l.Max != nil:
		return boundsProblem(path, *l.Min, *l.Max)
	}
	return nil
}

// travelling lists the results that are looked at through the travel.
func travelling() string {
	var keys []string
	for _, k := range LimitKinds {
		if k.Travels {
			keys = append(keys, string(k.Key))
		}
	}
	last := len(keys) - 1
	return strings.Join(keys[:last], ", ") + " and " + keys[last]
}

// boundElsewhere says where else a bound may stand: see [Document.Bounded].
func (l *Limit) boundElsewhere() string {
	k, ok := KindOfLimit(l.Result)
	switch {
	case !ok || k.own.of == nil:
		return ""
	case k.own.least:
		return "; " + k.own.key + " would stand for min"
	}
	return "; " + k.own.key + " would stand for max"
}

func (l *Limit) placeProblem(path string) *problem {
	from := 0
	for _, stated := range [3]bool{l.Plane != nil, l.Rim != nil, l.Link != nil} {
		if stated {
			from++
		}
	}
	switch {
	case l.Result != Clearance && (l.Of != "" || from > 0):
		return problemf(path, `"of", "plane", "rim" and "link" belong to the result %q, not to %q`, Clearance, l.Result)
	case l.Result != Clearance:
		return nil
	case l.Of == "" || from != 1:
		return problemf(path, `a clearance states "of" and either "plane", "rim" or "link"`)
	case l.Plane != nil && l.Plane.Normal == (Vec3{}):
		return problemf(path+".plane.normal", "has no direction")
	}
	return nil
}
