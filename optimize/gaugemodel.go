package optimize

import (
	"slices"

	"toewright/solver"
)

// gaugeModel is the [Model] of gauge readings: its variables are the unknowns of
// a fit, then the zero of each set that has an unknown one; its residuals are
// (zero + gauge - reading) over the repeatability, sets one after the other.
type gaugeModel struct {
	base     *solver.Assembler
	sets     []ReadingSet
	unknowns []Unknown
	seeds    []solver.Change
	zeros    []int  // by set: the variable that is its zero; -1 where it is known
	used     []bool // by reading
	setups   []gaugeSetup
	size     Size

	ws      *solver.Workspace
	curves  [2]solver.Curve
	travels []float64
}

// gaugeSetup is a car as it stood when some of the sets were read.
type gaugeSetup struct {
	changes []solver.Change
	runs    []gaugeRun
}

// gaugeRun is what one sweep of one side serves.
type gaugeRun struct {
	side    solver.Side
	travels []float64    // ascending
	rows    [][]gaugeRow // by travel
}

// gaugeRow says which reading of which set is a row of the model.
type gaugeRow struct{ set, reading, row int }

func newGaugeModel(p *GaugeFit, us []Unknown) *gaugeModel {
	m := &gaugeModel{base: p.Base, sets: p.Sets, unknowns: us, seeds: seedsOf(us), ws: solver.NewWorkspace()}
	m.size.Variables = len(us)
	for i := range p.Sets {
		m.add(i)
	}
	m.used = make([]bool, m.size.Residuals)
	for i := range m.used {
		m.used[i] = true
	}
	return m
}

// add gives set i its zero and its rows.
func (m *gaugeModel) add(i int) {
	s := &m.sets[i]
	m.zeros = append(m.zeros, -1)
	if s.Zero == nil {
		m.zeros[i] = m.size.Variables
		m.size.Variables++
	}
	run := m.setup(s.Changes).run(s.Side)
	for k, r := range s.Readings {
		run.add(r.Travel, gaugeRow{set: i, reading: k, row: m.size.Residuals})
		m.size.Residuals++
	}
}

// setup returns the set-up with the given changes.
func (m *gaugeModel) setup(changes []solver.Change) *gaugeSetup {
	for i := range m.setups {
		if sameChanges(m.setups[i].changes, changes) {
			return &m.setups[i]
		}
	}
	m.setups = append(m.setups, gaugeSetup{changes: changes})
	return &m.setups[len(m.setups)-1]
}

// sameChanges reports whether two lists change the same, in whatever order.
func sameChanges(a, b []solver.Change) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if !slices.ContainsFunc(b, func(c solver.Change) bool { return c.Key() == a[i].Key() && c.Value == a[i].Value }) {
			return false
		}
	}
	return true
}

// run returns the run of a side.
func (s *gaugeSetup) run(side solver.Side) *gaugeRun {
	for i := range s.runs {
		if s.runs[i].side == side {
			return &s.runs[i]
		}
	}
	s.runs = append(s.runs, gaugeRun{side: side})
	return &s.runs[len(s.runs)-1]
}

// add puts a row at its travel.
func (r *gaugeRun) add(travel float64, row gaugeRow) {
	i, found := slices.BinarySearch(r.travels, travel)
	if !found {
		r.travels = slices.Insert(r.travels, i, travel)
		r.rows = slices.Insert(r.rows, i, nil)
	}
	r.rows[i] = append(r.rows[i], row)
}

// Size implements [Model].
func (m *gaugeModel) Size() Size { return m.size }

// Evaluate implements [Model]. It returns false where a car cannot be assembled
// or does not reach a travel that was read.
func (m *gaugeModel) Evaluate(x []float64, v *Values) bool { return m.evaluate(x, v) == nil }

func (m *gaugeModel) evaluate(x []float64, v *Values) error {
	if v.JR != nil {
		v.JR.Zero()
	}
	for i := range m.setups {
		s := &m.setups[i]
		car, err := m.base.Assemble(carOf(m.base, s.changes, m.unknowns, x), solver.HoldAll)
		if err != nil {
			return err
		}
		var by *solver.Tangents
		if v.JR != nil {
			if by, err = car.Tangents(m.seeds); err != nil {
				return err
			}
		}
		for k := range s.runs {
			if err := m.move(car, by, &s.runs[k], x); err != nil {
				return err
			}
			m.write(&s.runs[k], x, v)
		}
	}
	return nil
}

