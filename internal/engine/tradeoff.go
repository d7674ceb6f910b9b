package engine

import (
	"context"
	"math"
	"slices"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// TradeOffOptions say what toe change is weighed against.
type TradeOffOptions struct {
	// Aim is the second aim, kept small: "stock", the distance of the parts from
	// the base car's; "ackermann", how far its percentage is from that asked for;
	// "ratio", the change of the steering ratio in percent.
	Aim       string   `json:"aim,omitzero"`
	Ackermann *float64 `json:"ackermann,omitzero"` // percentage asked for; [UsualAckermann] where nil
	Designs   *int     `json:"designs,omitzero"`   // nil is [DefaultDesigns]
	Seed      *int     `json:"seed,omitzero"`
	Side      string   `json:"side,omitzero"` // that of [SearchOptions]
	// TargetOf and TargetSlope are those of [SearchOptions].
	TargetOf    string   `json:"targetOf,omitzero"`
	TargetSlope *float64 `json:"targetSlope,omitzero"`

	Progress func(Progress) `json:"-"`
}

// UsualAckermann is the percentage that an Ackermann error is counted from where none
// is asked for: wheels that roll without scrub.
const UsualAckermann = 100

// DefaultDesigns is how many designs a trade-off asks for.
const DefaultDesigns = 8

// maxDesigns is the most that may be asked for: each is a search.
const maxDesigns = 1000

// TradeOffResult is what [TradeOff] returns: undominated designs, from the least
// toe change to the least that the aim comes to within the bounds and limits.
type TradeOffResult struct {
	Units    study.Units     `json:"units"`
	Minimise string          `json:"minimise"` // "rms" or "peak", beside the aim
	Side     string          `json:"side"`     // the side judged: "left", "right" or "both"
	Aim      string          `json:"aim"`
	AimUnit  string          `json:"aimUnit"` // "mm", "in" or "%"
	Goal     AimGoal         `json:"goal"`
	Designs  []TradeOffPoint `json:"designs"`
	// Stopped says that these are not all: the call was cancelled, or still runs.
	Stopped bool `json:"stopped,omitzero"`
}

// AimGoal is what an aim is counted from, of which a design's aim says how far it is.
type AimGoal struct {
	// Value is the Ackermann percentage asked for, the steering ratio of the base car,
	// which is none where the study states no input per turn, or the base car's parts,
	// 0.
	Value Number `json:"value"`
	Unit  string `json:"unit"` // "%", "mm", "in" or "" of a ratio
}

// TradeOffPoint is one design.
type TradeOffPoint struct {
	Values study.Changes `json:"values"`
	Scored
	// Aim is how far the design is from the goal: of both hands and all scenarios the
	// farthest.
	Aim Number `json:"aim"`
	// Loads are the largest of the study's load cases, as the car stands without set-ups.
	Loads []LoadPeak `json:"loads,omitzero"`
}

// Weighted reports whether what is minimised is another figure than the plain one.
func (r *TradeOffResult) Weighted() bool {
	return slices.ContainsFunc(r.Designs, func(p TradeOffPoint) bool { return p.weighted(r.Minimise) })
}

// TradeOff repeats the study's search with a second aim held ever smaller. A call
// that is cancelled returns the designs found so far.
func TradeOff(ctx context.Context, d *study.Document, o TradeOffOptions) (*TradeOffResult, error) {
	r, err := NewTradeOffRun(d, o)
	if err != nil {
		return nil, err
	}
	return r.Result(ctx, nil)
}

// secondAim is an aim of a trade-off, with what is said of it.
type secondAim struct {
	optimize.Aim
	unit  string
	goal  AimGoal
	shown func(float64) float64 // the aim in the unit
}

// aim returns the second aim.
func (s *searcher) aim(o *TradeOffOptions) (*secondAim, error) {
	switch o.Aim {
	case "", "stock":
		unit := string(s.doc.Units)
		return &secondAim{
			optimize.Aim{Name: "stock", Scale: 1}, unit, AimGoal{Unit: unit}, s.doc.Units.FromMillimetres,
		}, nil
	case "ackermann":
		return s.ackermannAim(o)
	case "ratio":
		return s.ratioAim()
	}
	return nil, wrongf("aim", "%.40q is not an aim, want stock, ackermann or ratio", o.Aim)
}

// itself is the aim in its own unit.
func itself(x float64) float64 { return x }

// ackermannAim is how far the percentage of each hand is from that asked for.
func (s *searcher) ackermannAim(o *TradeOffOptions) (*secondAim, error) {
	want := given(o.Ackermann, UsualAckermann)
	if math.IsNaN(want) || math.IsInf(want, 0) {
		return nil, wrongf("ackermann", "%g is not a percentage; 100 is that of wheels that roll without scrub, 0 of parallel ones", want)
	}
	if s.doc.Vehicle.Wheelbase == 0 {
		return nil, wrongf("vehicle.wheelbase", "is missing: an Ackermann percentage needs the wheelbase")
	}
	if err := s.checkSteers("ackermann"); err != nil {
		return nil, err
	}
	hands := s.hands()
	of := func(x *solver.Axle, ws *solver.Workspace, misses []float64, by *solver.Tangents, rates [][]float64) bool {
		exact := by != nil
		for i, side := range hands {
			misses[i] = math.NaN()
			p, err := turned(x, ws, side, solver.Attitude{})
			if err != nil {
				exact = false
				continue
			}
			misses[i] = float64(ackermann(x, p.Turn())) - want
			if !exact {
				continue
			}
			var list []solver.SteerRate
			list, exact = turnRates(x, ws, side, &p, solver.Attitude{}, by)
			for k := range list {
				rates[i][k] = x.AckermannRate(p.Turn(), &list[k])
			}
		}
		return exact
	}
	aim := optimize.Aim{Name: "ackermann", Scale: 1, Misses: len(hands), Of: of}
	return &secondAim{aim, "%", AimGoal{Number(want), "%"}, itself}, nil
}

// hands returns the wheels that are the inner one of a turn, one for both where every car of
// the search turns to either side alike.
func (s *searcher) hands() []solver.Side {
	g := &s.design.Gear
	one := s.design.Mirrored() && g.Kind == solver.Rack && g.Axis.X == 0 && g.Axis.Z == 0
	for i := range s.problem.Free {
		one = one && s.problem.Free[i].Sides == solver.BothSides
	}
	for _, up := range s.problem.Scenarios {
		for _, c := range up.Changes {
			one = one && c.Sides == solver.BothSides
		}
	}
	if one {
		return solver.Sides[:1]
	}
	return solver.Sides[:]
}

// checkSteers refuses an aim of a car without a steering gear.
func (s *searcher) checkSteers(aim string) error {
	if g := s.doc.Steering; g == nil || g.Type == "none" {
		return wrongf("aim", "%s asks for a steering gear: state steering, or take stock", aim)
	}
	return nil
}

// ratioAim is by how many percent the steering about straight ahead becomes quicker or
// slower than the base car's.
func (s *searcher) ratioAim() (*secondAim, error) {
	if err := s.checkSteers("ratio"); err != nil {
		return nil, err
	}
	base, err := s.byName(study.BaseName)
	if err != nil {
		return nil, err
	}
	was, err := steered(base.axle, s.ws, 0, solver.Attitude{})
	if err != nil {
		return nil, wrongf("aim", "ratio: the base car cannot be steered about straight ahead")
	}
	of := func(x *solver.Axle, ws *solver.Workspace, misses []float64, by *solver.Tangents, rates [][]float64) bool {
		misses[0] = math.NaN()
		p, err := steered(x, ws, 0, solver.Attitude{})
		if err != nil {
			return false
		}
		now := p.MeanRate()
		misses[0] = 100 * (was.MeanRate()/now - 1)
		if by == nil || !x.MeanRateRates(ws, solver.Attitude{}, by, rates[0]) {
			return false
		}
		for k := range rates[0] {
			rates[0][k] *= -100 * was.MeanRate() / (now * now)
		}
		return true
	}
	aim := optimize.Aim{Name: "ratio", Scale: 1, Misses: 1, Of: of}
	return &secondAim{aim, "%", AimGoal{Value: s.ratio(base.axle, s.ws)}, itself}, nil
}
