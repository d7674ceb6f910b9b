package drawing

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/drawing/step"
)

// model returns the named places, axes and circles of the part.
func (p *part) model(origin string) *step.Model {
	m := &step.Model{Name: p.title, Number: p.number(), Origin: origin}
	if a := p.study.Arm; a != nil {
		m.Author = a.DrawnBy
	}
	point := func(name string, at r3.Vec) { m.Points = append(m.Points, step.Point{Name: name, At: vec(at)}) }
	axis := func(name string, through, along r3.Vec, from float64) {
		m.Lines = append(m.Lines, step.Line{Name: name, Through: vec(through), Along: vec(along), From: from, To: axisReach})
	}
	circle := func(name string, centre, about r3.Vec, diameter float64) {
		if diameter > 0 {
			m.Circles = append(m.Circles, step.Circle{Name: name, Centre: vec(centre), Axis: vec(about), Radius: diameter / 2})
		}
	}
	point("outer-ball", p.hole)
	point("original-ball", p.was)
	axis("stud", p.hole, p.stud, -axisReach-r3.Norm(r3.Sub(p.farEnd(), p.hole)))
	circle("hole large end", p.clamped, p.stud, p.large)
	circle("hole small end", p.farEnd(), p.stud, p.small)
	if f := p.face; f != nil {
		point("face", f.point)
		axis("face", f.point, f.normal, -axisReach)
		for i, b := range f.bolts {
			name := fmt.Sprintf("bolt-%d", i+1)
			point(name, b)
			axis(name, b, f.normal, -axisReach)
			circle(name, b, f.normal, p.bolt)
		}
	}
	return m
}

func vec(v r3.Vec) step.Vec { return step.Vec{v.X, v.Y, v.Z} }
