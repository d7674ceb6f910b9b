package plot

// AppendSpark appends to line a small curve without axes, and to zero the line on
// which the value is zero, where the area has it.
func AppendSpark(line, zero Path, area Rect, along Axis, c Curve, x, y Domain) (Path, Path) {
	f := NewFrame(area, x, y)
	from, to := f.across(along.other())
	level := f.Scale(along.other()).At(0)
	if p := along.point(from, level); area.Contains(p) {
		zero = zero.Polyline(p, along.point(to, level))
	}
	return f.AppendMonotone(line, along, c.X, c.Y), zero
}
