package engine

import (
	"context"

	"toewright/internal/study"
	"toewright/solver"
)

// WhyOptions say which car is explained, and by what it is judged.
type WhyOptions struct {
	Candidate string `json:"candidate,omitzero"` // "base", where empty, is the base car
	// Step is that of what can be made, such as whole spacers, in file units; 0 is none.
	Step float64 `json:"step,omitzero"`
	// Limit is the most toe change less target that is wanted, degrees.
	Limit float64 `json:"limit,omitzero"`
}

// WhyResult is what [Why] returns.
type WhyResult struct {
	Candidate string `json:"candidate"`
	Window    Window `json:"window"`
	// Sides are one for both wheels where those are alike, else left and right.
	Sides []WhySide `json:"sides"`
}

// WhySide says why the wheels of a side toe as they do.
type WhySide struct {
	Side string `json:"side"` // "both", "left" or "right"
	// SetUps are those that the search must serve, or one without a name: the car as it
	// stands. Decides is the place of the one whose curve is explained, the worst.
	SetUps  []WhySetUp `json:"setUps"`
	Decides int        `json:"decides"`
	Causes  []Cause    `json:"causes"` // by their share, the largest first
	// Problem says why a set-up cannot be judged; there are no causes then.
	Problem string `json:"problem,omitzero"`
}

// WhySetUp is a set-up and how the car serves it.
type WhySetUp struct {
	Name string `json:"name"`
	Peak Number `json:"peak"` // of toe change less target, degrees, of the worse wheel
}

// The shapes of a toe curve, each with a cause of its own.
const (
	SlopeShape     = "slope"
	CurvatureShape = "curvature"
	RestShape      = "rest" // what neither a line nor a parabola makes up: the S-shape
)

// Cause is a part of a toe curve and what would mend it.
type Cause struct {
	Shape string `json:"shape"`
	Share Number `json:"share"` // of the mean square of toe change less target, 0 to 1
	// Wants says how far each set-up by itself wants the ball moved, in file units, up or
	// outboard positive; empty but where the set-ups pull apart, so that there is no move.
	Wants []Number `json:"wants"`
	// Moves are those of the parts, the first that which the cause is named by.
	Moves []WhyMove `json:"moves"`
	// Changes are all that the car makes once it has the moves; nil where there are none
	// worth making.
	Changes study.Changes `json:"changes,omitzero"`
	Peaks   []Number      `json:"peaks"` // of each set-up then, degrees
}

// WhyMove is how far a part is to be moved, beside what the car changes already.
type WhyMove struct {
	Parameter string `json:"parameter"`
	Exact     Number `json:"exact"` // in file units
	Made      Number `json:"made"`  // the nearest of what can be made
	// Low and High are the moves between which every set-up keeps the limit; none where
	// there are none. Outside says that no step lies between them, so that Made is exact.
	Low     Number `json:"low"`
	High    Number `json:"high"`
	Outside bool   `json:"outside"`
	Total   Number `json:"total"` // what the car changes of the part then
}

// Why explains why a car's wheels toe as they move, in the set-up that decides, and what
// moves of its balls would mend that in all set-ups of the search.
func Why(ctx context.Context, d *study.Document, o WhyOptions) (*WhyResult, error) {
	s, car, err := newJudged(d, o.Candidate)
	if err != nil {
		return nil, err
	}
	w := s.window
	out := &WhyResult{Candidate: car.name, Window: Window{w.Bump, w.Droop, w.Step}}
	list, err := s.scenarios()
	if err != nil {
		return nil, err
	}
	if len(list) == 0 {
		list = []setUp{{}}
		list[0].Weight = 1
	}
	for _, sides := range s.apart(car.axle) {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		p := s.studyJudging()
		p.Judge = sides
		m := mender{setUps: s.judgedIn(list, &p), axle: car.axle, selection: sides, options: o}
		out.Sides = append(out.Sides, m.why(d.Candidate(car.name)))
	}
	return out, nil
}

// alikeToe is how much the toe changes of the two sides may differ, in radians, for them to
// be explained together: less than any gauge shows.
const alikeToe = 1e-7

// apart returns the sides that are explained by themselves: both at once where they are
// alike, or where one drag link steers both.
func (s *sweeper) apart(x *solver.Axle) []solver.Selection {
	both := []solver.Selection{solver.BothSides}
	if x.Solid() {
		return both
	}
	in := solver.SweepInput{ToeOnly: true, Travels: s.grid.mm}
	if x.Sweep(s.ws, &in, &s.curves) != nil {
		return both
	}
	l, r := s.curves[solver.Left].Positions, s.curves[solver.Right].Positions
	wanted, zero := targets(s.doc), len(s.grid.below())
	for i := range min(len(l), len(r)) {
		of := func(side solver.Side, ps []solver.Position) float64 {
			return float64(ps[i].Toe - ps[min(zero, len(ps)-1)].Toe - wanted[side].At(ps[i].Travel))
		}
		if d := of(solver.Left, l) - of(solver.Right, r); d > alikeToe || d < -alikeToe {
			return []solver.Selection{solver.LeftOnly, solver.RightOnly}
		}
	}
	return both
}
