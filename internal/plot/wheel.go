package plot

// Wheel is a wheel as it is drawn: a cylinder about its spindle.
type Wheel struct {
	Centre        Vec
	Axis          Vec     // along the spindle, of any length: camber and toe are in it
	Radius, Width float64 // mm
}

// AppendTyre appends the outline of a wheel: of its cylinder, and of the face towards
// the reader. Seen along the spindle both are one circle; seen square to it the
// outline is the rectangle of the tyre's section, leaning by camber and toe.
func (p Projection) AppendTyre(dst Path, w Wheel) Path {
	d := p.disc(w)
	half := d.axis.Times(w.Width / 2)
	near, far := p.At(w.Centre).Add(half), p.At(w.Centre).Sub(half)
	dst = dst.MoveTo(near.Add(d.rim))
	dst = dst.ArcTo(d.minor, d.major, d.turn, false, true, near.Sub(d.rim)).LineTo(far.Sub(d.rim))
	dst = dst.ArcTo(d.minor, d.major, d.turn, false, true, far.Add(d.rim)).Close()
	if d.minor < edgeOn {
		return dst
	}
	return d.append(dst, near)
}

// AppendDisc appends the ellipse of a circle about the wheel's centre, square to its
// spindle: the rim, with the rim's radius, or a brake disc.
func (p Projection) AppendDisc(dst Path, w Wheel) Path { return p.disc(w).append(dst, p.At(w.Centre)) }

// edgeOn is the width, in units of the paper, below which a face is a line.
const edgeOn = 0.05

// disc is a circle as it is projected: an ellipse.
type disc struct {
	axis         Point   // step on the paper of 1 mm along the spindle, towards the reader
	rim          Point   // from the centre to the end of the major half axis
	minor, major float64 // half axes
	turn         float64 // of the minor axis, degrees clockwise
}

func (p Projection) disc(w Wheel) disc {
	axis := w.Axis.Times(1 / w.Axis.Length())
	if axis.Dot(p.Out) < 0 {
		axis = axis.Times(-1)
	}
	step := p.Step(axis)
	along := step.Unit()
	major := w.Radius * p.Scale
	return disc{
		axis:  step,
		rim:   along.Across().Times(-major),
		minor: major * min(axis.Dot(p.Out), 1),
		major: major,
		turn:  along.Angle(),
	}
}

func (d disc) append(dst Path, centre Point) Path {
	from, to := centre.Add(d.rim), centre.Sub(d.rim)
	dst = dst.MoveTo(from).ArcTo(d.minor, d.major, d.turn, false, true, to)
	return dst.ArcTo(d.minor, d.major, d.turn, false, true, from).Close()
}
