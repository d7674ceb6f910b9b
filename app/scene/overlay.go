package scene

import (
	"toewright/app/model"
	"toewright/internal/plot"
	"toewright/solver"
)

// Overlay lays one car over another in one drawing, both at ride height: the car itself in
// full lines, what differs of it in its own colour, and dashed where the other has it.
type Overlay struct {
	ws        *solver.Workspace
	rig       *rig
	of, under solver.Placed
	car       int
}

// NewOverlay places both cars; false where one cannot be.
func NewOverlay(car, under *model.Car) (*Overlay, bool) {
	if car == nil || under == nil || car.Err != nil || under.Err != nil {
		return nil, false
	}
	o := &Overlay{ws: solver.NewWorkspace(), rig: newRig(car.Axle.Design()), car: car.Index}
	if car.Axle.Place(o.ws, [2]float64{}, 0, &o.of) != nil || under.Axle.Place(o.ws, [2]float64{}, 0, &o.under) != nil {
		return nil, false
	}
	return o, true
}

// Front returns the rear view of the axle on a paper of a size; half of it, to the centre
// line, where both sides are alike.
func (o *Overlay) Front(radius float64, half bool, width, height float64) plot.Picture {
	l := &linkage{rig: o.rig, at: &o.of, home: &o.of}
	l.wheels(radius)
	l.near = half && len(o.rig.kind.CommonPoints) == 0
	l.p = plot.Fit(plot.Behind, inset(plot.Box(0, 0, width, height)), o.extent(radius, l.near)...)
	if l.near { // what lies beyond the centre line is cut off by the edge of the picture
		l.p.Origin.X += width - edge - l.p.At(plot.Vec{}).X
	}
	return o.draw(l, width, height, true)
}

// Arm returns the left steering arm seen from the left, enlarged.
func (o *Overlay) Arm(width, height float64) plot.Picture {
	l := &linkage{rig: o.rig, at: &o.of, home: &o.of, near: true, armOnly: true}
	var about []plot.Vec
	for _, x := range []ref{o.rig.arm[solver.Left], {group: footGroup, side: solver.Left}} {
		v, d := o.rig.place(&o.under, x), plot.Vec{X: detailReach, Z: detailReach}
		about = append(about, v.Add(d), v.Sub(d))
	}
	l.p = plot.Fit(plot.LeftSide, plot.Box(0, 0, width, height), about...)
	return o.draw(l, width, height, false)
}

// extent returns points about all that the view shows.
func (o *Overlay) extent(radius float64, half bool) (all []plot.Vec) {
	if half {
		all = append(all, plot.Vec{Z: radius})
	}
	for _, at := range []*solver.Placed{&o.of, &o.under} {
		o.rig.points(at, func(x ref) {
			if !half || x.group != sideGroup || x.side == solver.Left {
				v := o.rig.place(at, x)
				if half {
					v.Y = max(v.Y, 0)
				}
				all = append(all, v)
			}
		})
	}
	for _, side := range solver.Sides {
		if half && side == solver.Right {
			continue
		}
		c := o.rig.place(&o.of, o.rig.wheel[side])
		d := plot.Vec{X: radius, Y: radius * tyreWidthPart / 2, Z: radius}
		all = append(all, c.Add(d), c.Sub(d))
	}
	return all
}

// draw draws the car with its wheels, and over it what differs.
func (o *Overlay) draw(l *linkage, width, height float64, wheels bool) plot.Picture {
	p := plot.Picture{Width: width, Height: height}
	if wheels {
		for _, side := range solver.Sides {
			if l.near && side == solver.Right {
				continue
			}
			p.Draw("tyre", appendWheel(nil, l.p, l.tyre[side]))
		}
	}
	l.draw()
	for i, class := range [layerCount]string{partLayer: "solid", bodyLayer: "body", knuckleLayer: "knuckle", rodLayer: "solid rod"} {
		p.Draw(class, l.paths[i])
	}
	own, other, balls := o.differing(l)
	p.Draw("differs "+plot.SeriesStyle(o.car).Class, own)
	p.Draw("ball", l.joint)
	p.Draw("other", other)
	p.Draw("mark "+plot.SeriesStyle(o.car).Class, balls)
	if l.near && wheels {
		p.Draw("axis", centreLine(l.p.At(plot.Vec{}).X, height))
	}
	return p
}

// centreLine appends the axis of symmetry with its two short strokes at both ends.
func centreLine(x, height float64) plot.Path {
	const stroke, gap = 6, 4
	var p plot.Path
	p = p.Polyline(plot.Point{X: x, Y: 2}, plot.Point{X: x, Y: height - 2})
	for _, y := range []float64{8, 8 + gap, height - 8 - gap, height - 8} {
		p = p.Polyline(plot.Point{X: x - stroke, Y: y}, plot.Point{X: x + stroke, Y: y})
	}
	return p
}

// seen is the least distance on the paper, in CSS pixels, at which two places differ.
const seen = 0.4

// differing returns the outlines of the bars that do not stand where the other car has
// them, of both cars, and the balls at their ends.
func (o *Overlay) differing(l *linkage) (own, other, balls plot.Path) {
	under := *l
	under.at = &o.under
	moved := func(x ref) bool { return l.on(x).Sub(under.on(x)).Length() > seen }
	for i := range o.rig.bars {
		b := &o.rig.bars[i]
		if !l.shows(b.from) || l.armOnly && b.layer == rodLayer || !moved(b.from) && !moved(b.to) {
			continue
		}
		own = appendBar(own, l.on(b.from), l.on(b.to), l.width(b.width))
		other = appendBar(other, under.on(b.from), under.on(b.to), l.width(b.width))
	}
	for _, x := range o.rig.balls {
		if l.shows(x) && !(l.armOnly && l.isInner(x)) && moved(x) {
			balls = balls.Circle(l.on(x), l.ball())
			other = other.Circle(under.on(x), l.ball())
		}
	}
	return own, other, balls
}
