package main

import (
	"image/color"
	"math"
)

// side is the width and height of the drawing's own grid.
const side = 512

// point is a place on the drawing, y downward as on the screen.
type point struct{ x, y float64 }

// stroke is a line with round ends through its points; of one point, a disc.
type stroke struct {
	points []point
	width  float64
	colour color.NRGBA
}

var (
	paper  = color.NRGBA{0xf7, 0xf5, 0xee, 0xff}
	ink    = color.NRGBA{0x22, 0x30, 0x3c, 0xff}
	pencil = color.NRGBA{0xc2, 0x4a, 0x1f, 0xff}
)

// drawing returns the icon: a toe curve on its axis, and a tie rod whose ball sits
// on it. All but the paper lies within 0.4 of the side from the middle, so that a
// round mask cuts nothing off.
func drawing() []stroke {
	ball := point{256, 256}
	return []stroke{
		{[]point{{256, 84}, {256, 428}}, 6, ink},
		{toeCurve(), 20, pencil},
		{[]point{ball, {424, 316}}, 30, ink},
		{[]point{ball}, 136, ink},
		{[]point{ball}, 92, paper},
		{[]point{ball}, 30, ink},
	}
}

// toeCurve returns a curve of third degree along the axis.
func toeCurve() []point {
	const steps = 48
	var points []point
	for i := range steps + 1 {
		t := 2*float64(i)/steps - 1
		points = append(points, point{256 - 150*t + 230*t*t*t - 25*t*t, 256 + 160*t})
	}
	return points
}

// distance returns how far p lies outside the stroke's edge, negative within.
func (s stroke) distance(p point) float64 {
	d := math.Hypot(p.x-s.points[0].x, p.y-s.points[0].y)
	for i := 1; i < len(s.points); i++ {
		d = min(d, toSegment(p, s.points[i-1], s.points[i]))
	}
	return d - s.width/2
}

// toSegment returns the distance of p from the segment a to b, which differ.
func toSegment(p, a, b point) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	t := ((p.x-a.x)*dx + (p.y-a.y)*dy) / (dx*dx + dy*dy)
	t = min(max(t, 0), 1)
	return math.Hypot(p.x-a.x-t*dx, p.y-a.y-t*dy)
}
