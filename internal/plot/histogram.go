package plot

import "math"

// Bins counts values between round edges, at most most bins; counts[i] is for
// edges[i] up to, but for the last bin without, edges[i+1]. Gaps are passed over.
// Values that are all alike, or none, have no bins.
func Bins(values []float64, most int) (edges []float64, counts []int) {
	d, _ := DomainOf(values)
	for _, tick := range Ticks(nil, d.Nice(most+1), most+1) {
		edges = append(edges, tick.Value)
	}
	if len(edges) < 2 {
		return nil, nil
	}
	counts = make([]int, len(edges)-1)
	first, width := edges[0], edges[1]-edges[0]
	for _, v := range values {
		if finite(v) {
			i := int(math.Floor((v - first) / width))
			counts[min(max(i, 0), len(counts)-1)]++
		}
	}
	return edges, counts
}

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
