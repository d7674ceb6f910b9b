package plot

// strokes is the number of slanted lines that stand for the body.
const strokes = 5

// AppendPivot appends the sign of a pivot fixed to the body: a circle, and beyond
// it in the direction of body, which may have any length, a line with hatching. It
// is about three times size wide, and size is the circle's radius.
func AppendPivot(dst Path, at, body Point, size float64) Path {
	if !at.finite() {
		return dst
	}
	away := body.Unit().Times(size)
	along := away.Across().Times(1.5)
	foot := at.Add(away.Times(1.4))
	return AppendHatch(dst.Circle(at, size), foot.Sub(along), foot.Add(along), away)
}

// AppendHatch appends the edge of a fixed body: a line, and strokes on the side to
// which the step depth points.
func AppendHatch(dst Path, from, to, depth Point) Path {
	dst = dst.Polyline(from, to)
	slant := to.Sub(from).Times(-1.0 / strokes).Add(depth)
	for i := range strokes {
		foot := from.Towards(to, (float64(i)+1)/strokes)
		dst = dst.Polyline(foot, foot.Add(slant))
	}
	return dst
}
