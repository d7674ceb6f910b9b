package solver

// pointSet is a set of a unit's points, by their indices.
type pointSet uint32

// add puts points into s.
func (s *pointSet) add(points ...int) {
	for _, i := range points {
		*s |= 1 << i
	}
}

// has reports whether a point is in s.
func (s pointSet) has(i int) bool { return s>>i&1 != 0 }

// freePoints returns the points of u on which nothing hangs but rods that set toe.
// Where static toe is held those rods follow their ends, so that the rest of the
// unit stands as it did when such a point moves.
func (u *unit) freePoints() pointSet {
	var free, held pointSet
	for _, r := range u.rods {
		held.add(r.inner, r.outer)
	}
	for _, r := range u.steer {
		free.add(r.inner, r.outer)
	}
	for i := range u.wheels {
		held.add(u.wheels[i].centre)
	}
	if u.strut != nil {
		held.add(u.strut.lower, u.strut.carried, u.strut.top)
	}
	return free &^ held
}

// movedBy returns the points that a change moves.
func (u *unit) movedBy(c *Change) (s pointSet) {
	first, end, step := u.span(&c.Parameter.point)
	for i := first; i < end; i += step {
		if u.moves(c, i) {
			s.add(i)
		}
	}
	return s
}
