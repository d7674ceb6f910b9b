package solver

// steeringAxis returns a point and the direction, upward, of the axis about which
// a wheel is steered, for points that stand in V.
//
// It passes through the two ball joints, or from the lower ball joint to the
// mount of a strut. A multi-link corner has no such points: its axis is the
// instantaneous screw axis of the steering motion that leaves the wheel centre at
// its height.
func (u *unit) steeringAxis(w *wheelSpec, pts []dvec) (at, dir dvec) {
	if w.axis.kind == screwAxis {
		return u.screw(w, pts)
	}
	at = pts[w.axis.lower]
	upper := pts[w.axis.upper]
	if w.axis.kind == mountAxis {
		upper = u.pierce(pts)
	}
	return at, upper.less(at)
}

// pierce returns the point where the strut's axis passes the level of the mount.
func (u *unit) pierce(pts []dvec) dvec {
	lower, top := pts[u.strut.lower], pts[u.strut.top]
	dir := pts[u.strut.carried].less(lower)
	return lower.plus(dir.times(top.z().less(lower.z()).over(dir.z())))
}

// casterOf returns the caster angle of an axis direction: positive when its top
// leans rearward in side view.
func casterOf(dir dvec) dual { return datan2(dir.x().scaled(-1), dir.z()) }

// screw returns the screw axis of a wheel held by rods alone. The motion (ω, v)
// of the wheel centre's body with v.z = 0 is the one that no rod but the tie rod
// resists; its axis has the direction ω and passes w + ω×v/ω².
func (u *unit) screw(w *wheelSpec, pts []dvec) (at, dir dvec) {
	var rows [4][5]dual
	centre := pts[w.centre]
	for i := range rows {
		r := u.rods[i]
		d := pts[r.outer].less(pts[r.inner]).unit()
		m := pts[r.outer].less(centre).cross(d)
		rows[i] = [5]dual{m.x(), m.y(), m.z(), d.x(), d.y()}
	}
	n := nullVector(&rows)
	omega := dvec{v: Vec{X: n[0].v, Y: n[1].v, Z: n[2].v}, d: Vec{X: n[0].d, Y: n[1].d, Z: n[2].d}}
	v := dvec{v: Vec{X: n[3].v, Y: n[4].v}, d: Vec{X: n[3].d, Y: n[4].d}}
	if omega.v.Z < 0 {
		omega = omega.times(constant(-1))
		v = v.times(constant(-1))
	}
	arm := omega.cross(v).times(constant(1).over(omega.dot(omega)))
	return centre.plus(arm), omega
}

// nullVector returns a vector that all four rows send to zero, with its rate: its
// components are the signed minors of the rows.
func nullVector(rows *[4][5]dual) [5]dual {
	var n [5]dual
	for skip := range 5 {
		var m [4][4]dual
		for i := range 4 {
			k := 0
			for j := range 5 {
				if j != skip {
					m[i][k] = rows[i][j]
					k++
				}
			}
		}
		n[skip] = minor4(&m)
		if skip%2 == 1 {
			n[skip] = n[skip].scaled(-1)
		}
	}
	return n
}

// splits are the ways to share four columns between the upper and the lower two
// rows of a determinant, with Laplace's sign.
var splits = [6]struct {
	i, j, k, l uint8
	sign       float64
}{{0, 1, 2, 3, 1}, {0, 2, 1, 3, -1}, {0, 3, 1, 2, 1}, {1, 2, 0, 3, 1}, {1, 3, 0, 2, -1}, {2, 3, 0, 1, 1}}

// minor4 returns the determinant of m by its 2×2 minors of upper and lower rows.
func minor4(m *[4][4]dual) dual {
	var sum dual
	two := func(r int, i, j uint8) dual {
		return m[r][i].times(m[r+1][j]).less(m[r][j].times(m[r+1][i]))
	}
	for _, t := range &splits {
		sum = sum.plus(two(0, t.i, t.j).times(two(2, t.k, t.l)).scaled(t.sign))
	}
	return sum
}
