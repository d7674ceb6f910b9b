package plot

// LegendItem is the place of one series in a legend: a piece of its line with the
// marker in the middle, and its name.
type LegendItem struct {
	From, To Point
	Text     Anchor
}

// Key returns the place of the marker.
func (i LegendItem) Key() Point { return i.From.Towards(i.To, 0.5) }

// sizes of a legend in parts of the text's size.
const (
	keyLength = 2.6 // two periods of the longest usual dash
	keyGap    = 0.5
	itemGap   = 1.4
	rowHeight = 1.5
)

// Legend places names of a text size in rows within a width, from the corner at,
// and returns the height used. A name that is too long for the width has a row for
// itself.
func Legend(at Point, width, size float64, names []string) (items []LegendItem, height float64) {
	pen := Point{at.X, at.Y + size*rowHeight/2}
	for _, name := range names {
		item := size*(keyLength+keyGap) + TextWidth(name, size)
		if pen.X > at.X && pen.X+item > at.X+width {
			pen = Point{at.X, pen.Y + size*rowHeight}
		}
		items = append(items, legendItem(pen, size))
		pen.X += item + size*itemGap
	}
	if len(names) == 0 {
		return nil, 0
	}
	return items, pen.Y + size*rowHeight/2 - at.Y
}

func legendItem(at Point, size float64) LegendItem {
	to := at.Add(Point{size * keyLength, 0})
	return LegendItem{at, to, Anchor{At: to.Add(Point{size * keyGap, size * 0.35})}}
}

// QuietCorner returns the place for a box of the given size in that corner of the
// frame where it covers the fewest values of the curves; of equals the first of
// top right, top left, bottom right, bottom left.
func (f Frame) QuietCorner(curves []Curve, width, height float64) Rect {
	a := f.Area
	right, bottom := a.Max.X-width, a.Max.Y-height
	best, least := Rect{}, -1
	for _, at := range [...]Point{{right, a.Min.Y}, a.Min, {right, bottom}, {a.Min.X, bottom}} {
		box := Box(at.X, at.Y, width, height)
		if n := f.covered(box, curves); least < 0 || n < least {
			best, least = box, n
		}
	}
	return best
}

// covered counts the values within a box.
func (f Frame) covered(box Rect, curves []Curve) int {
	n := 0
	for _, c := range curves {
		for i := range c.len() {
			if box.Contains(f.At(c.X[i], c.Y[i])) {
				n++
			}
		}
	}
	return n
}
