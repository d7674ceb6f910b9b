package engine

import (
	"errors"
	"math"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// underLoad measures the size of one of loadPeaked on each wheel that bears any and in each
// of the study's load cases: about the attitude, as travel and steering are.
func underLoad(i int) measuring {
	unit, of := loadPeaked[i].unit, loadPeaked[i].of
	return measuring{
		all: func(m *limitMeter, p *posed) optimize.LimitRange {
			work := m.idle.borrow()
			defer m.idle.Put(work)
			out := optimize.NewLimitRange()
			k, err := p.car.Statics(m.parts)
			for i := 0; i < len(m.doc.Loads) && err == nil; i++ {
				if err = m.load(k, p, i, work); err == nil {
					for _, s := range m.loaded(i) {
						out.See(math.Abs(of(&work.forces[s]))/unit, optimize.LimitPlace{Side: s, Case: i})
					}
				}
			}
			if err == nil && math.IsInf(out.Most.Value, 0) {
				err = errUnloaded
			}
			if err != nil {
				return optimize.Lack(optimize.LimitPlace{}, err)
			}
			return out
		},
		spot: func(m *limitMeter, p *posed, at optimize.LimitPlace) (float64, error) {
			work := m.idle.borrow()
			defer m.idle.Put(work)
			k, err := p.car.Statics(m.parts)
			if err == nil {
				err = m.load(k, p, at.Case, work)
			}
			return math.Abs(of(&work.forces[at.Side])) / unit, err
		},
		oneWheel: true,
		slopes: func(m *limitMeter, p *posed, at optimize.LimitPlace, by *solver.Tangents, out []float64) bool {
			work := m.idle.borrow()
			defer m.idle.Put(work)
			k, err := p.car.Statics(m.parts)
			if err == nil {
				err = m.load(k, p, at.Case, work)
			}
			work.rates = append(work.rates[:0], make([]solver.Forces, by.Len())...)
			in := m.loadAbout(p, at.Case)
			if err != nil || !k.Rates(p.ws, &in, at.Side, by, work.rates) {
				return false
			}
			sign := math.Copysign(1/unit, of(&work.forces[at.Side]))
			for i := range out {
				out[i] = sign * of(&work.rates[i])
			}
			return true
		},
	}
}

// errUnloaded is why there is no load where no case has any.
var errUnloaded = errors.New("no load case puts anything on the wheel")

// loaded returns the wheels of the limit that bear something in a load case.
func (m *limitMeter) loaded(i int) (out []solver.Side) {
	c := &m.doc.Loads[i]
	for _, s := range m.sides {
		whole := m.doc.HasDragLink() && c.Size() > 0 // by the tie rod
		if whole || !c.Idle(study.Side(s.String())) {
			out = append(out, s)
		}
	}
	return out
}

// load sets the forces of a load case about an attitude.
func (m *limitMeter) load(k *solver.Statics, p *posed, i int, work *scratch) error {
	in := m.loadAbout(p, i)
	return k.Forces(p.ws, &in, &work.forces)
}

// loadAbout returns a load case about an attitude.
func (m *limitMeter) loadAbout(p *posed, i int) solver.LoadCase {
	in := m.loadCase(&m.doc.Loads[i])
	in.Heave += p.from.Heave
	in.Roll += p.from.Roll
	in.Steer += p.from.Steer
	return in
}
