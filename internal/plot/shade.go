package plot

import "sort"

// Hole is the class of a value that is a gap.
const Hole = 255

// Classify appends for each value the number of levels that it reaches, from 0 to
// len(levels), or [Hole]. Levels grow; there are at most 254.
func Classify(dst []uint8, values, levels []float64) []uint8 {
	for _, v := range values {
		if !finite(v) {
			dst = append(dst, Hole)
			continue
		}
		n := sort.Search(len(levels), func(i int) bool { return levels[i] > v })
		dst = append(dst, uint8(n))
	}
	return dst
}

// deep is the colour of the highest class, far from either paper in lightness.
var deep = map[bool]Colour{false: {0x1d, 0x4e, 0x79}, true: {0xa6, 0xd3, 0xf0}}

// Ramp returns n colours for classes, from near the paper to deep blue, or on dark
// paper to light blue. Lightness runs one way, so that a grey copy has the order.
func Ramp(n int, dark bool) []Colour {
	paper := LightPaper
	if dark {
		paper = DarkPaper
	}
	colours := make([]Colour, n)
	for i := range colours {
		colours[i] = paper.mixed(deep[dark], (float64(i)+0.5)/float64(n))
	}
	return colours
}

// AppendPixels appends the classes of a grid as a bitmap of a pixel for each value:
// red, green, blue and opacity, the last row first, for rows grow upward. Holes,
// and classes beyond the ramp, are clear.
func AppendPixels(dst []byte, classes []uint8, columns int, ramp []Colour) []byte {
	if columns <= 0 {
		return dst
	}
	for row := len(classes)/columns - 1; row >= 0; row-- {
		for _, class := range classes[row*columns : (row+1)*columns] {
			if int(class) >= len(ramp) {
				dst = append(dst, 0, 0, 0, 0)
				continue
			}
			c := ramp[class]
			dst = append(dst, c.R, c.G, c.B, 255)
		}
	}
	return dst
}
