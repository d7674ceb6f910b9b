package dxf

import "math"

// Point is a place on the paper, mm, x to the right and y up.
type Point struct{ X, Y float64 }

// LineType is how the lines of a layer are broken.
type LineType string

// The line types.
const (
	Continuous LineType = "CONTINUOUS"
	Dashed     LineType = "DASHED"
	Chain      LineType = "CENTER"  // long and short dashes, for axes
	Phantom    LineType = "PHANTOM" // long dashes and two short ones, for what is not stated
)

// Layer is a layer of a drawing.
type Layer struct {
	Name   string
	Colour int // of the index of the format: 1 red, 3 green, 7 black on white
	Lines  LineType
}

// Drawing is what a file holds.
type Drawing struct {
	Remark   string // one line at the head of the file
	Layers   []Layer
	Entities []Entity
}

// Entity is a thing that is drawn.
type Entity interface {
	write(w *writer)
	extent() []Point
}

// Line is a straight line.
type Line struct {
	Layer    string
	From, To Point
	Lines    LineType // the layer's where empty
}

// Circle is a whole circle.
type Circle struct {
	Layer  string
	Centre Point
	Radius float64
	Lines  LineType // the layer's where empty
}

// Mark is a point that is drawn.
type Mark struct {
	Layer string
	At    Point
}

// Polyline runs straight from point to point, closed back to the first if Closed. A picture
// fills it if Filled; the format knows its edge alone.
type Polyline struct {
	Layer          string
	Points         []Point
	Closed, Filled bool
	Lines          LineType // the layer's where empty
}

// Align says which point of a text's base line stands at its place.
type Align int

// The alignments, by their numbers in the format.
const (
	Left   Align = 0
	Middle Align = 1
	Right  Align = 2
)

// Text is a line of words. Other letters than those of ASCII are written by their numbers,
// but for the signs of diameter, degree and plus-minus, which the format has its own for.
type Text struct {
	Layer  string
	At     Point
	Height float64 // of its capitals
	Align  Align
	Turn   float64 // degrees, counterclockwise about At
	Value  string
}

func (l Line) extent() []Point     { return []Point{l.From, l.To} }
func (m Mark) extent() []Point     { return []Point{m.At} }
func (p Polyline) extent() []Point { return p.Points }

func (c Circle) extent() []Point {
	return []Point{{c.Centre.X - c.Radius, c.Centre.Y - c.Radius}, {c.Centre.X + c.Radius, c.Centre.Y + c.Radius}}
}

func (t Text) extent() []Point {
	from := -t.Width() * float64(t.Align) / 2
	s, c := math.Sincos(t.Turn * math.Pi / 180)
	var list []Point
	for _, p := range [4]Point{{from, 0}, {from + t.Width(), 0}, {from, t.Height}, {from + t.Width(), t.Height}} {
		list = append(list, Point{t.At.X + c*p.X - s*p.Y, t.At.Y + s*p.X + c*p.Y})
	}
	return list
}

// Width returns how wide the text is about, mm.
func (t Text) Width() float64 { return t.Height * widthOfLetter * float64(len([]rune(t.Value))) }

// widthOfLetter is that of a letter by its height, wide enough for the fonts in use.
const widthOfLetter = 0.82

// Extent returns the lower left and the upper right corner of what is drawn.
func Extent(entities []Entity) (lo, hi Point) {
	first := true
	for _, e := range entities {
		for _, p := range e.extent() {
			if first {
				lo, hi, first = p, p, false
			}
			lo = Point{min(lo.X, p.X), min(lo.Y, p.Y)}
			hi = Point{max(hi.X, p.X), max(hi.Y, p.Y)}
		}
	}
	return lo, hi
}
