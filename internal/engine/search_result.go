package engine

import (
	"math"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/optimize/nlp"
	"toewright/solver"
)

// SearchResult is what [Search] returns. Figures are of toe change against the
// target over the window, in degrees.
type SearchResult struct {
	Units    study.Units `json:"units"`
	Minimise string      `json:"minimise"` // "rms" or "peak"
	Side     string      `json:"side"`     // the side judged: "left", "right" or "both"
	Window   Window      `json:"window"`

	// Target is the wanted toe change, none where it is flat.
	Target *TargetCurves `json:"target,omitzero"`
	// TargetNote says what of the target no car can meet, empty where there is
	// nothing such.
	TargetNote string `json:"targetNote,omitzero"`

	Best  Best   `json:"best"`
	Start Scored `json:"start"` // of the car with no variable changed; none where it does not reach the window
	// StartNote says that the values to be taken, [SearchResult.Taken], are no better
	// than the car as it stands, and why; empty where they are.
	StartNote string `json:"startNote,omitzero"`
	// AtBound lists the variables whose best value lies on a bound: beyond it
	// there may be a better one.
	AtBound []AtBound `json:"atBound"`

	Converged   bool   `json:"converged"`
	Status      string `json:"status"` // how the search ended, in words
	Evaluations int    `json:"evaluations"`
	// Restarts is the number of searches from places spread over the bounds, and
	// Agreeing of those that ended at the best value.
	Restarts int `json:"restarts"`
	Agreeing int `json:"agreeing"`

	Optima    []Optimum        `json:"optima"` // distinct places where searches ended, best first
	Scenarios []ScenarioResult `json:"scenarios,omitzero"`
	// Limits says how the answer stands to the study's limits. Where no values hold them
	// all the answer breaks the worst of them least.
	Limits []LimitResult `json:"limits,omitzero"`
	// Conflict names the limits that are in each other's way, or in that of the
	// variables' bounds where it is one; none where all are held.
	Conflict []string `json:"conflict,omitzero"`
	// Infeasible says which of them are, and what is the nearest that can be had; nil
	// where all are held, or where the search was stopped before that was known.
	Infeasible *FeasibleResult `json:"infeasible,omitzero"`

	Rounded *Rounded      `json:"rounded,omitzero"` // where a variable states a grid
	Robust  *RobustResult `json:"robust,omitzero"`  // where the study states a percentile
}

// ToeFigures are the two figures that can be minimised.
type ToeFigures struct {
	RMS  Number `json:"rms"`
	Peak Number `json:"peak"`
}

// Scored is toe figures, in which travels and scenarios count alike, beside what is
// minimised.
type Scored struct {
	ToeFigures
	// Score is the figure that the search minimises, travels and scenarios weighted as
	// it says; the plain one where it says nothing.
	Score Number `json:"score"`
}

// Weighted reports whether what is minimised is another figure than the plain one.
func (s *SearchResult) Weighted() bool { return s.Best.weighted(s.Minimise) }

// weighted is Weighted of a figure that is minimised, "rms" or "peak".
func (f Scored) weighted(minimise string) bool {
	plain := f.RMS
	if minimise == "peak" {
		plain = f.Peak
	}
	return math.Abs(float64(plain-f.Score)) > sameFigure*float64(plain)
}

// Best is the answer of a search: as the changes of a candidate, and its figures.
type Best struct {
	Values study.Changes `json:"values"`
	// Scored are those of the worse of the sides judged, over all scenarios.
	Scored
	// Left and Right are those of each wheel, straight ahead and in no scenario.
	Left  ToeFigures `json:"left"`
	Right ToeFigures `json:"right"`
}

// AtBound is a variable at an end of its range.
type AtBound struct {
	Parameter string  `json:"parameter"`
	Bound     string  `json:"bound"` // "min" or "max"
	Value     float64 `json:"value"`
}

// Optimum is a place where searches ended.
type Optimum struct {
	Values   study.Changes `json:"values"`
	Value    Number        `json:"value"`    // of what is minimised
	Searches int           `json:"searches"` // that ended here
}

