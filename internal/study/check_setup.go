package study

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"toewright/solver"
)

// Lengths of real cars, in mm.
const (
	shortestWheelbase = 1000
	longestWheelbase  = 5000
)

// checkVehicle looks for a wheelbase that no car has.
func checkVehicle(d *Document) []Finding {
	w := d.Units.Millimetres(d.Vehicle.Wheelbase)
	if w == 0 || w >= shortestWheelbase && w <= longestWheelbase {
		return nil
	}
	return []Finding{{
		Path: "vehicle.wheelbase", Severity: Warning,
		Message:    fmt.Sprintf("%g %s is not a car's", d.Vehicle.Wheelbase, d.Units),
		Suggestion: "is it in the file's units?",
	}}
}

// The largest static angles that alignment sheets give, in degrees.
const (
	largestToe    = 2
	largestCamber = 8
)

// checkSetpoints looks for static angles that were entered as lengths.
func checkSetpoints(d *Document) []Finding {
	var found []Finding
	for _, c := range d.corners() {
		corner := d.Suspension.Corner(c.side)
		found = append(found, checkAngle(c.path("toe"), corner.Toe, largestToe)...)
		found = append(found, checkAngle(c.path("camber"), corner.Camber, largestCamber)...)
	}
	return found
}

// checkAngle looks at one static angle.
func checkAngle(path string, value, largest float64) []Finding {
	if math.Abs(value) <= largest {
		return nil
	}
	return []Finding{{
		Path: path, Severity: Warning,
		Message:    fmt.Sprintf("%g degrees is more than any car has", value),
		Suggestion: "angles are in degrees; was it read as a length at the rim?",
	}}
}

// checkLinkage looks for what keeps the solver from assembling the car.
func checkLinkage(d *Document) []Finding {
	design, err := d.Design()
	if err == nil {
		err = design.Check()
	}
	if err == nil {
		return nil
	}
	f := Finding{Path: "suspension", Severity: Error, Message: d.Units.Sentence(reason(err))}
	var input *solver.InputError
	if errors.As(err, &input) {
		f.Path = d.pathOf(input.Key)
	}
	return []Finding{f}
}

// pathOf returns the path in the file of what the solver calls by a key such as
// "lowerBallJoint@left".
func (d *Document) pathOf(key string) string {
	name, side, sided := strings.Cut(key, "@")
	switch {
	case sided:
		return d.sidePath(Side(side))(name)
	case strings.HasPrefix(key, "suspension.") || strings.HasPrefix(key, "steering."):
		return key
	}
	return "suspension." + key
}

// longestTravel is more than any wheel moves either way, in mm.
const longestTravel = 400

// checkTravel looks for a window with hardly a position in it, or beyond any wheel.
func checkTravel(d *Document) []Finding {
	w := d.Window()
	larger := max(w.Bump, w.Droop)
	switch {
	case w.Step > larger:
		return []Finding{{
			Path: "travel.step", Severity: Warning,
			Message:    fmt.Sprintf("a step of %g is larger than the travel of %g, so only the static position and the ends are left", w.Step, larger),
			Suggestion: "use a tenth of the travel",
		}}
	case d.Units.Millimetres(larger) > longestTravel:
		return []Finding{{
			Path: "travel", Severity: Warning,
			Message:    fmt.Sprintf("%g %s is more than any wheel moves", larger, d.Units),
			Suggestion: "is it in the file's units?",
		}}
	}
	return nil
}
