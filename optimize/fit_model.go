package optimize

import (
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// gaugeModel is the [Model] of gauge readings and of what a tape measured beside them: its variables are the unknowns of a fit;
// its residuals are (zero + gauge - reading) over the repeatability, sets one after the
// other, and then those of the tape's measures. A zero that is not known is the one that suits the set's readings in use best at
// the unknowns' values, so that runs share nothing but the car: the work grows with the
// readings, not with readings by zeros.
type gaugeModel struct {
	base     *solver.Assembler
	sets     []ReadingSet
	unknowns []Unknown
	seeds    []solver.Change
	used     []bool    // by reading
	loss     nlp.Loss  // by which the zeros suit; nil is squares
	zeros    []float64 // by set: at the values evaluated last, mm
	setups   []gaugeSetup
	size     nlp.Size
	firsts   []int // the first row of each set
	tape     *tapeRows

	ctx     context.Context // of who waits: looked at for each set-up
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

func newGaugeModel(ctx context.Context, p *GaugeFit, us []Unknown) *gaugeModel {
	m := &gaugeModel{ctx: ctx, base: p.Base, sets: p.Sets, unknowns: us, seeds: seedsOf(us), ws: solver.NewWorkspace()}
	m.size.Variables = len(us)
	for i := range p.Sets {
		m.add(i)
	}
	m.tape = newTapeRows(p.Taped, us, m.size.Residuals)
	m.size.Residuals += len(m.tape.measures)
	m.zeros = make([]float64, len(p.Sets))
	m.used = make([]bool, m.size.Residuals)
	for i := range m.used {
		m.used[i] = true
	}
	return m
}

// add gives set i its rows.
func (m *gaugeModel) add(i int) {
	s := &m.sets[i]
	m.firsts = append(m.firsts, m.size.Residuals)
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

// sides selects those that were read.
func (s *gaugeSetup) sides() solver.Selection {
	if len(s.runs) == 1 {
		return only(s.runs[0].side)
	}
	return solver.BothSides
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
func (m *gaugeModel) Size() nlp.Size { return m.size }

// Evaluate implements [Model]. It returns false where a car cannot be assembled
// or does not reach a travel that was read.
func (m *gaugeModel) Evaluate(x []float64, v *nlp.Values) bool {
	if m.evaluate(x, v) != nil {
		return false
	}
	for row, used := range m.used {
		if !used {
			v.R[row] = 0
			if v.JR != nil {
				clear(v.JR.RawRowView(row))
			}
		}
	}
	return true
}

// evaluate is [gaugeModel.Evaluate] of all readings, those not in use among them.
func (m *gaugeModel) evaluate(x []float64, v *nlp.Values) error {
	if err := m.predict(x, v); err != nil {
		return err
	}
	for i := range m.sets {
		m.zeros[i] = m.sets[i].known()
		if m.sets[i].Zero == nil {
			m.zeros[i] = m.suit(i, v) * m.sets[i].Repeatability
		}
	}
	m.tape.write(x, v)
	return nil
}

// suit moves the residuals of a set to the zero that suits it best, and their
// derivatives with it. It returns that zero in units of the repeatability.
func (m *gaugeModel) suit(set int, v *nlp.Values) float64 {
	first, end := m.span(set)
	weights := make([]float64, end-first)
	at := m.location(v.R[first:end], m.used[first:end], weights)
	for i := first; i < end; i++ {
		v.R[i] -= at
	}
	if v.JR == nil {
		return -at
	}
	shared, sum := make([]float64, len(m.unknowns)), 0.0
	for i, w := range weights {
		floats.AddScaled(shared, w, v.JR.RawRowView(first+i))
		sum += w
	}
	for i := first; i < end; i++ {
		floats.AddScaled(v.JR.RawRowView(i), -1/sum, shared)
	}
	return -at
}

const (
	// locationSteps are enough for a robust mean: each leaves a small part of the error.
	locationSteps = 100
	// locationRounding is the step, in standard deviations of a reading, that is none.
	locationRounding = 1e-13
)

// location returns the value that suits residuals in use best, by the model's loss, and
// sets the weight that each has in it: the mean, or from the median on that with the
// weights that the loss gives.
func (m *gaugeModel) location(r []float64, used []bool, weights []float64) float64 {
	var in []float64
	for i := range r {
		if weights[i] = 0; used[i] {
			weights[i], in = 1, append(in, r[i])
		}
	}
	if m.loss == nil {
		return mean(in)
	}
	at := nlp.Quantiles(in, 0.5)[0]
	for range locationSteps {
		sum, total := 0.0, 0.0
		for i := range r {
			if used[i] {
				_, weights[i] = m.loss.Rho((r[i] - at) * (r[i] - at))
				sum += weights[i] * r[i]
				total += weights[i]
			}
		}
		next := sum / total
		if math.Abs(next-at) <= locationRounding {
			return next
		}
		at = next
	}
	return at
}

// predict sets residuals and derivatives with every unknown zero at 0.
func (m *gaugeModel) predict(x []float64, v *nlp.Values) error {
	if v.JR != nil {
		v.JR.Zero()
	}
	for i := range m.setups {
		if err := m.ctx.Err(); err != nil {
			return err
		}
		s := &m.setups[i]
		car, err := m.base.AssembleSides(s.sides(), carOf(m.base, s.changes, m.unknowns, x), solver.HoldAll)
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
	return nlp.ProblemErrorf("the %s side locks at %.4g mm of %s: %s ends it", s, at, way, r.Link())
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
func (m *gaugeModel) write(r *gaugeRun, x []float64, v *nlp.Values) {
	c := &m.curves[r.side]
	for i := range r.rows {
		for _, row := range r.rows[i] {
			m.writeRow(row, c, i, r.travels[i], x, v)
		}
	}
}

func (m *gaugeModel) writeRow(at gaugeRow, c *solver.Curve, i int, travel float64, x []float64, v *nlp.Values) {
	s := &m.sets[at.set]
	toe := c.Positions[i].Toe
	gain := m.gain(s, travel, x)
	v.R[at.row] = (s.known() + gain + s.Gauge.Reading(toe, s.Base) - s.Readings[at.reading].Value) / s.Repeatability
	if v.JR == nil {
		return
	}
	row := v.JR.RawRowView(at.row)
	m.rates(row, c, i, s.Side, s.rate(toe, s.Base)/s.Repeatability)
	if k := m.slope(s.Side); k >= 0 {
		row[k] = s.leans() * travel / s.Repeatability
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
