package study

import (
	"fmt"
	"slices"
)

// checkSigns looks for points on the wrong side of the car or below the ground.
func checkSigns(d *Document) []Finding {
	var found []Finding
	for _, c := range d.corners() {
		found = append(found, c.checkSide()...)
		found = append(found, checkGround(c.points, c.path)...)
	}
	return append(found, checkGround(d.Suspension.Common, func(p string) string { return "suspension." + p })...)
}

// checkSide looks for points of a side that lie on the other one. Where most do,
// that is one finding, not one for each.
func (c *placedCorner) checkSide() []Finding {
	var wrong []Finding
	for _, name := range c.names() {
		v := c.points[name]
		if c.outboard(v) >= 0 || slices.Contains(c.crossing, name) {
			continue
		}
		wrong = append(wrong, Finding{
			Path: c.path(name), Severity: Warning,
			Message:    fmt.Sprintf("y is %g, on the other side of the car", v[1]),
			Suggestion: fmt.Sprintf("y left of the centreline is positive, right of it negative: %g?", -v[1]),
		})
	}
	if 2*len(wrong) <= len(c.points) {
		return wrong
	}
	return []Finding{{
		Path: "suspension." + string(c.side), Severity: Warning,
		Message:    fmt.Sprintf("%d of the %d points of the %s side have y on the other side", len(wrong), len(c.points), c.side),
		Suggestion: "y left of the centreline is positive, right of it negative: change the sign of y, or enter them as the other side",
	}}
}

// checkGround looks for points below the ground.
func checkGround(points Points, path func(string) string) []Finding {
	var found []Finding
	for _, name := range sortedNames(points) {
		if z := points[name][2]; z < 0 {
			found = append(found, Finding{
				Path: path(name), Severity: Warning,
				Message:    fmt.Sprintf("z is %g, below the ground", z),
				Suggestion: "z counts upward from the ground under the tyres",
			})
		}
	}
	return found
}
