package solver

// SteerRate is how a steered axle, and what is said of its turn, change with one
// parameter: by mm or, of an angle, by radian.
type SteerRate struct {
	Wheel [2]float64 // of the wheels' steer angles
	Track float64    // of the track in the static position
	Pivot float64    // of [Axle.KingpinTrack]
}

// steerScratch is the memory of [Axle.SteerRates].
type steerScratch struct {
	home   [1]float64
	curves [2]Curve
	rates  []SteerRate
}

// SteerRates returns the derivatives of the axle at the steering input of an attitude, that
// and its heave and roll held, by the parameters of some tangents of the axle: exact, all
// setpoints re-solved. They are valid until the workspace is used again. It returns false
// where the axle does not reach the attitude, or stands at a lock there.
func (x *Axle) SteerRates(ws *Workspace, at Attitude, by *Tangents) ([]SteerRate, bool) {
	work := &ws.rates.steer
	work.rates = append(work.rates[:0], make([]SteerRate, by.Len())...)
	straight := at
	straight.Steer = 0
	if !x.addWheelRates(ws, at, by, 1) || !x.addWheelRates(ws, straight, by, -1) {
		return nil, false
	}
	for i, st := range x.static {
		for k := range work.rates {
			st.addGroundRates(&by.units[i][k], x.radiusRate(&by.params[k]), &work.rates[k])
		}
	}
	return work.rates, true
}

// addWheelRates adds k times the derivatives of the wheels' angles, toe counted, at an
// attitude.
func (x *Axle) addWheelRates(ws *Workspace, at Attitude, by *Tangents, k float64) bool {
	work := &ws.rates.steer
	in := SweepInput{ToeOnly: true, Travels: work.home[:], From: at, By: by}
	if x.Sweep(ws, &in, &work.curves) != nil {
		return false
	}
	for _, s := range Sides {
		if len(work.curves[s].Positions) == 0 {
			return false
		}
		for i := range work.rates {
			d := k * work.curves[s].ToeRate(0, i)
			if s == Left { // as in [SteerPoint.steered]
				d = -d
			}
			work.rates[i].Wheel[s] += d
		}
	}
	return true
}

// radiusRate returns the tyre radius, growing with a parameter.
func (x *Axle) radiusRate(c *Change) dual {
	r := constant(x.tyreRadius)
	if c.Parameter.stage == vehicleStage {
		r.d = 1
	}
	return r
}

// addGroundRates adds what the wheels of a unit have of the rates of track and pivot.
func (st *staticUnit) addGroundRates(t *tangent, radius dual, out *SteerRate) {
	var room [maxUnitPoints]dvec
	pts := room[:len(st.pts)]
	for i, v := range st.pts {
		pts[i].v = v
	}
	for _, p := range t.points {
		pts[p.i].d = p.d
	}
	for i := range st.u.wheels {
		w := &st.u.wheels[i]
		spin := fixed(st.spins[i])
		if len(t.spins) > 0 {
			spin.d = t.spins[i]
		}
		centre := pts[w.centre]
		ground := centre.z().less(radius)
		out.Track += w.outboard() * contactAcross(centre, spin, radius).d
		at, dir := st.u.steeringAxis(w, pts)
		along := ground.less(at.z()).over(dir.z())
		out.Pivot += w.outboard() * at.plus(dir.times(along)).y().d
	}
}

// contactAcross is the y of [contact] with its rate.
func contactAcross(centre, e dvec, r dual) dual {
	level := e.x().times(e.x()).plus(e.y().times(e.y()))
	return centre.y().plus(r.times(e.z()).over(level).times(e.y()))
}

// HoldWheel turns rates at p, at which the steering input was held, into those with wheel s
// held at its angle: the input follows.
func (p *SteerPoint) HoldWheel(s Side, rates []SteerRate) {
	for i := range rates {
		w := &rates[i].Wheel
		input := -w[s] / p.Rate[s]
		for _, k := range Sides {
			w[k] += p.Rate[k] * input
		}
		w[s] = 0
	}
}

// ToeOut returns the rate of [Turn.ToeOut].
func (r *SteerRate) ToeOut() float64 { return r.Wheel[Left] - r.Wheel[Right] }

// duals returns the angles of the turn with their rates.
func (t Turn) duals(r *SteerRate) (inner, outer dual) {
	inner, outer = dual{float64(t.Inner), r.Wheel[Left]}, dual{float64(t.Outer), r.Wheel[Right]}
	if !t.ToLeft {
		inner.d, outer.d = -r.Wheel[Right], -r.Wheel[Left]
	}
	return inner, outer
}

// AckermannRate returns the rate of [Axle.Ackermann].
func (x *Axle) AckermannRate(t Turn, r *SteerRate) float64 {
	inner, outer := t.duals(r)
	lever := dual{x.KingpinTrack(), r.Pivot}.scaled(1 / x.Design().Wheelbase)
	rule := datan2(inner.sin(), inner.cos().plus(lever.times(inner.sin())))
	return 100 * inner.less(outer).over(inner.less(rule)).d
}

// TurningCircleRate returns the rate of [Axle.TurningCircle], mm by mm or by radian.
func (x *Axle) TurningCircleRate(t Turn, r *SteerRate) float64 {
	_, outer := t.duals(r)
	return constant(2*x.Design().Wheelbase).over(outer.sin()).d + r.Track - r.Pivot
}

// inputDifference is the length of path, mm by [Axle.pathLength], to either side over which
// the derivatives of the wheels' angles are differenced by the steering input. Over some
// 100 mm they bend as much as they are large, and each is right to some 1e-12 of it.
const inputDifference = 0.1

// MeanRateRates sets out to the derivatives of [SteerPoint.MeanRate] at the steering input
// of an attitude, that and its heave and roll held, by the parameters of some tangents of
// the axle: all but exact, by a difference along the input of derivatives that are. It
// returns false where [Axle.SteerRates] does.
func (x *Axle) MeanRateRates(ws *Workspace, at Attitude, by *Tangents, out []float64) bool {
	h := inputDifference / x.pathLength(1)
	clear(out)
	for _, sign := range [2]float64{1, -1} {
		beside := at
		beside.Steer += sign * h
		rates, ok := x.SteerRates(ws, beside, by)
		if !ok {
			return false
		}
		for i := range rates {
			out[i] += sign * (rates[i].Wheel[Left] + rates[i].Wheel[Right]) / (4 * h)
		}
	}
	return true
}
