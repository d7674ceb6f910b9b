package step

// Vec is a place or a direction, mm.
type Vec [3]float64

// Point is a place with a name.
type Point struct {
	Name string
	At   Vec
}

// Line is a straight line through a point, trimmed to From..To along a direction of length
// 1, mm from that point.
type Line struct {
	Name           string
	Through, Along Vec
	From, To       float64
}

// Circle is a whole circle about an axis of length 1.
type Circle struct {
	Name         string
	Centre, Axis Vec
	Radius       float64
}

// Model is what a file holds.
type Model struct {
	Name   string // of the part
	Number string // part number; the name where there is none
	Author string
	Origin string // program that wrote it

	Points  []Point
	Lines   []Line
	Circles []Circle
}
