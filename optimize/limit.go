package optimize

import (
	"fmt"
	"math"
	"slices"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// Limit bounds a result of a car that a search must respect.
type Limit struct {
	Name string // as messages name it
	// Min and Max bound the result; infinite where it has no such bound.
	Min, Max float64
	// Scale is a difference of the result that matters, > 0: the unit in which
	// a violation counts.
	Scale float64
	// Of returns a result that is one number of a car wherever it stands, moved as it
	// likes in ws; NaN where the car has none, which holds no limit.
	Of func(car *solver.Axle, ws *solver.Workspace) float64
	// Range stands in place of Of for a result of several wheels or positions, about an
	// attitude: the least is held against Min, the largest against Max.
	Range func(car *solver.Axle, from solver.Attitude, ws *solver.Workspace) LimitRange
	// Spot returns the result at one place that Range has named, NaN where there is none;
	// nil of a limit that has no places. While a car changes a little its extreme changes as
	// the result does where the extreme is (the envelope theorem), so that slopes need no
	// more.
	Spot func(car *solver.Axle, from solver.Attitude, ws *solver.Workspace, at LimitPlace) float64
	// OneWheel says that Spot needs no more of a car than the wheel of the place.
	OneWheel bool
	// Slopes sets out to the derivatives of the result at one place by the parameters of
	// tangents of the car. Nil, and where it returns false, they are differenced.
	Slopes func(car *solver.Axle, from solver.Attitude, ws *solver.Workspace, at LimitPlace, by *solver.Tangents, out []float64) bool
}

// LimitRange is what a limit measures on the wheels and in the positions that it is for.
type LimitRange struct {
	Least, Most LimitValue
	// Err says why there are none: a wheel, or a position, without a value.
	Err error
}

// LimitValue is a value of a limit's result and the position in which it was seen.
type LimitValue struct {
	Value float64
	At    LimitPlace
}

// NewLimitRange returns a range that has seen nothing.
func NewLimitRange() LimitRange {
	return LimitRange{Least: LimitValue{Value: math.Inf(1)}, Most: LimitValue{Value: math.Inf(-1)}}
}

// elsewhere is by how much, in the limit's unit, a value must go beyond those before to be
// said to be somewhere else: far above rounding, so that of a wheel and its mirror
// image the same one is named by every machine.
const elsewhere = 1e-9

// See takes a value into account.
func (r *LimitRange) See(v float64, at LimitPlace) {
	if v < r.Least.Value {
		if v < r.Least.Value-elsewhere {
			r.Least.At = at
		}
		r.Least.Value = v
	}
	if v > r.Most.Value {
		if v > r.Most.Value+elsewhere {
			r.Most.At = at
		}
		r.Most.Value = v
	}
}

// Lack returns the range of a car that has no value at a place, and why.
func Lack(at LimitPlace, err error) LimitRange {
	none := LimitValue{math.NaN(), at}
	return LimitRange{none, none, err}
}

// LimitPlace is a position of an axle in which a limit is nearest to being broken, or
// which it cannot take.
type LimitPlace struct {
	Side   solver.Side
	Travel float64 // about the attitude, mm, bump positive
	Steer  float64 // input, mm or radians
	Case   int     // of those that a limit on forces looks at
	Link   string  // that keeps the axle from the position; empty where it gets there
}

// LimitState is how a car stands to a limit.
type LimitState struct {
	Name     string
	Scenario string
	Value    float64
	Min, Max float64
	Held     bool
	At       *LimitPlace // nil of a limit without Range
	Err      error       // why there is no value, where a limit with Range has none
}

// String says how the car stands to the limit, without units.
func (s LimitState) String() string {
	verb := "holds"
	if !s.Held {
		verb = "breaks"
	}
	return fmt.Sprintf("%s %.5g %s %.5g to %.5g", s.Name, s.Value, verb, s.Min, s.Max)
}

// rows returns the number of inequalities that the limit makes.
func (l *Limit) rows() int {
	n := 0
	for _, b := range [2]float64{l.Min, l.Max} {
		if !math.IsInf(b, 0) {
			n++
		}
	}
	return n
}

// appendRows appends the inequalities, at most 0 where held, for what was measured.
func (l *Limit) appendRows(g []float64, r LimitRange) []float64 {
	if !math.IsInf(l.Min, 0) {
		g = append(g, (l.Min-r.Least.Value)/l.Scale)
	}
	if !math.IsInf(l.Max, 0) {
		g = append(g, (r.Most.Value-l.Max)/l.Scale)
	}
	return g
}

// appendSpots appends the inequalities of a car that differs little from one of which r was
// measured.
func (l *Limit) appendSpots(g []float64, r *LimitRange, car *solver.Axle, from solver.Attitude, ws *solver.Workspace) []float64 {
	if l.Spot == nil {
		return l.appendRows(g, l.measure(car, from, ws))
	}
	here := LimitRange{Least: r.Least, Most: r.Most}
	if !math.IsInf(l.Min, 0) {
		here.Least.Value = l.Spot(car, from, ws, r.Least.At)
	}
	if !math.IsInf(l.Max, 0) {
		here.Most.Value = l.Spot(car, from, ws, r.Most.At)
	}
	return l.appendRows(g, here)
}

// measure returns what the limit measures on a car about an attitude.
func (l *Limit) measure(car *solver.Axle, from solver.Attitude, ws *solver.Workspace) LimitRange {
	if l.Range != nil {
		return l.Range(car, from, ws)
	}
	v := LimitValue{Value: l.Of(car, ws)}
	return LimitRange{Least: v, Most: v}
}

// nearest returns the end of a range that is nearest to breaking the limit.
func (l *Limit) nearest(r *LimitRange) LimitValue {
	if l.Room(r.Least.Value) < l.Room(r.Most.Value) || math.IsInf(l.Max, 1) {
		return r.Least
	}
	return r.Most
}

// value returns what the limit measures on a car, nearest to breaking it; NaN where it
// has none.
func (l *Limit) value(car *solver.Axle, from solver.Attitude, ws *solver.Workspace) float64 {
	r := l.measure(car, from, ws)
	return l.nearest(&r).Value
}

// State returns how a car stands to the limit about an attitude.
func (l *Limit) State(car *solver.Axle, from solver.Attitude, ws *solver.Workspace) LimitState {
	r := l.measure(car, from, ws)
	v := l.nearest(&r)
	s := l.state("", v.Value)
	if s.Err = r.Err; l.Range != nil {
		s.At = &v.At
	}
	return s
}

// Unbuilt returns how a car that cannot be built stands to the limit, and why it cannot.
func (l *Limit) Unbuilt(err error) LimitState {
	s := l.state("", math.NaN())
	s.Err = err
	return s
}

// Holds reports whether a value of what the limit measures holds it.
func (l *Limit) Holds(v float64) bool { return l.state("", v).Held }

// heldBy reports whether a car holds the limit about an attitude.
func (l *Limit) heldBy(car *solver.Axle, from solver.Attitude, ws *solver.Workspace) bool {
	return l.Holds(l.value(car, from, ws))
}

// state returns how the value v stands to the limit.
func (l *Limit) state(scenario string, v float64) LimitState {
	slack := nlp.LimitSlack * l.Scale
	return LimitState{Name: l.Name, Scenario: scenario, Value: v, Min: l.Min, Max: l.Max,
		Held: v >= l.Min-slack && v <= l.Max+slack}
}

// Room returns how far a value of the result may go before it breaks the nearer of the
// bounds: below 0 where it has, and by so much.
func (l *Limit) Room(v float64) float64 { return math.Min(v-l.Min, l.Max-v) }

// check returns an error for a limit that cannot be held or measured.
func (l *Limit) check() error {
	switch {
	case !(l.Scale > 0):
		return nlp.ProblemErrorf("limit %s has scale %g, must be positive", l.Name, l.Scale)
	case !(l.Min <= l.Max):
		return nlp.ProblemErrorf("limit %s has its minimum %.6g above its maximum %.6g", l.Name, l.Min, l.Max)
	case l.Of == nil && l.Range == nil:
		return nlp.ProblemErrorf("limit %s measures nothing", l.Name)
	case l.rows() == 0:
		return nlp.ProblemErrorf("limit %s has neither minimum nor maximum", l.Name)
	}
	return nil
}

// limitStep is the share of a variable's range by which limits are differenced, to one
// side: that leaves a millionth of what they bend over the range. Their derivatives only
// steer the search; what holds is judged by values.
const limitStep = 1e-6

// writeLimits sets v's limits, and their derivatives where they are wanted, for
// all scenarios at x. It returns false where a car cannot be built or, of derivatives,
// where a limit has no value.
func (m *toeModel) writeLimits(x []float64, v *nlp.Values) bool {
	if len(m.limits) == 0 {
		return true
	}
	g, ok := m.limitsAt(v.G[:0], x)
	if !ok {
		return false
	}
	if v.JG == nil {
		return true
	}
	if slices.ContainsFunc(g, math.IsNaN) {
		return false
	}
	m.writeSlopes(x, v)
	if !slices.Contains(m.exact, false) {
		return true
	}
	here, ok := m.spotsAt(nil, x)
	if !ok {
		return false
	}
	at, beside := append([]float64(nil), x...), make([]float64, 0, len(here))
	for k := range m.free {
		f := &m.free[k]
		h := limitStep * (f.Max - f.Min)
		at[k] = x[k] + h
		if beside, ok = m.spotsAt(beside[:0], at); !ok {
			return false
		}
		at[k] = x[k]
		for i, was := range here {
			if !m.exact[i] {
				v.JG.Set(i, k, (beside[i]-was)/h)
			}
		}
	}
	return true
}

// writeSlopes sets the derivatives of the rows whose limits have them exactly, where they
// were measured last, and says which.
func (m *toeModel) writeSlopes(x []float64, v *nlp.Values) {
	m.exact = m.exact[:0]
	m.slopes = append(m.slopes[:0], make([]float64, len(m.free))...)
	for i := range m.scenarios {
		s := &m.scenarios[i]
		var car *solver.Axle
		var by *solver.Tangents
		for k := range m.limits {
			l, r := &m.limits[k], &m.ranges[i*len(m.limits)+k]
			if l.Slopes != nil && car == nil {
				m.cars++
				var err error
				if car, err = m.base.Assemble(m.changes(s, x), s.Hold); err == nil {
					by, _ = car.Tangents(m.seeds)
				}
			}
			write := func(at LimitPlace, scale float64) {
				ok := l.Slopes != nil && by != nil && l.Slopes(car, s.From, m.ws, at, by, m.slopes)
				for j := 0; ok && j < len(m.slopes); j++ {
					v.JG.Set(len(m.exact), j, m.slopes[j]/scale)
				}
				m.exact = append(m.exact, ok)
			}
			if !math.IsInf(l.Min, 0) {
				write(r.Least.At, -l.Scale)
			}
			if !math.IsInf(l.Max, 0) {
				write(r.Most.At, l.Scale)
			}
		}
	}
}

// limitsAt appends the inequalities of all scenarios at x, and keeps what was measured.
func (m *toeModel) limitsAt(g []float64, x []float64) ([]float64, bool) {
	m.ranges = m.ranges[:0]
	return m.eachLimit(g, x, solver.BothSides, func(g []float64, l *Limit, car *solver.Axle, from solver.Attitude) []float64 {
		r := l.measure(car, from, m.ws)
		m.ranges = append(m.ranges, r)
		return l.appendRows(g, r)
	})
}

// spotsAt appends the inequalities of all scenarios at x, near where they were measured
// last.
func (m *toeModel) spotsAt(g []float64, x []float64) ([]float64, bool) {
	n := 0
	return m.eachLimit(g, x, m.spotSides(), func(g []float64, l *Limit, car *solver.Axle, from solver.Attitude) []float64 {
		n++
		if m.exact[len(g)] {
			return append(g, make([]float64, l.rows())...) // not looked at
		}
		return l.appendSpots(g, &m.ranges[n-1], car, from, m.ws)
	})
}

// spotSides returns the sides of a car that the places measured last are on, both where
// more of it is needed.
func (m *toeModel) spotSides() solver.Selection {
	used := [2]bool{}
	row := 0
	for i := range m.ranges {
		l, r := &m.limits[i%len(m.limits)], &m.ranges[i]
		if row += l.rows(); m.exact[row-1] {
			continue
		}
		if !l.OneWheel || m.base.Design().Kind.CommonPoints != nil {
			return solver.BothSides
		}
		used[r.Least.At.Side], used[r.Most.At.Side] = true, true
	}
	switch {
	case !used[solver.Right]:
		return solver.LeftOnly
	case !used[solver.Left]:
		return solver.RightOnly
	}
	return solver.BothSides
}

// eachLimit appends what add does for every limit in every scenario at x, of which so many
// sides are assembled.
func (m *toeModel) eachLimit(g []float64, x []float64, sides solver.Selection, add func([]float64, *Limit, *solver.Axle, solver.Attitude) []float64) ([]float64, bool) {
	for i := range m.scenarios {
		s := &m.scenarios[i]
		m.cars++
		if err := m.base.Reassemble(&m.limited, sides, m.changes(s, x), s.Hold, nil); err != nil {
			return g, false
		}
		for k := range m.limits {
			g = add(g, &m.limits[k], &m.limited, s.From)
		}
	}
	return g, true
}

// limitStates returns how the cars of all scenarios at x stand to the limits.
func (m *toeModel) limitStates(x []float64) []LimitState {
	var out []LimitState
	for i := range m.scenarios {
		s := &m.scenarios[i]
		car, err := m.base.Assemble(m.changes(s, x), s.Hold)
		for k := range m.limits {
			l := &m.limits[k]
			st := l.Unbuilt(err)
			if err == nil {
				st = l.State(car, s.From, m.ws)
			}
			st.Scenario = s.Name
			out = append(out, st)
		}
	}
	return out
}
