package engine

import (
	"maps"
	"math"
	"slices"

	"toewright/internal/study"
	"toewright/solver"
)

// LiveCar is one car of a study that is being edited. It is solved again in its own
// memory: [LiveCar.Solution] tells whether it was.
type LiveCar struct {
	study.Candidate     // as the study has it; of the base car the name alone
	Index           int // 0 for the base car, else 1 + the candidate's place
	// Err says why the car cannot be solved; there are no curves then, and no number among
	// its figures.
	Err  error
	Axle *solver.Axle
	// Curves are toe and more along the travel, straight ahead: what [solver.SweepInput]
	// calls Ground and Instant at travel 0 alone.
	Curves [2]solver.Curve
	// Figures are those of the toe over the travels judged, against the study's target, and
	// Reach how much of them the car reaches.
	Figures [2]solver.Figures
	Reach   [2]solver.Reach

	axle    solver.Axle
	judged  [2]solver.Curve // where the window judged is one of its own
	changes []solver.Change
	solved  uint64
}

// Solution tells one solution of a car from every other: what was made of a car holds for
// as long as its solution is the same.
type Solution struct {
	axle   *solver.Axle
	solved uint64
}

// Solution returns that of the car.
func (c *LiveCar) Solution() Solution { return Solution{&c.axle, c.solved} }

// Rest returns the wheel of a side at travel 0, nil where the car cannot be solved.
func (c *LiveCar) Rest(s solver.Side) *solver.Position { return c.Curves[s].Rest() }

// ToeChange returns a side's toe change at a travel of its curve in mm; ok is false where
// the car does not reach it.
func (c *LiveCar) ToeChange(s solver.Side, travel float64) (a solver.Angle, ok bool) {
	rest := c.Rest(s)
	i := slices.IndexFunc(c.Curves[s].Positions, func(p solver.Position) bool { return p.Travel == travel })
	if rest == nil || i < 0 {
		return 0, false
	}
	return c.Curves[s].Positions[i].Toe - rest.Toe, true
}

// forget leaves a car without axle and curves.
func (c *LiveCar) forget() {
	c.Axle = nil
	for _, side := range solver.Sides {
		for _, curve := range [2]*solver.Curve{&c.Curves[side], &c.judged[side]} {
			curve.Positions, curve.Reach = curve.Positions[:0], solver.Reach{}
		}
	}
}

// noToeFigures are those of a car that has none.
var noToeFigures = solver.Figures{
	Slope: math.NaN(), Curvature: math.NaN(), PeakToPeak: noAngle,
	Worst: noAngle, WorstTravel: math.NaN(), Peak: noAngle, PeakTravel: math.NaN(), RMS: noAngle,
}

var noAngle = solver.Angle(math.NaN())

// sameParts reports whether two candidates have the same parts and setpoints.
func sameParts(a, b *study.Candidate) bool {
	return maps.Equal(a.Changes, b.Changes) && slices.Equal(a.Hold, b.Hold) && (a.Hold == nil) == (b.Hold == nil)
}
