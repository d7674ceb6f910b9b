package solver

import "fmt"

// takeUp moves what the adjuster moves, so that the parts fit the solved static
// position: the strut's mount onto the strut's axis, or pivots square to the line
// between them. Rods that change length follow from their ends by themselves.
// Points before any part was exchanged give the lengths that stay.
func (u *unit) takeUp(pts, before []dvec) error {
	switch {
	case u.adjuster.mount:
		pts[u.strut.top] = u.pierce(pts)
		pts[u.strut.carried] = pts[u.strut.top]
	case u.adjuster.pivots:
		return u.shim(pts, before)
	}
	return nil
}

// shim moves the two pivots of the adjusted arm, level and square to the line
// between them, until their legs have the lengths they had.
func (u *unit) shim(pts, before []dvec) error {
	first, second := u.rods[u.adjuster.pair[0]], u.rods[u.adjuster.pair[1]]
	line := pts[first.inner].less(pts[second.inner]).levelUnit()
	n := dvec{v: Vec{X: -line.v.Y, Y: line.v.X}, d: Vec{X: -line.d.Y, Y: line.d.X}}
	for _, r := range [2]rodSpec{first, second} {
		l := before[r.outer].less(before[r.inner]).norm()
		d := pts[r.outer].less(pts[r.inner])
		// |d - t·n|² = l², the smaller root.
		b, c := d.dot(n), d.dot(d).less(l.times(l))
		disc := b.times(b).less(c)
		if !(disc.v > 0) {
			return &InputError{u.keyOf(r.inner), fmt.Sprintf("cannot be shimmed far enough for the %s to reach; take up camber and caster elsewhere", r.name)}
		}
		root := disc.sqrt()
		if b.v < 0 {
			root = root.scaled(-1)
		}
		t := c.over(b.plus(root))
		pts[r.inner] = pts[r.inner].plus(n.times(t))
	}
	return nil
}
