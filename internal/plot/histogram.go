package plot

// AppendBins appends a bar upward from zero for each bin, with the edges along x.
func (f Frame) AppendBins(dst Path, edges []float64, counts []int) Path {
	for i, n := range counts {
		a, b := f.At(edges[i], 0), f.At(edges[i+1], float64(n))
		bar := Rect{Point{min(a.X, b.X), min(a.Y, b.Y)}, Point{max(a.X, b.X), max(a.Y, b.Y)}}
		if n > 0 && bar.Overlaps(f.Area) {
			dst = dst.Rect(Rect{f.Area.nearest(bar.Min), f.Area.nearest(bar.Max)})
		}
	}
	return dst
}