// result writes an answer, and what cannot be had where can is not nil.
func (s *searcher) result(a *optimize.ToeAnswer, can *FeasibleResult) *SearchResult {
	r, w := &a.Result, s.window
	out := &SearchResult{
		Units: s.doc.Units, Minimise: s.problem.Measure.String(), Side: sideNames[s.problem.Judge],
		Window: Window{Bump: w.Bump, Droop: w.Droop, Step: w.Step},
		Best:   Best{Values: s.values(a.Values), Scored: s.scored(a.Best, a.Values)},
		Start:  s.scored(a.Start, s.problem.Start()),
		Target: s.targetCurves(), TargetNote: s.targetNote(),
		AtBound:   s.atBound(r),
		Optima:    []Optimum{},
		Converged: r.Status == nlp.Converged, Status: r.Status.String(), Evaluations: r.Evaluations,
		Restarts: r.Searches, Agreeing: r.Agreeing,
	}
	for _, o := range r.Optima {
		out.Optima = append(out.Optima, Optimum{Values: s.values(o.X), Value: degrees(o.Value), Searches: o.Searches})
	}
	out.Limits = s.limitResults(a.Limits)
	if out.Infeasible = can; can != nil {
		out.Conflict = can.names()
	}
	s.addSides(&out.Best)
	s.addScenarios(out)
	return out
}

// addScenarios adds how the best values serve each set-up.
func (s *searcher) addScenarios(out *SearchResult) {
	ups, err := s.setUps(&s.problem)
	if err != nil {
		return // the search itself would have had no set-ups then
	}
	changes, err := s.doc.SolverChanges(s.design, out.Best.Values)
	if err != nil {
		return
	}
	_, out.Scenarios = ups.serve(changes, solver.HoldAll)
}

// addSides adds the figures of both sides, whichever were judged; none where the
// car can be assembled only as some scenario has it.
func (s *searcher) addSides(b *Best) {
	b.Left, b.Right = ToeFigures{none, none}, ToeFigures{none, none}
	best, err := s.assemble(&study.Candidate{Name: "best", Changes: b.Values})
	if err != nil || s.move(best, Attitude{}) != nil {
		return
	}
	for side, out := range map[solver.Side]*ToeFigures{solver.Left: &b.Left, solver.Right: &b.Right} {
		f := s.figures(&s.curves[side], &s.problem.Targets[side])
		*out = ToeFigures{f.RMS, f.Peak}
	}
}

// values returns the free parameters' values as the changes of a candidate.
func (s *searcher) values(x []float64) study.Changes {
	out := study.Changes{}
	for i := range s.problem.Free {
		f := &s.problem.Free[i]
		out[f.Key()] = s.doc.FromSolver(f.Parameter, x[i])
	}
	return out
}

// point returns the free parameters' values in a candidate's changes.
func (s *searcher) point(changes study.Changes) []float64 {
	var x []float64
	for i := range s.problem.Free {
		f := &s.problem.Free[i]
		x = append(x, s.doc.ToSolver(f.Parameter, changes[f.Key()]))
	}
	return x
}

// atBound lists the variables on a bound, with the bound as the study has it.
func (s *searcher) atBound(r *nlp.Result) []AtBound {
	out := []AtBound{}
	for i, b := range r.Bounds {
		v := &s.doc.Search.Variables[i]
		switch b {
		case nlp.AtMin:
			out = append(out, AtBound{v.Parameter, "min", v.Min})
		case nlp.AtMax:
			out = append(out, AtBound{v.Parameter, "max", v.Max})
		}
	}
	return out
}

// scored returns figures with what is minimised at values of the variables.
func (s *searcher) scored(f optimize.Figures, x []float64) Scored {
	return Scored{toeFigures(f), degrees(s.problem.Score(x))}
}

func toeFigures(f optimize.Figures) ToeFigures {
	return ToeFigures{degrees(f.RMS.Radians()), degrees(f.Peak.Radians())}
}
