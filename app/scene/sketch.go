package scene

import (
	"fmt"

	"toewright/internal/plot"
	"toewright/solver"
)

// sketchEdge is what is kept free about each half of a sketch, in CSS pixels.
const sketchEdge = 2.0

// Sketch returns a small picture of a car as its points stand: the left half of the axle from
// behind and, beside it, from above, to its centre line. It is an SVG element for a page whose
// styles know drawings, of a width and a height in CSS pixels. Nothing is solved for it.
func Sketch(d *solver.Design, width, height float64) string {
	r := newRig(d)
	placed := solver.Placed{Side: d.Points, Common: d.Common, Gear: d.Gear.Points[:d.Gear.PointCount()]}
	for _, s := range solver.Sides {
		placed.Spin[s] = solver.Vec{Y: [2]float64{1, -1}[s]}
	}
	radius := d.TyreRadius
	if radius == 0 {
		radius = placed.Side[solver.Left][r.wheel[solver.Left].index].Z
	}
	dst := fmt.Appendf(nil, `<svg class="sketch" viewBox="0 0 %g %g" width="%[1]g" height="%[2]g" aria-hidden="true">`, width, height)
	half := plot.Box(0, 0, width/2, height)
	for i, view := range []plot.View{plot.Behind, plot.Plan} {
		l := linkage{rig: r, at: &placed, home: &placed, near: true, side: solver.Left}
		l.p = plot.Fit(view, half.Inset(sketchEdge, sketchEdge, sketchEdge, sketchEdge), l.around(radius)...)
		l.wheels(radius)
		l.draw()
		dst = fmt.Appendf(dst, `<svg x="%g" width="%g" height="%g">`, float64(i)*width/2, width/2, height) // cuts off what runs beyond
		for _, path := range l.paths {
			dst = fmt.Appendf(dst, `<path d="%s"/>`, path)
		}
		dst = fmt.Appendf(dst, `<path class="ball" d="%s"/><path class="tyre" d="%s"/></svg>`, l.joint, appendWheel(nil, l.p, l.tyre[solver.Left]))
	}
	return string(append(dst, "</svg>"...))
}

// around returns points about the left half of a car: its joints, its tyre and the centre
// line. Long links of a solid axle run off.
func (l *linkage) around(radius float64) (all []plot.Vec) {
	l.points(l.at, func(x ref) {
		if l.shows(x) {
			v := l.toCentreLine(l.place(l.at, x))
			v.X = max(-linkPart*radius, min(v.X, linkPart*radius))
			all = append(all, v)
		}
	})
	c := l.place(l.at, l.wheel[l.side])
	half := plot.Vec{X: radius, Y: radius * tyreWidthPart / 2, Z: radius}
	return append(all, c.Add(half), c.Sub(half), plot.Vec{X: c.X, Z: c.Z})
}
