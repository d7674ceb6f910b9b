package solver

// rateScratch is the memory of a sweep's derivatives.
type rateScratch struct {
	shifts []Vec // by parameter: displacement of the inner ball, as a left one
	turn   Vec   // by the steering input, likewise
	steer  steerScratch
	corner cornerGradient
	beam   beamGradient
}

// prepareRates sets the displacements of the inner ball of side s with each
// parameter of in, at the steering input of in.
func (x *Axle) prepareRates(ws *Workspace, in *SweepInput, s Side) {
	if in.By == nil {
		return
	}
	r := &ws.rates
	if cap(r.shifts) < in.By.Len() {
		r.shifts = make([]Vec, in.By.Len())
	}
	r.shifts = r.shifts[:in.By.Len()]
	for k := range r.shifts {
		r.shifts[k] = x.shiftRate(in, s, k)
	}
	r.turn = x.steerRate(in, s)
}

// steerRate returns how fast the inner ball moves with the steering input.
func (x *Axle) steerRate(in *SweepInput, s Side) Vec {
	ball := x.balls[s]
	if x.beam != nil {
		ball = x.drag
	}
	if ball == nil {
		return Vec{}
	}
	_, rate := ball.shift(in.From.Steer)
	return rate
}

// shiftRate returns how fast the inner ball's displacement by the steering grows
// with parameter k: not at all straight ahead or on a rack.
func (x *Axle) shiftRate(in *SweepInput, s Side, k int) Vec {
	if x.gear.Kind != CentreLink || in.From.Steer == 0 {
		return Vec{}
	}
	unit, ball := x.innerPoint(s)
	home := fixed(x.static[unit].pts[ball])
	home.d = in.By.units[unit][k].of(ball)
	home = dvec{s.Mirrored(home.v), s.Mirrored(home.d)}
	pts := x.gear.points()
	if ref := &in.By.params[k].Parameter; ref.point.group == gearPoint {
		pts[ref.point.index].d = along(int(ref.move))
	}
	return newLinkBall(&x.gear, pts, home, s).place(constant(in.From.Steer)).d
}

// innerPoint returns the unit and the index in it of the ball that the gear
// moves for side s.
func (x *Axle) innerPoint(s Side) (unit, ball int) {
	unit = min(int(s), len(x.static)-1)
	return unit, x.static[unit].u.geared().inner
}

// rateCorner sets row i of the curve's rates to the derivatives of the toe where
// the tracer stands.
func (x *Axle) rateCorner(ws *Workspace, in *SweepInput, s Side, i int, out *Curve) {
	st := x.static[s]
	g := &ws.rates.corner
	g.wanted = in.By.moved[s]
	if !x.corners[s].toeGradient(&ws.tracer, &ws.corner, st.u, g) {
		out.fillRates(i, nan)
		return
	}
	row := out.row(i)
	n := in.By.Len()
	row[n], row[n+1] = g.travel, dot(g.shift, ws.rates.turn)
	for k := range n {
		row[k] = g.dot(&in.By.units[s][k], ws.rates.shifts[k])
	}
}

// rateBeam sets row i of both curves' rates.
func (x *Axle) rateBeam(ws *Workspace, in *SweepInput, i int, out *[2]Curve) {
	g := &ws.rates.beam
	if !g.at(&ws.tracer, &ws.beam, x.static[0]) {
		out[Left].fillRates(i, nan)
		out[Right].fillRates(i, nan)
		return
	}
	n := in.By.Len()
	for _, s := range Sides {
		toe, row := &g.toes[s], out[s].row(i)
		row[n], row[n+1] = toe.travel, dot(toe.shift, ws.rates.turn)
		for k := range n {
			row[k] = toe.dot(&in.By.units[0][k], ws.rates.shifts[k])
		}
	}
}
