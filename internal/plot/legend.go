package plot

import "sort"

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

// Spread returns places for labels that want to stand at want, on a line from low
// to high: in the same order, at least gap apart, and with the least sum of squared
// shifts. Where there is no room for that the gap is cut to what there is.
func Spread(want []float64, gap, low, high float64) []float64 {
	n := len(want)
	if n > 1 {
		gap = min(gap, (high-low)/float64(n-1))
	}
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, j int) bool { return want[order[i]] < want[order[j]] })
	shifted := make([]float64, n) // the wants, less the gaps below them: now only to be in order
	for i, label := range order {
		shifted[i] = want[label] - gap*float64(i)
	}
	places := make([]float64, n)
	for i, v := range inOrder(shifted) {
		places[order[i]] = clamp(v, low, high-gap*float64(n-1)) + gap*float64(i)
	}
	return places
}

// inOrder returns the rising list nearest to v in the sum of squares, by pooling
// neighbours that are out of order until their means are in order.
func inOrder(v []float64) []float64 {
	type pool struct {
		sum float64
		n   int
	}
	mean := func(p pool) float64 { return p.sum / float64(p.n) }
	var pools []pool
	for _, x := range v {
		p := pool{x, 1}
		for len(pools) > 0 && mean(pools[len(pools)-1]) > mean(p) {
			last := pools[len(pools)-1]
			pools, p = pools[:len(pools)-1], pool{last.sum + p.sum, last.n + p.n}
		}
		pools = append(pools, p)
	}
	var list []float64
	for _, p := range pools {
		for range p.n {
			list = append(list, mean(p))
		}
	}
	return list
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
