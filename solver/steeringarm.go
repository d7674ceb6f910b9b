package solver

// SteeringArm returns the length of a side's steering arm in the static position,
// mm: the level distance from the steering axis to the tie rod's outer ball, at
// the ball's height.
func (x *Axle) SteeringArm(s Side) float64 {
	st := x.static[min(int(s), len(x.static)-1)]
	u := st.u
	pts := make([]dvec, len(st.pts))
	for i, p := range st.pts {
		pts[i] = fixed(p)
	}
	w := &u.wheels[int(s)%len(u.wheels)]
	at, dir := u.steeringAxis(w, pts)
	ball := pts[w.arm]
	d := ball.less(at.plus(dir.times(ball.z().less(at.z()).over(dir.z()))))
	_, length := horizontal(d.v)
	return length
}

// TieRodLength returns the length of a side's tie rod, mm; of a solid axle's one
// tie rod.
func (x *Axle) TieRodLength(s Side) float64 {
	if x.beam != nil {
		return x.beam.tie
	}
	return x.corners[s].tie.l
}

// gearedLength returns the length of the rod that the gear moves for side s, mm: the
// tie rod, or a solid axle's drag link.
func (x *Axle) gearedLength(s Side) float64 {
	if x.beam != nil {
		return x.beam.drag.l
	}
	return x.corners[s].tie.l
}
