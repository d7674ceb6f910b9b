package study

import (
	"slices"

	"toewright/solver"
)

// Severity says how sure a finding is.
type Severity string

// The severities of findings.
const (
	Error   Severity = "error"   // Error: the linkage cannot be solved like this.
	Warning Severity = "warning" // Warning: very likely a slip.
	Note    Severity = "note"    // Note: worth a look.
)

// Finding is something about a document that looks like a slip of the tape or the
// keyboard.
type Finding struct {
	Path       string   `json:"path"` // Path names the value, like "suspension.left.tieRodOuter".
	Severity   Severity `json:"severity"`
	Message    string   `json:"message"`
	Suggestion string   `json:"suggestion,omitzero"` // Suggestion says what to do, where there is something.
}

// Check looks for slips: wrong signs, swapped pairs, inches among millimetres,
// points on top of each other, a wheel off the ground, readings that jump. It
// never refuses a document; only a finding of severity [Error] keeps the linkage
// from being solved. Findings come in the order of the file's sections.
func Check(d *Document) []Finding {
	return d.checked(
		checkVehicle, checkSigns, checkOrder, checkScale, checkCoincident, checkWheel,
		checkMirror, checkSetpoints, checkLinkage, checkRods, checkTravel, checkCandidates,
		checkJobs, checkNames, checkReadings, checkLoads, checkMeasured, checkArm,
	)
}

// checked returns what some checks find.
func (d *Document) checked(checks ...func(*Document) []Finding) (found []Finding) {
	for _, check := range checks {
		found = append(found, check(d)...)
	}
	return found
}

// corners lists the sides whose points stand in the file, with their paths.
func (d *Document) corners() []placedCorner {
	var crossing []string
	if kind, err := solver.KindByName(d.Suspension.Type); err == nil {
		crossing = kind.Crossing
	}
	list := []placedCorner{{Left, d.Suspension.Left.Points, d.sidePath(Left), crossing}}
	if d.Suspension.Right != nil {
		list = append(list, placedCorner{Right, d.Suspension.Right.Points, d.sidePath(Right), crossing})
	}
	return list
}

// placedCorner is a side's points and how the file's path of each is made.
type placedCorner struct {
	side   Side
	points Points
	path   func(point string) string
	// crossing are the points that may stand beyond the car's centre plane.
	crossing []string
}

// outboard returns how far outboard of the car's centre plane a point lies.
func (c *placedCorner) outboard(v Vec3) float64 {
	if c.side == Right {
		return 0 - v[1]
	}
	return v[1]
}

// names lists the points of the corner by the alphabet.
func (c *placedCorner) names() []string { return sortedNames(c.points) }

// sortedNames lists the names of points by the alphabet.
func sortedNames(points Points) []string {
	names := make([]string, 0, len(points))
	for name := range points {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// sidePath returns the path that a side's point has in the file.
func (d *Document) sidePath(side Side) func(string) string {
	if d.Suspension.Common != nil {
		return func(point string) string { return "suspension." + sidedPath(point, side) }
	}
	return func(point string) string { return "suspension." + string(side) + "." + point }
}
