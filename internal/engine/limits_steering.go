package engine

import (
	"math"

	"toewright/optimize"
	"toewright/solver"
)

func (m *limitMeter) toeOut(p *posed, s solver.Side) (float64, error) {
	turn, err := turnOf(p.car, p.ws, s, p.from)
	return turn.ToeOut().Degrees(), err
}

// toeOutRate is the rate of [limitMeter.toeOut].
func toeOutRate(_ *solver.Axle, _ solver.Turn, r *solver.SteerRate) float64 {
	return solver.Angle(r.ToeOut()).Degrees()
}

func (m *limitMeter) ackermann(p *posed, s solver.Side) (float64, error) {
	turn, err := turnOf(p.car, p.ws, s, p.from)
	if err != nil {
		return 0, err
	}
	return p.car.Ackermann(turn)
}

// turnSlopes are the derivatives of a result of [turnOf] whose own rate is given.
func turnSlopes(rate func(*solver.Axle, solver.Turn, *solver.SteerRate) float64) limitSlopes {
	return func(m *limitMeter, p *posed, place optimize.LimitPlace, by *solver.Tangents, out []float64) bool {
		at, err := turned(p.car, p.ws, place.Side, p.from)
		if err != nil {
			return false
		}
		rates, ok := turnRates(p.car, p.ws, place.Side, &at, p.from, by)
		for i := range rates {
			out[i] = rate(p.car, at.Turn(), &rates[i])
		}
		return ok
	}
}

// steeringRatio is that at the attitude's own steering input.
func (m *limitMeter) steeringRatio(p *posed) (float64, error) { return m.ratioAt(p.car, p.ws, p.from) }

func (m *limitMeter) ratioSlopes(p *posed, _ optimize.LimitPlace, by *solver.Tangents, out []float64) bool {
	at, err := steered(p.car, p.ws, p.from.Steer, p.from)
	if err != nil || !p.car.MeanRateRates(p.ws, p.from, by, out) {
		return false
	}
	ratio := math.Abs(solver.SteeringRatio(at.MeanRate(), m.steer(m.doc.Steering.PerTurn)))
	for i := range out {
		out[i] *= -ratio / at.MeanRate()
	}
	return true
}

// circle is the turning circle at the lock at which the wheel is the inner one.
func (m *limitMeter) circle(p *posed, s solver.Side) (float64, error) {
	return m.turningCircle(p.car, p.ws, s, p.from)
}

func (m *limitMeter) circleSlopes(p *posed, place optimize.LimitPlace, by *solver.Tangents, out []float64) bool {
	at, err := m.locked(p.car, p.ws, place.Side, p.from)
	if err != nil {
		return false
	}
	from := p.from
	from.Steer = at.Input
	rates, ok := p.car.SteerRates(p.ws, from, by)
	for i := range rates {
		out[i] = m.length(p.car.TurningCircleRate(at.Turn(), &rates[i]))
	}
	return ok
}
