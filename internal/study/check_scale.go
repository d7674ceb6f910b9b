package study

import (
	"fmt"
	"math"
)

// A point of a corner whose numbers stand out from those of all others like this
// is a slip. Inches among millimetres are off by 25, a lost digit by 10.
const (
	lowFactor = 5 // times lower than every other point
	farFactor = 2 // times farther out than the largest coordinate of all others
)

// checkScale looks for inches among millimetres and for digits too many: in the
// whole file, then point by point.
func checkScale(d *Document) []Finding {
	if f := d.checkFileUnits(); f != nil {
		return f
	}
	var found []Finding
	for _, c := range d.corners() {
		for _, name := range c.names() {
			found = append(found, d.checkPointScale(&c, name)...)
		}
	}
	return found
}

// wheel centres of real cars stand at heights, in mm, between these.
const (
	lowestWheel  = 100
	highestWheel = 900
)

// checkFileUnits looks for a whole file in the other units than it says, by the
// height of the wheel centre.
func (d *Document) checkFileUnits() []Finding {
	z := d.Suspension.wheelCentre(Left)[2]
	other := d.Units.Other()
	if isWheelHeight(d.Units.Millimetres(z)) || !isWheelHeight(other.Millimetres(z)) {
		return nil
	}
	return []Finding{{
		Path: "units", Severity: Warning,
		Message:    fmt.Sprintf("a wheel centre %g %s above the ground is not a car's", z, d.Units),
		Suggestion: fmt.Sprintf("are the numbers in %q?", other),
	}}
}

// isWheelHeight reports whether a height in mm may be a wheel centre's.
func isWheelHeight(z float64) bool { return z >= lowestWheel && z <= highestWheel }

// checkPointScale looks at the height of one point and at its largest coordinate
// against those of all others.
func (d *Document) checkPointScale(c *placedCorner, name string) []Finding {
	v := c.points[name]
	low, far := c.extent(name)
	if math.Abs(v[2])*lowFactor < low {
		return []Finding{d.scaleFinding(c.path(name), fmt.Sprintf("z is %g, far below every other point", v[2]), v, Inch)}
	}
	for i, axis := range [...]string{"x", "y", "z"} {
		if math.Abs(v[i]) > farFactor*far {
			return []Finding{d.scaleFinding(c.path(name), fmt.Sprintf("%s is %g, far beyond every other point", axis, v[i]), v, Millimetre)}
		}
	}
	return nil
}

// extent returns the least height and the largest coordinate of all points of the
// corner but one.
func (c *placedCorner) extent(but string) (low, far float64) {
	low = math.Inf(1)
	for name, v := range c.points {
		if name != but {
			low = math.Min(low, math.Abs(v[2]))
			far = max(far, math.Abs(v[0]), math.Abs(v[1]), math.Abs(v[2]))
		}
	}
	return low, far
}

// scaleFinding makes the finding about a point that may have been measured in
// other units than the file's.
func (d *Document) scaleFinding(path, message string, v Vec3, measured Units) Finding {
	f := Finding{Path: path, Severity: Warning, Message: message, Suggestion: "is a digit missing or too many?"}
	if measured != d.Units {
		for i := range v {
			v[i] = math.Round(measured.Convert(v[i], d.Units)*100) / 100
		}
		f.Suggestion = fmt.Sprintf("was it measured in %q? In %q it would be [%g, %g, %g]", measured, d.Units, v[0], v[1], v[2])
	}
	return f
}