// move sweeps the car of a run.
func (m *gaugeModel) move(car *solver.Axle, by *solver.Tangents, r *gaugeRun, x []float64) error {
	off, steer := m.offsets(r.side, x)
	m.travels = m.travels[:0]
	for _, t := range r.travels {
		m.travels = append(m.travels, t+off)
	}
	in := solver.SweepInput{Travels: m.travels, Sides: only(r.side), By: by, From: solver.Attitude{Steer: steer}}
	if err := car.Sweep(m.ws, &in, &m.curves); err != nil {
		return err
	}
	if reach := m.curves[r.side].Reach; !reach.Whole() {
		return reachProblem(r.side, &reach)
	}
	return nil
}

// reachProblem says where a side's travel ends.
func reachProblem(s solver.Side, r *solver.Reach) error {
	way, at := "bump", r.Bump
	if r.DroopEnds && (!r.BumpEnds || r.Droop < r.Bump) {
		way, at = "droop", r.Droop
	}
	return problemErrorf("the %s side locks at %.4g mm of %s: %s ends it", s, at, way, r.Link())
}

// offsets returns the errors of the travel's zero and of the steering's centre.
func (m *gaugeModel) offsets(s solver.Side, x []float64) (travel, steer float64) {
	for k := range m.unknowns {
		switch u := &m.unknowns[k]; {
		case u.Kind == TravelZeroUnknown && u.Sides.Includes(s):
			travel = x[k]
		case u.Kind == SteerZeroUnknown:
			steer = x[k]
		}
	}
	return travel, steer
}

// write sets the rows of a run from the curve just swept.
func (m *gaugeModel) write(r *gaugeRun, x []float64, v *Values) {
	c := &m.curves[r.side]
	for i := range r.rows {
		for _, row := range r.rows[i] {
			m.writeRow(row, c, i, r.travels[i], x, v)
		}
	}
}

func (m *gaugeModel) writeRow(at gaugeRow, c *solver.Curve, i int, travel float64, x []float64, v *Values) {
	if !m.used[at.row] {
		v.R[at.row] = 0
		return
	}
	s := &m.sets[at.set]
	toe := c.Positions[i].Toe
	gain := m.gain(s, travel, x)
	v.R[at.row] = (m.zero(at.set, x) + gain + s.Gauge.Reading(toe, s.Base) - s.Readings[at.reading].Value) / s.Repeatability
	if v.JR == nil {
		return
	}
	row := v.JR.RawRowView(at.row)
	m.rates(row, c, i, s.Side, s.rate(toe, s.Base)/s.Repeatability)
	if k := m.slope(s.Side); k >= 0 {
		row[k] = s.leans() * travel / s.Repeatability
	}
	if z := m.zeros[at.set]; z >= 0 {
		row[z] = 1 / s.Repeatability
	}
}

// slope returns the unknown that is the slope of a side's gauge; -1 where there is none.
func (m *gaugeModel) slope(side solver.Side) int {
	for k := range m.unknowns {
		if u := &m.unknowns[k]; u.Kind == GaugeSlopeUnknown && u.Sides.Includes(side) {
			return k
		}
	}
	return -1
}

// gain returns what the slope of the gauge adds to a reading, mm, at a travel as read.
func (m *gaugeModel) gain(s *ReadingSet, travel float64, x []float64) float64 {
	k := m.slope(s.Side)
	if k < 0 {
		return 0
	}
	return s.leans() * travel * x[k]
}

// zero returns the zero of a set.
func (m *gaugeModel) zero(set int, x []float64) float64 {
	if z := m.zeros[set]; z >= 0 {
		return x[z]
	}
	return *m.sets[set].Zero
}

// rates sets the derivatives by the unknowns at position i of a curve, times
// gain.
func (m *gaugeModel) rates(row []float64, c *solver.Curve, i int, s solver.Side, gain float64) {
	car := 0
	for k := range m.unknowns {
		switch u := &m.unknowns[k]; {
		case u.Kind == CarUnknown:
			row[k] = gain * c.ToeRate(i, car)
			car++
		case u.Kind == TravelZeroUnknown && u.Sides.Includes(s):
			row[k] = gain * c.ToeTravelRate(i)
		case u.Kind == SteerZeroUnknown:
			row[k] = gain * c.ToeSteerRate(i)
		}
	}
}
