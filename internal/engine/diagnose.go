package engine

import (
	"context"
	"fmt"

	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// DiagnoseOptions say which car is explained.
type DiagnoseOptions struct {
	Candidate string `json:"candidate,omitzero"` // restricts to one car; "base" is the base car
}

// DiagnoseResult is what [Diagnose] returns.
type DiagnoseResult struct {
	Units  study.Units `json:"units"`
	Window Window      `json:"window"`
	Cars   []Diagnosed `json:"cars"` // left then right of each
}

// Diagnosed says why one side's toe curve is what it is, and what would correct it.
// Angles are in degrees.
type Diagnosed struct {
	Candidate string `json:"candidate"`
	Side      string `json:"side"`
	RMS       Number `json:"rms"` // of toe change less target
	// SlopeShare, CurvatureShare and RestShare are the parts of its mean square
	// that a straight line, a parabola and what they leave (the S-shape) make up.
	SlopeShare     Number   `json:"slopeShare"`
	CurvatureShare Number   `json:"curvatureShare"`
	RestShare      Number   `json:"restShare"`
	Remedies       []Remedy `json:"remedies"` // alternatives
	// Words says the same in sentences.
	Words []string `json:"words"`
}

// Remedy is a change that would mend a curve, and what is left then.
type Remedy struct {
	Changes study.Changes `json:"changes"` // as those of a candidate, beside the car's own
	RMS     Number        `json:"rms"`
}

// Diagnose explains the toe curves of the base car and each candidate over the
// window of the search, or else of travel.
func Diagnose(ctx context.Context, d *study.Document, o DiagnoseOptions) (*DiagnoseResult, error) {
	s, err := newJudge(d, "")
	if err != nil {
		return nil, err
	}
	list, err := s.pick(ctx, o.Candidate)
	if err != nil {
		return nil, err
	}
	w := s.window
	out := &DiagnoseResult{Units: d.Units, Window: Window{w.Bump, w.Droop, w.Step}}
	t := targets(s.doc)
	for _, car := range list {
		for _, side := range solver.Sides {
			if err := ctx.Err(); err != nil {
				return nil, err
			}
			found, err := car.axle.Diagnose(s.ws, side, s.grid.mm, t[side].At)
			if err != nil {
				return nil, explain(err, label(car.name))
			}
			out.Cars = append(out.Cars, s.diagnosed(car, found))
		}
	}
	return out, nil
}

func (s *sweeper) diagnosed(car car, d *solver.Diagnosis) Diagnosed {
	out := Diagnosed{
		Candidate: car.name, Side: d.Side.String(), RMS: Number(d.Shape.RMS.Degrees()),
		SlopeShare: Number(d.Shape.Slope.Share), CurvatureShare: Number(d.Shape.Curvature.Share),
		RestShare: Number(d.Shape.Remainder.Share),
		Remedies:  []Remedy{}, Words: d.Lines(s.wording()),
	}
	for _, r := range d.Remedies {
		changes := study.Changes{}
		for _, c := range r.Changes {
			changes[c.Key()] = s.doc.FromSolver(c.Parameter, c.Value)
		}
		out.Remedies = append(out.Remedies, Remedy{changes, Number(r.RMS.Degrees())})
	}
	return out
}

// wording says lengths and toe as the study shows them.
func (c *cars) wording() solver.Wording {
	s := c.doc.Style()
	return solver.Wording{
		Length: func(mm float64) string { return number.Plain(s.Length(mm)) },
		Travel: func(mm float64) string { return number.Plain(s.Travel(mm)) },
		Small:  func(mm float64) string { return fmt.Sprintf("%.2g %s", s.Units.FromMillimetres(mm), s.LengthUnit()) },
		Toe:    func(a solver.Angle) string { return c.sayToe(a.Degrees()) },
		Basis:  s.Basis(),
	}
}
