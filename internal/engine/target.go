package engine

import (
	"cmp"
	"fmt"

	"slices"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// targets returns the wanted toe changes of both sides, flat where a study has
// none.
func targets(d *study.Document) [2]optimize.Target {
	var t [2]optimize.Target
	if d.Search == nil {
		return t
	}
	t[solver.Left] = target(d, d.Search.Target)
	t[solver.Right] = t[solver.Left]
	if d.Search.TargetRight != nil {
		t[solver.Right] = target(d, d.Search.TargetRight)
	}
	return t
}

// target returns a curve of the study in mm and radians.
func target(d *study.Document, points [][2]float64) optimize.Target {
	var t optimize.Target
	for _, p := range points {
		t.Travel = append(t.Travel, d.Units.Millimetres(p[0]))
		t.Change = append(t.Change, solver.Deg(p[1]))
	}
	return t
}

// newJudge is [newSweeper] over the window of the search, whose target is points
// from then on.
func newJudge(d *study.Document, motion string) (*sweeper, error) {
	s, err := newSweeper(d, d.SearchWindow(), motion)
	if err != nil {
		return nil, err
	}
	return s, s.resolveTarget()
}

// newJudged is [newJudge] with the car of a name; the base car, where name is empty.
func newJudged(d *study.Document, name string) (s *sweeper, c car, err error) {
	if s, err = newJudge(d, ""); err != nil {
		return nil, c, err
	}
	c, err = s.byName(cmp.Or(name, study.BaseName))
	return s, c, err
}

// TargetCurves is the wanted toe change of both wheels as points of travel and
// degrees.
type TargetCurves struct {
	Left  [][2]float64 `json:"left"`
	Right [][2]float64 `json:"right"`
}

// targetCurves returns the target as resolved.
func (s *sweeper) targetCurves() *TargetCurves {
	f := s.doc.Search
	if f == nil || f.Target == nil && f.TargetRight == nil {
		return nil
	}
	t := &TargetCurves{Left: f.Target, Right: f.Target}
	if f.TargetRight != nil {
		t.Right = f.TargetRight
	}
	return t
}

// resolveTarget puts points in the place of a target that is a slope or the curve
// of a car.
func (s *sweeper) resolveTarget() error {
	f := s.doc.Search
	if f == nil || f.TargetOf == "" && f.TargetSlope == 0 {
		return nil
	}
	d, search := *s.doc, *f
	if f.TargetOf == "" {
		w := s.window
		search.Target = [][2]float64{{-w.Droop, -w.Droop * f.TargetSlope}, {w.Bump, w.Bump * f.TargetSlope}}
	} else {
		var err error
		if search.Target, search.TargetRight, err = s.curveOf(f.TargetOf); err != nil {
			return err
		}
	}
	search.TargetOf, search.TargetSlope = "", 0
	d.Search, s.doc = &search, &d
	return nil
}

// curveOf returns the toe change of both wheels of a car over the window; of the
// right one only where it is not the same.
func (s *sweeper) curveOf(name string) (left, right [][2]float64, err error) {
	car, err := s.named("search.targetOf", name)
	if err != nil {
		return nil, nil, err
	}
	if err := s.move(car, Attitude{}); err != nil {
		return nil, nil, err
	}
	var out [2][][2]float64
	for _, side := range solver.Sides {
		c := &s.curves[side]
		if !c.Reach.Whole() {
			return nil, nil, wrongf("search.targetOf", "%.60q does not reach the window: %s ends it; make the window smaller", name, c.Reach.Link())
		}
		home := c.Positions[len(s.grid.below())].Toe
		for i, p := range c.Positions {
			out[side] = append(out[side], [2]float64{s.grid.file[i], (p.Toe - home).Degrees()})
		}
	}
	if slices.Equal(out[solver.Left], out[solver.Right]) {
		out[solver.Right] = nil
	}
	return out[solver.Left], out[solver.Right], nil
}

// withTarget returns a study whose search has the target that the options name in
// place of its own; the study itself where they name none.
func (o *SearchOptions) withTarget(d *study.Document) *study.Document {
	if d.Search == nil || o.TargetOf == "" && o.TargetSlope == nil {
		return d
	}
	out, search := *d, *d.Search
	search.Target, search.TargetRight = nil, nil
	search.TargetOf, search.TargetSlope = o.TargetOf, 0
	if o.TargetSlope != nil {
		search.TargetSlope = *o.TargetSlope
	}
	out.Search = &search
	return &out
}

// targetNote says what no car can meet: a target that has no point within the window,
// of which only the nearest value counts, or that is not 0 at travel 0, from where toe
// change counts.
func (s *sweeper) targetNote() string {
	t := s.targetCurves()
	if t == nil {
		return ""
	}
	unit, w := s.doc.Units, s.window
	for _, points := range [2][][2]float64{t.Left, t.Right} {
		if len(points) == 0 {
			continue
		}
		low, high := points[0][0], points[len(points)-1][0]
		if high < -w.Droop || low > w.Bump {
			return fmt.Sprintf("the target's points, from %g to %g %s of travel, lie outside the window of %g %s of droop to %g %s of bump: its nearest value holds everywhere; are they in the file's units?",
				low, high, unit, w.Droop, unit, w.Bump, unit)
		}
		if at := interpolate(points, 0); at != 0 {
			return fmt.Sprintf("the target is %.4g deg at travel 0, where the toe change of every car is 0: subtract it from all points", at)
		}
	}
	return ""
}
