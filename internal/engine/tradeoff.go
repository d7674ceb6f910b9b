package engine

import (
	"cmp"
	"context"
	"math"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// TradeOffOptions say what toe change is weighed against.
type TradeOffOptions struct {
	// Aim is the second aim, kept small: "stock", the distance of the parts from
	// the base car's; "ackermann", how far its percentage is from that asked for;
	// "ratio", the change of the steering ratio in percent.
	Aim       string  `json:"aim,omitzero"`
	Ackermann float64 `json:"ackermann,omitzero"` // percentage asked for; 100 where 0
	Designs   int     `json:"designs,omitzero"`   // 0 is [DefaultDesigns]
	Seed      *int    `json:"seed,omitzero"`
	Side      string  `json:"side,omitzero"` // that of [SearchOptions]
	// TargetOf and TargetSlope are those of [SearchOptions].
	TargetOf    string   `json:"targetOf,omitzero"`
	TargetSlope *float64 `json:"targetSlope,omitzero"`

	Progress func(Progress) `json:"-"`
}

// DefaultDesigns is how many designs a trade-off asks for.
const DefaultDesigns = 8

// TradeOffResult is what [TradeOff] returns: undominated designs, from the least
// toe change to the least of the aim.
type TradeOffResult struct {
	Units   study.Units     `json:"units"`
	Aim     string          `json:"aim"`
	AimUnit string          `json:"aimUnit"` // "mm", "in" or "%"
	Designs []TradeOffPoint `json:"designs"`
}

// TradeOffPoint is one design.
type TradeOffPoint struct {
	Values study.Changes `json:"values"`
	ToeFigures
	Aim Number `json:"aim"`
}

// TradeOff repeats the study's search with a second aim held ever smaller. A call
// that is cancelled returns the designs found so far.
func TradeOff(ctx context.Context, d *study.Document, o TradeOffOptions) (*TradeOffResult, error) {
	so := SearchOptions{Side: o.Side, Seed: o.Seed, TargetOf: o.TargetOf, TargetSlope: o.TargetSlope, Progress: o.Progress}
	d = so.withTarget(d)
	if err := d.ReadyToSearch(); err != nil {
		return nil, explain(err, "")
	}
	s, err := newSearcher(d, &so)
	if err != nil {
		return nil, err
	}
	aim, unit, err := s.aim(&o)
	if err != nil {
		return nil, err
	}
	t := optimize.TradeOff{ToeSearch: s.problem, Aim: aim, Levels: cmp.Or(o.Designs, DefaultDesigns)}
	front, err := t.Front(ctx, s.settings(&so))
	if err != nil {
		return nil, explain(err, "")
	}
	if len(front) == 0 {
		return nil, s.noAnswer(ctx, optimize.NotEvaluable)
	}
	out := &TradeOffResult{Units: d.Units, Aim: aim.Name, AimUnit: unit}
	for _, k := range front {
		out.Designs = append(out.Designs, TradeOffPoint{s.values(k.Values), toeFigures(k.Best), Number(k.Aim)})
	}
	return out, nil
}

// aim returns the second aim, in file units or percent.
func (s *searcher) aim(o *TradeOffOptions) (optimize.Limit, string, error) {
	base, err := s.byName(study.BaseName)
	if err != nil {
		return optimize.Limit{}, "", err
	}
	switch o.Aim {
	case "", "stock":
		scale := s.doc.Units.FromMillimetres(1)
		return optimize.Limit{Name: "stock", Scale: scale, Of: s.fromStock}, string(s.doc.Units), nil
	case "ackermann":
		want := cmp.Or(o.Ackermann, 100)
		return optimize.Limit{Name: "ackermann", Scale: 1, Of: func(x *solver.Axle, ws *solver.Workspace) float64 {
			turn, ok := turnOf(x, ws, solver.Left)
			if !ok {
				return math.NaN()
			}
			return math.Abs(float64(ackermann(x, turn)) - want)
		}}, "%", nil
	case "ratio":
		was, ok := steered(base.axle, s.ws, 0)
		if !ok {
			return optimize.Limit{}, "", wrongf("aim", "ratio asks for a steering gear")
		}
		return optimize.Limit{Name: "ratio", Scale: 1, Of: func(x *solver.Axle, ws *solver.Workspace) float64 {
			now, ok := steered(x, ws, 0)
			if !ok {
				return math.NaN()
			}
			return 100 * math.Abs(was.MeanRate()/now.MeanRate()-1)
		}}, "%", nil
	}
	return optimize.Limit{}, "", wrongf("aim", "%.40q is no aim, want stock, ackermann or ratio", o.Aim)
}

// fromStock returns how far the parts that are searched for stand from the base
// car's, all together, in file units.
func (s *searcher) fromStock(x *solver.Axle, _ *solver.Workspace) float64 {
	sum := 0.0
	for _, c := range x.Changes() {
		for i := range s.problem.Free {
			f := &s.problem.Free[i]
			if f.Key() == c.Key() && !c.Parameter.Absolute {
				sum += c.Value * c.Value
			}
		}
	}
	return s.doc.Units.FromMillimetres(math.Sqrt(sum))
}
