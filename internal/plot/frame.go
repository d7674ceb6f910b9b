package plot

// Axis is one of a chart's two directions.
type Axis uint8

// The directions of a chart.
const (
	Horizontal Axis = iota
	Vertical
)

// Frame is the area of a chart with the scale of each direction. It may stand with
// travel upward and toe sideways, or the other way: Value and place of both axes
// are treated alike, and functions that must know ask along which [Axis] the
// independent variable runs.
type Frame struct {
	Area Rect
	X, Y Scale
}

// NewFrame returns the frame of an area with x growing to the right and y upward.
func NewFrame(area Rect, x, y Domain) Frame {
	return Frame{area, Scale{x, area.Min.X, area.Max.X}, Scale{y, area.Max.Y, area.Min.Y}}
}

// Mirrored returns the frame with x growing to the left, for the chart at the left
// of a wheel whose mate stands at the right.
func (f Frame) Mirrored() Frame {
	f.X.From, f.X.To = f.X.To, f.X.From
	return f
}

// At returns the place of a pair of values.
func (f Frame) At(x, y float64) Point { return Point{f.X.At(x), f.Y.At(y)} }

// Invert returns the values at a place.
func (f Frame) Invert(p Point) (x, y float64) { return f.X.Invert(p.X), f.Y.Invert(p.Y) }

// Scale returns the scale of a direction.
func (f Frame) Scale(a Axis) Scale {
	if a == Vertical {
		return f.Y
	}
	return f.X
}

// across returns the frame's extent in the other direction than a: the ends of a
// gridline that stands at a value of a.
func (f Frame) across(a Axis) (from, to float64) {
	if a == Vertical {
		return f.Area.Min.X, f.Area.Max.X
	}
	return f.Area.Min.Y, f.Area.Max.Y
}

// AppendGrid appends a gridline for each tick of an axis; ticks beyond the area
// are left out.
func (f Frame) AppendGrid(dst Path, a Axis, ticks []Tick) Path {
	from, to := f.across(a)
	for _, tick := range ticks {
		at := f.Scale(a).At(tick.Value)
		p, q := a.point(at, from), a.point(at, to)
		if f.Area.Contains(p) {
			dst = dst.MoveTo(p).LineTo(q)
		}
	}
	return dst
}

// point returns the point at along in direction a and across in the other.
func (a Axis) point(along, across float64) Point {
	if a == Vertical {
		return Point{across, along}
	}
	return Point{along, across}
}

// other returns the other axis.
func (a Axis) other() Axis { return Vertical - a }

// split returns the coordinates of p in direction a and in the other.
func (a Axis) split(p Point) (along, across float64) {
	if a == Vertical {
		return p.Y, p.X
	}
	return p.X, p.Y
}
