package plot

import "math"

// linear returns the colour's light, each part 0..1, by the curve of IEC 61966-2-1.
func (c Colour) linear() [3]float64 {
	var light [3]float64
	for i, v := range [...]uint8{c.R, c.G, c.B} {
		light[i] = expand(float64(v) / 255)
	}
	return light
}

func expand(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

// luminance is the relative luminance of WCAG 2.2, 0 for black to 1 for white.
func (c Colour) luminance() float64 {
	light := c.linear()
	return 0.2126*light[0] + 0.7152*light[1] + 0.0722*light[2]
}

// Contrast returns the contrast ratio of WCAG 2.2, from 1 for two alike to 21 for
// black on white, whichever comes first.
func Contrast(a, b Colour) float64 {
	high, low := a.luminance(), b.luminance()
	if high < low {
		high, low = low, high
	}
	return (high + 0.05) / (low + 0.05)
}
