package drawing

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/engine"
)

// Car axes of ISO 8855.
var forward, upward = r3.Vec{X: 1}, r3.Vec{Z: 1}

// Numbers of the views: that which shows the arm's length and height, that from above it, and
// that from its end.
const (
	mainView = iota
	planView
	endView
)

// views returns three views square to each other, in the directions of the part's sizes:
// what lies most upward is up on the paper, and the first looks from outside the car.
func (p *part) views(scale float64) (v [3]view) {
	dirs := []r3.Vec{p.sizes[0].along, p.sizes[1].along, p.sizes[2].along}
	take := func(like r3.Vec) r3.Vec {
		best := 0
		for i, d := range dirs {
			if abs(r3.Dot(d, like)) > abs(r3.Dot(dirs[best], like)) {
				best = i
			}
		}
		d := dirs[best]
		dirs = append(dirs[:best:best], dirs[best+1:]...)
		return r3.Scale(math.Copysign(1, r3.Dot(d, like)), d)
	}
	up := take(upward)
	out := take(p.outboard())
	right := r3.Cross(up, out)
	from := p.was
	if p.face != nil {
		from = p.face.point
	}
	end := right // the end where the ball is
	if r3.Dot(r3.Sub(p.hole, p.root()), right) < 0 {
		end = r3.Scale(-1, right)
	}
	v[mainView] = view{right: right, up: up}
	v[planView] = view{right: right, up: r3.Scale(-1, out)}
	v[endView] = view{right: r3.Cross(up, end), up: up}
	for i := range v {
		v[i].from, v[i].scale, v[i].name = from, scale, p.seenFrom(v[i].out())
	}
	return v
}

// root returns where the arm begins: at its face, or else at the steering axis.
func (p *part) root() r3.Vec {
	if p.face != nil {
		return p.face.point
	}
	return p.foot
}

// seenFrom names a view by where its viewer stands.
func (p *part) seenFrom(d r3.Vec) string {
	words := map[string]string{
		"forward": "FROM THE FRONT", "rearward": "FROM BEHIND", "outboard": "FROM OUTSIDE",
		"inboard": "FROM INSIDE", "up": "FROM ABOVE", "down": "FROM BELOW",
	}
	text := words[p.towards(d)]
	if p.face == nil {
		return text
	}
	if abs(r3.Dot(d, p.face.normal)) > 1-trueView {
		return text + ", SQUARE TO A"
	}
	return text
}

// opposite reports whether two parts are mirror images of each other, as far as is written.
func opposite(a, b *part) bool {
	return engine.Alike(a.ArmSide, b.ArmSide, func(x float64) string { return a.length(a.study.Units.Millimetres(x)) }) && a.leaning() == b.leaning()
}

// leaning is the stud's direction in words, in the directions of the sizes; the right hand's
// are mirrored as it is.
func (p *part) leaning() string {
	var list []string
	for i := range p.sizes {
		list = append(list, p.style.AngleNumber(r3.Dot(p.stud, p.sizes[i].along)))
	}
	return strings.Join(list, " ")
}
