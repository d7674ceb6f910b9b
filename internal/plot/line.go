package plot

// AppendLine appends the straight lines through the values (xs[i], ys[i]), broken
// at gaps and cut at the edge of the frame. A value alone between two gaps draws
// nothing; a marker shows it.
func (f Frame) AppendLine(dst Path, xs, ys []float64) Path {
	p := pen{path: dst, area: f.Area}
	for i := range min(len(xs), len(ys)) {
		p.to(f.At(xs[i], ys[i]))
	}
	return p.path
}
