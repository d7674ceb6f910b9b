package plot

// Rect is an upright rectangle of the paper from Min (top left) to Max (bottom
// right), edges included.
type Rect struct{ Min, Max Point }

// Box returns the rectangle with its top left corner at x, y.
func Box(x, y, width, height float64) Rect {
	return Rect{Point{x, y}, Point{x + width, y + height}}
}

// Width returns the extent to the right.
func (r Rect) Width() float64 { return r.Max.X - r.Min.X }

// Height returns the extent downward.
func (r Rect) Height() float64 { return r.Max.Y - r.Min.Y }

// Centre returns the middle.
func (r Rect) Centre() Point { return r.Min.Towards(r.Max, 0.5) }

// Contains reports whether p is in r or on its edge.
func (r Rect) Contains(p Point) bool {
	return p.X >= r.Min.X && p.X <= r.Max.X && p.Y >= r.Min.Y && p.Y <= r.Max.Y
}

// Overlaps reports whether r and s share more than an edge.
func (r Rect) Overlaps(s Rect) bool {
	return r.Min.X < s.Max.X && s.Min.X < r.Max.X && r.Min.Y < s.Max.Y && s.Min.Y < r.Max.Y
}

// Inset returns r with each edge moved inward; negative distances move it outward.
func (r Rect) Inset(left, top, right, bottom float64) Rect {
	return Rect{Point{r.Min.X + left, r.Min.Y + top}, Point{r.Max.X - right, r.Max.Y - bottom}}
}

// nearest returns the point of r that is nearest to p.
func (r Rect) nearest(p Point) Point {
	return Point{clamp(p.X, r.Min.X, r.Max.X), clamp(p.Y, r.Min.Y, r.Max.Y)}
}

// clamp returns v, or the end of low..high that it lies beyond.
func clamp(v, low, high float64) float64 { return max(low, min(v, high)) }
