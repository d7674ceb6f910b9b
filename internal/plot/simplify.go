package plot

import "math"

// Simplify returns as few of the samples as hold the curve to within tolerance, by
// the method of Douglas and Peucker: straight lines between those kept pass every
// one dropped within tolerance, measured in the value (a toe), not square to the
// line, for travel and toe have no common length. First and last are kept.
func Simplify(samples []Sample, tolerance float64) []Sample {
	if len(samples) < 3 {
		return append([]Sample(nil), samples...)
	}
	kept := appendKept([]Sample{samples[0]}, samples, tolerance)
	return append(kept, samples[len(samples)-1])
}

// appendKept appends what is kept between the first and the last sample.
func appendKept(dst, samples []Sample, tolerance float64) []Sample {
	i, off := farthest(samples)
	if !(off > tolerance) {
		return dst
	}
	dst = appendKept(dst, samples[:i+1], tolerance)
	return appendKept(append(dst, samples[i]), samples[i:], tolerance)
}

// farthest returns the sample farthest from the line between first and last.
func farthest(samples []Sample) (index int, off float64) {
	first, last := samples[0], samples[len(samples)-1]
	for i, s := range samples {
		line := mix(first.Value, last.Value, (s.At-first.At)/(last.At-first.At))
		if d := math.Abs(s.Value - line); d > off {
			index, off = i, d
		}
	}
	return index, off
}
