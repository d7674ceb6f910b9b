package plot

import "sort"

// Sample is a value at a place of the independent variable: a toe at a travel.
type Sample struct{ At, Value float64 }

// Stroke draws with a pointer on a curve that has one value for each place: every
// place that the pointer passes on its way takes the pointer's value. So a target
// drawn by hand has one toe for each travel, whichever way and however often the
// hand went. The places at must grow; values that were never drawn are NaN. A
// pointer set down without moving draws at the nearest place.
func Stroke(at, values []float64, from, to Sample) {
	if from.At > to.At {
		from, to = to, from
	}
	if from.At == to.At {
		touch(at, values, to)
		return
	}
	for i := sort.SearchFloat64s(at, from.At); i < len(at) && at[i] <= to.At; i++ {
		values[i] = mix(from.Value, to.Value, (at[i]-from.At)/(to.At-from.At))
	}
}

// touch draws at the place nearest to s, if s is within the range of places.
func touch(at, values []float64, s Sample) {
	i := sort.SearchFloat64s(at, s.At)
	if i > 0 && i < len(at) && s.At-at[i-1] < at[i]-s.At {
		i--
	}
	if i < len(at) && s.At >= at[0] {
		values[i] = s.Value
	}
}

// Samples returns the values that are not gaps.
func Samples(at, values []float64) []Sample {
	var samples []Sample
	for i := range min(len(at), len(values)) {
		if finite(values[i]) {
			samples = append(samples, Sample{at[i], values[i]})
		}
	}
	return samples
}

// Samples returns the values under the points of a pointer, with the independent
// variable along an axis.
func (f Frame) Samples(along Axis, pointer []Point) []Sample {
	samples := make([]Sample, len(pointer))
	for i, p := range pointer {
		x, y := f.Invert(p)
		at, value := along.split(Point{x, y})
		samples[i] = Sample{at, value}
	}
	return samples
}
