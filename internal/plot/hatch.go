package plot

// strokes is the number of slanted lines that stand for the body.
const strokes = 5

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
