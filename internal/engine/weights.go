package engine

import "toewright/internal/study"

// weights returns how much each position counts; nil means alike.
func weights(d *study.Document, g grid) []float64 {
	points := d.Search.Weights
	if len(points) == 0 {
		return nil
	}
	w := make([]float64, len(g.file))
	for i, x := range g.file {
		w[i] = interpolate(points, x)
	}
	return w
}

// interpolate returns the value at x of a curve that is linear between its points
// and constant beyond them.
func interpolate(points [][2]float64, x float64) float64 {
	last := len(points) - 1
	for i, p := range points {
		switch {
		case x > p[0] && i < last:
			continue
		case i == 0 || x > p[0]:
			return p[1]
		}
		before := points[i-1]
		return before[1] + (x-before[0])/(p[0]-before[0])*(p[1]-before[1])
	}
	return points[last][1]
}
