package engine

import (
	"math"
	"slices"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// leastShare is the share of the mean square that is worth naming: a twentieth of the
// curve.
const leastShare = 0.0025

// why explains the sides that the mender judges. The candidate is nil of the base car.
func (m *mender) why(car *study.Candidate) WhySide {
	out := WhySide{Side: sideNames[m.selection], Causes: []Cause{}}
	served, problem := m.residuals(nil)
	if out.Problem = problem; served == nil {
		for i := range m.list {
			out.SetUps = append(out.SetUps, WhySetUp{m.list[i].Name, none})
		}
		return out
	}
	worst := math.Inf(-1)
	for i, r := range served {
		out.SetUps = append(out.SetUps, WhySetUp{m.list[i].Name, m.peak(r)})
		if score := m.o.Value(r); score > worst {
			worst, out.Decides = score, i
		}
	}
	shape := solver.NewCurveShape(m.grid.mm, m.worseWheel(served[out.Decides]))
	height, across := solver.MendingParts(m.design)
	for _, c := range []struct {
		shape string
		part  solver.ShapePart
		keys  []string
	}{
		{SlopeShape, shape.Slope, []string{height}},
		{CurvatureShape, shape.Curvature, []string{across, height}},
		{RestShape, shape.Remainder, nil},
	} {
		if c.part.Share > leastShare {
			out.Causes = append(out.Causes, m.cause(c.shape, c.part.Share, c.keys, served, car))
		}
	}
	slices.SortStableFunc(out.Causes, func(a, b Cause) int { return int(math.Copysign(1, float64(b.Share-a.Share))) })
	return out
}

// worseWheel returns the residuals of the wheel whose are larger.
func (m *mender) worseWheel(residuals []float64) []float64 {
	var worse []float64
	most := solver.Angle(-1)
	for wheel := range slices.Chunk(residuals, len(m.grid.mm)) {
		if rms := optimize.CarFigures(wheel, 1).RMS; rms > most {
			worse, most = wheel, rms
		}
	}
	return worse
}

// peak returns the largest residual of a set-up, degrees.
func (m *mender) peak(residuals []float64) Number {
	return Number(optimize.CarFigures(residuals, len(m.sides)).Peak.Degrees())
}

// cause returns a cause with the moves of some parameters that mend it.
func (m *mender) cause(shape string, share float64, keys []string, served [][]float64, car *study.Candidate) Cause {
	c := Cause{Shape: shape, Share: Number(share), Wants: []Number{}, Moves: []WhyMove{}, Peaks: []Number{}}
	parts := m.parts(keys)
	if len(parts) == 0 {
		return c
	}
	exact := m.best(parts, everySetUp)
	made, bounds, outside := m.made(parts, exact)
	after, _ := m.residuals(moved(parts, made))
	if after == nil {
		return c
	}
	if wants := m.wants(parts[:1]); shape == SlopeShape && m.pullApart(wants, served, after) {
		for _, w := range wants {
			c.Wants = append(c.Wants, Number(m.file(parts[0], w)))
		}
		return c
	}
	for i, p := range parts {
		move := WhyMove{Parameter: p.Key(), Exact: Number(m.file(p, exact[i])), Made: Number(m.file(p, made[i])), Low: none, High: none,
			Total: Number(m.file(p, m.total(p)+made[i])), Outside: outside && i == 0}
		if i == 0 && bounds[0] <= bounds[1] {
			move.Low, move.High = Number(m.file(p, bounds[0])), Number(m.file(p, bounds[1]))
		}
		c.Moves = append(c.Moves, move)
	}
	if !worthMaking(made) || !(m.value(after) < m.value(served)) {
		return c
	}
	c.Changes = m.changed(car, parts, made)
	for _, r := range after {
		c.Peaks = append(c.Peaks, m.peak(r))
	}
	return c
}

// worthMaking reports whether any part is moved.
func worthMaking(made []float64) bool {
	return slices.ContainsFunc(made, func(x float64) bool { return math.Abs(x) > leastMade })
}

// leastMade is the least move that is one, mm.
const leastMade = 0.005

// worthIt is how much of the score a move must take away to be one where the set-ups want
// moves in different directions.
const worthIt = 0.1

// pullApart reports whether the set-ups want the ball moved in different directions and no
// one move serves them much better than none.
func (m *mender) pullApart(wants []float64, before, after [][]float64) bool {
	if len(wants) < 2 {
		return false
	}
	least := max(m.step()/2, leastMade)
	if slices.Max(wants) < least || slices.Min(wants) > -least {
		return false
	}
	was := m.value(before)
	return was-m.value(after) < worthIt*was
}

// changed returns what a car changes once it has moves beside its own changes.
func (m *mender) changed(car *study.Candidate, parts []solver.Change, values []float64) study.Changes {
	out := study.Changes{}
	if car != nil {
		for key, value := range car.Changes {
			out[key] = value
		}
	}
	for i, p := range parts {
		m.add(out, &p, m.file(p, values[i]))
	}
	return out
}

// add adds a move to the changes of a car, which may state the parameter for both sides at
// once or for each by itself.
func (m *mender) add(out study.Changes, p *solver.Change, by float64) {
	plain, key := p.Parameter.Key, p.Key()
	left, right := plain+solver.LeftOnly.Suffix(), plain+solver.RightOnly.Suffix()
	both, ok := out[plain]
	if _, l := out[left]; !l && key == plain {
		if _, r := out[right]; !r {
			out[plain] += by
			return
		}
	}
	if ok { // for one side from now on
		delete(out, plain)
		out[left], out[right] = both, both
	}
	for _, k := range []string{left, right} {
		if key == k || key == plain {
			out[k] += by
		}
	}
}
