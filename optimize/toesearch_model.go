package optimize

import (
	"toewright/solver"

	"toewright/optimize/nlp"
)

// toeModel is the [Model] of toe changes: its residuals are, for each scenario,
// each wheel moved and each travel, the toe change less the target, in radians.
type toeModel struct {
	base      *solver.Assembler
	free      []Free
	scenarios []Scenario
	limits    []Limit
	wheels    []solver.Side // moved
	targets   [2]Target
	travels   []float64
	zero      int // index of travel 0 among travels

	ws      *solver.Workspace
	car     solver.Axle // swept last
	limited solver.Axle // held against the limits last
	curves  [2]solver.Curve
	seeds   []solver.Change
	ranges  []LimitRange // of all scenarios, measured last
	exact   []bool       // of the limits' rows: their derivatives need no differences
	slopes  []float64
	buffer  []solver.Change
	cars    int   // assembled so far
	fault   error // why the car swept last did not get to travel 0; nil where it did
}

func newToeModel(p *ToeSearch) *toeModel {
	m := &toeModel{
		base: p.Base, free: p.Free, scenarios: p.scenarios(), limits: p.Limits, wheels: p.wheels(),
		targets: p.Targets, travels: p.Travels, zero: indexOfZero(p.Travels),
		ws: solver.NewWorkspace(),
	}
	for i := range p.Free {
		m.seeds = append(m.seeds, solver.Change{Parameter: p.Free[i].Parameter, Sides: p.Free[i].Sides})
	}
	return m
}

// indexOfZero returns where travel 0 stands, or -1.
func indexOfZero(travels []float64) int {
	for i, t := range travels {
		if t == 0 {
			return i
		}
	}
	return -1
}

// Size implements [Model].
func (m *toeModel) Size() nlp.Size {
	s := nlp.Size{Variables: len(m.free), Residuals: len(m.scenarios) * len(m.wheels) * len(m.travels)}
	for i := range m.limits {
		s.Limits += len(m.scenarios) * m.limits[i].rows()
	}
	return s
}

// Evaluate implements [Model]. It returns false where a car cannot be assembled
// or does not reach the whole window.
func (m *toeModel) Evaluate(x []float64, v *nlp.Values) bool {
	return m.residuals(x, v) && m.writeLimits(x, v)
}

// residuals is Evaluate without the limits.
func (m *toeModel) residuals(x []float64, v *nlp.Values) bool {
	row := 0
	for i := range m.scenarios {
		if !m.sweep(&m.scenarios[i], x, v.JR != nil) {
			return false
		}
		for _, s := range m.wheels {
			m.write(s, row, v)
			row += len(m.travels)
		}
	}
	return true
}

// changes returns those of a scenario and of the variables.
func (m *toeModel) changes(s *Scenario, x []float64) []solver.Change {
	m.buffer = append(m.buffer[:0], s.Changes...)
	for i := range m.free {
		m.buffer = append(m.buffer, m.free[i].change(x[i]))
	}
	return m.buffer
}

// sweep moves the car of a scenario through the window. It returns false where the car does not
// reach all of that.
func (m *toeModel) sweep(s *Scenario, x []float64, rates bool) bool {
	m.cars++
	car := &m.car
	sides := selectionOf(m.wheels)
	if m.fault = m.base.Reassemble(car, sides, m.changes(s, x), s.Hold, nil); m.fault != nil {
		return false
	}
	in := solver.SweepInput{ToeOnly: true, Travels: m.travels, Motion: s.Motion, From: s.From, Sides: sides}
	if rates {
		if in.By, m.fault = car.Tangents(m.seeds); m.fault != nil {
			return false
		}
	}
	if m.fault = car.Sweep(m.ws, &in, &m.curves); m.fault != nil {
		return false
	}
	for _, side := range m.wheels {
		if !m.curves[side].Reach.Whole() {
			return false
		}
	}
	return true
}

// write sets the residuals of one side's curve from row on.
func (m *toeModel) write(s solver.Side, row int, v *nlp.Values) {
	c := &m.curves[s]
	home := c.Positions[m.zero].Toe
	for i, p := range c.Positions {
		v.R[row+i] = float64(p.Toe - home - m.targets[s].At(p.Travel))
		if v.JR == nil {
			continue
		}
		for k := range m.free {
			v.JR.Set(row+i, k, c.ToeRate(i, k)-c.ToeRate(m.zero, k))
		}
	}
}
