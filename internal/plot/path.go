package plot

import (
	"math"
	"strconv"
)

// Path is SVG path data under construction, the value of an attribute d. Its
// methods append as append does and return the longer path; path[:0] is the empty
// path that keeps its buffer. Commands are absolute, coordinates rounded to 0.01.
type Path []byte

// MoveTo begins a new line at q.
func (p Path) MoveTo(q Point) Path { return append(p, 'M').point(q) }

// LineTo draws a straight line to q.
func (p Path) LineTo(q Point) Path { return append(p, 'L').point(q) }

// CurveTo draws a cubic Bézier curve to q with the control points c and d.
func (p Path) CurveTo(c, d, q Point) Path {
	return append(append(append(p, 'C').point(c), ' ').point(d), ' ').point(q)
}

// ArcTo draws a part of an ellipse to q. Its half axes are rx and ry, the first
// turned by turn degrees clockwise; large and clockwise choose one of the four arcs
// that fit. Half an axis of zero is a straight line.
func (p Path) ArcTo(rx, ry, turn float64, large, clockwise bool, q Point) Path {
	p = append(p, 'A').point(Point{rx, ry})
	p = append(append(p, ' ').number(turn), ' ', bit(large), ' ', bit(clockwise), ' ')
	return p.point(q)
}

// Close draws a straight line to where the line began.
func (p Path) Close() Path { return append(p, 'Z') }

// Polyline draws a line through all points.
func (p Path) Polyline(points ...Point) Path {
	for i, q := range points {
		if i == 0 {
			p = p.MoveTo(q)
		} else {
			p = p.LineTo(q)
		}
	}
	return p
}

// Polygon draws a closed line through all points.
func (p Path) Polygon(points ...Point) Path {
	if len(points) == 0 {
		return p
	}
	return p.Polyline(points...).Close()
}

// Rect draws a rectangle.
func (p Path) Rect(r Rect) Path {
	return p.Polygon(r.Min, Point{r.Max.X, r.Min.Y}, r.Max, Point{r.Min.X, r.Max.Y})
}

// Circle draws a circle of the radius about c.
func (p Path) Circle(c Point, radius float64) Path {
	left, right := Point{c.X - radius, c.Y}, Point{c.X + radius, c.Y}
	p = p.MoveTo(left).ArcTo(radius, radius, 0, false, true, right)
	return p.ArcTo(radius, radius, 0, false, true, left).Close()
}

// String returns the path data.
func (p Path) String() string { return string(p) }

func (p Path) point(q Point) Path { return append(p.number(q.X), ' ').number(q.Y) }

func bit(b bool) byte {
	if b {
		return '1'
	}
	return '0'
}

// perUnit is the number of steps that a coordinate has in one unit of the paper:
// finer than a screen shows at any usual zoom.
const perUnit = 100

// farOff is the largest coordinate written, far off any paper. A NaN is written
// as -farOff, for one word "NaN" would make a browser drop all that follows it;
// callers leave gaps instead.
const farOff = 1e7

// number appends v rounded to 0.01, without trailing zeros and without a sign
// before zero.
func (p Path) number(v float64) Path {
	if !(v > -farOff) {
		v = -farOff
	}
	n := int64(math.Floor(min(v, farOff)*perUnit + 0.5))
	if n < 0 {
		p, n = append(p, '-'), -n
	}
	p = strconv.AppendInt(p, n/perUnit, 10)
	if rest := byte(n % perUnit); rest != 0 {
		p = append(p, '.', '0'+rest/10)
		if rest%10 != 0 {
			p = append(p, '0'+rest%10)
		}
	}
	return p
}
