package study

import "fmt"

// ReadyToSweep returns an error, a [*strictjson.Error] that names the key, where
// the study's window of travel is none, or a direction has none.
func (d *Document) ReadyToSweep() error {
	if p := windowProblem("travel", d.Window()); p != nil {
		return p.err()
	}
	return d.directionProblem().err()
}

// directionProblem refuses a stud's or a joint's axis of no length: it would be taken for one
// that is not stated, or every rod for one in line with it.
func (d *Document) directionProblem() *problem {
	none := func(v *Vec3) bool { return v != nil && *v == (Vec3{}) }
	for _, side := range sides {
		if side == Right && d.Suspension.Right == nil {
			continue
		}
		if none(d.Suspension.Corner(side).StudAxis) {
			return problemf(d.sidePath(side)("studAxis"), "has no direction; state a vector such as [0, 0, 1], or leave it out")
		}
	}
	rods := [...]struct {
		key string
		rod *TieRod
	}{{"tieRod", d.TieRod}, {"dragLink", d.DragLink}}
	for _, r := range rods {
		if r.rod == nil {
			continue
		}
		if b := r.rod.InnerBall; b != nil && none(b.Axis) {
			return problemf(r.key+".innerBall.axis", "has no direction; state a vector such as [0, 1, 0], or leave it out")
		}
		if b := r.rod.OuterBall; b != nil && none(b.Axis) {
			return problemf(r.key+".outerBall.axis", "has no direction; state a vector such as [0, 0, 1], or leave it out")
		}
	}
	return nil
}

// maxPositions is the most positions of a window. It is far finer than any gauge.
const maxPositions = 2000

// windowProblem refuses a window with no travel or with too many positions.
func windowProblem(path string, w Travel) *problem {
	if w.Bump == 0 && w.Droop == 0 {
		return problemf(path, "bump and droop are both 0; give the travel to look at")
	}
	if n := w.steps(); !(n < maxPositions) {
		return problemf(path+".step", "%g makes %.0f positions, want at most %d; use a larger step", w.Step, n+1, maxPositions)
	}
	return nil
}

// ReadyToFit returns an error that names the key where there is nothing to fit, a
// prior stands twice or the advice has no room.
func (d *Document) ReadyToFit() error {
	return first(d.readingsProblem, d.priorsProblem, d.adviseProblem).err()
}

// maxReadings is the most readings of a study: far more than anyone takes.
const maxReadings = 20_000

func (d *Document) readingsProblem() *problem {
	count := 0
	if p := d.runsProblem("readings", d.Readings, &count); p != nil {
		return p
	}
	if count == 0 {
		return problemf("readings", "none to fit; enter travel and gauge readings first")
	}
	return nil
}

// runsProblem refuses a reading that is longer than its gauge, and more readings than there
// may be, those counted before among them.
func (d *Document) runsProblem(path string, list []Reading, count *int) *problem {
	for i, r := range list {
		if *count += len(r.Values); *count > maxReadings {
			return problemf(fmt.Sprintf("%s.%d.values", path, i), "more than %d readings", maxReadings)
		}
		if k := r.tooLong(); k >= 0 {
			return problemf(fmt.Sprintf("%s.%d.values.%d", path, i, k), "%g %s is longer than the %s's base of %g %s, which no toe reads; correct the reading or the base",
				r.Values[k][1], d.Units, r.Gauge, r.Base, d.Units)
		}
	}
	return nil
}

// ReadyForSeries returns an error that names the key where no car of the series was read, a
// reading cannot be, or a prior stands twice.
func (d *Document) ReadyForSeries() error {
	return first(d.seriesProblem, d.priorsProblem, d.yieldProblem).err()
}

func (d *Document) seriesProblem() *problem {
	count := 0
	for i := range d.Series {
		if p := d.runsProblem(fmt.Sprintf("series.%d.readings", i), d.Series[i].Readings, &count); p != nil {
			return p
		}
	}
	if count == 0 {
		return problemf("series", "no car of it was read; enter each car with its readings first")
	}
	return nil
}

func (d *Document) priorsProblem() *problem {
	seen := map[string]bool{}
	for i, v := range d.Priors {
		if seen[v.Parameter] {
			return problemf(fmt.Sprintf("priors.%d.parameter", i), "%s has a prior already", v.Parameter)
		}
		seen[v.Parameter] = true
	}
	return nil
}

func (d *Document) adviseProblem() *problem {
	if d.Advise == nil {
		return nil
	}
	return boundsProblem("advise", d.Advise.Min, d.Advise.Max)
}

// ReadyForTolerance returns an error that names the key where there are no
// tolerances, one has no width or two, or the yield is asked of no candidate.
func (d *Document) ReadyForTolerance() error {
	return first(d.tolerancesProblem, d.yieldProblem).err()
}

func (d *Document) tolerancesProblem() *problem {
	if len(d.Tolerances) == 0 {
		return problemf("tolerances", "none given; state by how much parts and places may be off")
	}
	for i, t := range d.Tolerances {
		if (t.PlusMinus == 0) == (t.SD == 0) {
			return problemf(fmt.Sprintf("tolerances.%d", i), "want either plusMinus or sd")
		}
	}
	return nil
}

func (d *Document) yieldProblem() *problem {
	if d.Yield == nil {
		return nil
	}
	name := d.Yield.Candidate
	if name == "" || name == BaseName || d.Candidate(name) != nil {
		return nil
	}
	return problemf("yield.candidate", "no candidate is called %.60q", name)
}

// BaseName is the name by which the car as the file gives it is asked for.
const BaseName = "base"

// Candidate returns the first candidate of a name, or nil.
func (d *Document) Candidate(name string) *Candidate {
	for i := range d.Candidates {
		if d.Candidates[i].Name == name {
			return &d.Candidates[i]
		}
	}
	return nil
}

// boundsProblem refuses bounds that leave no room.
func boundsProblem(path string, lo, hi float64) *problem {
	if !(lo < hi) {
		return problemf(path+".max", "want more than min %g, got %g", lo, hi)
	}
	return nil
}
