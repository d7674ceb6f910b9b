package engine

import (
	"cmp"
	"context"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// ToleranceOptions say of which car a series is made and how long it is. The zero
// value takes what the study says.
type ToleranceOptions struct {
	Candidate string   `json:"candidate,omitzero"` // where empty, that of the study's yield, else the base car
	Cars      *int     `json:"cars,omitzero"`      // nil is the study's, else [DefaultCars]
	Limit     *float64 `json:"limit,omitzero"`     // degrees; nil is the study's
	Figure    string   `json:"figure,omitzero"`    // "peak" or "rms"; where empty, the study's, else "peak"
	Side      string   `json:"side,omitzero"`      // "left", "right" or, as where empty, "both": the worse of them
	Seed      *int     `json:"seed,omitzero"`      // nil is the study's
	// Toe is "re-set" where static toe is set again on each car, "as-built" where
	// its rods stay as the drawing has them; where empty, what the study says.
	Toe string `json:"toe,omitzero"`

	Progress func(Progress) `json:"-"`
}

// DefaultCars is the length of a series where nothing else is said: JCGM 101
// asks for 10⁴/(1-p), which is 200,000 for the ends of a 95 % interval to two
// digits; a tenth of it is good to some 2 % of the spread.
const DefaultCars = 20_000

// maxCars is the longest series that may be asked for: a core builds as many in
// ten months, so that more is a mistake.
const maxCars = 1_000_000_000_000

// ToleranceResult is what [Tolerance] returns: the same series of cars by
// simulation (JCGM 101) and by linear propagation of exact sensitivities (JCGM
// 100). Angles are in degrees, of toe change less target.
type ToleranceResult struct {
	Units     study.Units `json:"units"`
	Candidate string      `json:"candidate"`
	Window    Window      `json:"window"`
	Side      string      `json:"side"` // judged: "left", "right" or "both", of which the worse is the car's
	Cars      int         `json:"cars"`
	Failed    int         `json:"failed"` // cars that cannot be built or do not reach the window
	Seed      int         `json:"seed"`
	// StaticToe is [ToeReSet] or [ToeAsBuilt]. As built, toe change counts from the
	// static toe of the car as drawn, so that what a car's own is off by is part of
	// it; re-set, it counts from the car's own toe at travel 0.
	StaticToe string `json:"toe"`

	Positions []TolerancePosition `json:"positions"`
	Figure    ToleranceFigure     `json:"figure"`
	Yield     *YieldResult        `json:"yield,omitzero"`
	// Contributors are the dimensions by their share of the variance, largest
	// first.
	Contributors []Contributor `json:"contributors"`
	// LinearValid says that both methods agree within a twentieth of the spread
	// where it is widest (JCGM 101, clause 8, with that as its numerical
	// tolerance): the sensitivities alone would have done.
	LinearValid bool `json:"linearValid"`

	// Loads are the largest of the study's load cases on the car as drawn, each with the
	// standard deviation that the tolerances leave in it; none where the study states no
	// load case.
	Loads []LoadPeak `json:"loads,omitzero"`

	// Scenarios are the same series in each set-up that the study's search must
	// serve, and ScenarioYield the share of all cars that pass, by the set-ups'
	// weights; none without set-ups or limit.
	Scenarios     []ToleranceScenario `json:"scenarios,omitzero"`
	ScenarioYield Number              `json:"scenarioYield"`
}

// TolerancePosition is the spread at one travel of one side.
type TolerancePosition struct {
	Side    string  `json:"side"`
	Travel  float64 `json:"travel"`
	Nominal Number  `json:"nominal"`
	SD      Number  `json:"sd"` // by propagation
	// Low, Median and High are the 2.5, 50 and 97.5 % points of the cars built.
	Low    Number `json:"low"`
	Median Number `json:"median"`
	High   Number `json:"high"`
}

// ToleranceFigure is the spread of the figure that counts. A percentile is the figure
// that so many of a hundred cars stay within, those that cannot be built or do not
// reach the window counted as worse than all others; none where it falls among them.
// Percentiles are told from counts in bins 1/4096 of their distance from the nominal
// car's figure wide, those of positions in bins of 1/128.
type ToleranceFigure struct {
	Name         string `json:"name"` // "peak" or "rms"
	Nominal      Number `json:"nominal"`
	Median       Number `json:"median"`
	Percentile90 Number `json:"percentile90"`
	Percentile95 Number `json:"percentile95"`
	Percentile99 Number `json:"percentile99"`
	Problem      string `json:"problem,omitzero"` // why a percentile is none
}

// YieldResult is the share of the cars that pass, with its 95 % interval.
type YieldResult struct {
	Limit   float64 `json:"limit"`
	AsDrawn bool    `json:"asDrawn"` // whether the car as drawn passes
	Share   Number  `json:"share"`
	Low     Number  `json:"low"`
	High    Number  `json:"high"`
}

// Contributor is the part that one of the study's tolerances has in the spread: where
// it is of each side by itself, both sides'.
type Contributor struct {
	Parameter string `json:"parameter"`
	Share     Number `json:"share"` // of the variance at the travel where it is largest
	// Halved is by how much the yield rises when this tolerance alone is halved;
	// none without a limit.
	Halved Number `json:"halved"`
}

// Tolerance builds a series of cars that differ within the study's tolerances. A
// call that is cancelled returns the cars built so far, or the context's error
// where there are none yet.
func Tolerance(ctx context.Context, d *study.Document, o ToleranceOptions) (*ToleranceResult, error) {
	r, err := NewToleranceRun(d, o)
	if err != nil {
		return nil, err
	}
	built, err := r.Build(ctx, Whole)
	if err != nil {
		return nil, err
	}
	return r.Result(ctx, built)
}

// tolerancer turns a study's tolerances into a series of package optimize.
type tolerancer struct {
	*sweeper
	car    car
	series optimize.Series
	count  int
	seed   int
	limit  *float64 // degrees; nil where no yield is asked for
}

func newTolerancer(d *study.Document, o ToleranceOptions) (*tolerancer, error) {
	sweep, err := newJudge(d, "")
	if err != nil {
		return nil, err
	}
	t := &tolerancer{sweeper: sweep}
	y, limit, err := yieldAsked(d, o.Candidate, o.Figure, o.Limit)
	if err != nil {
		return nil, err
	}
	t.limit = limit
	if t.car, err = t.byName(y.Candidate); err != nil {
		return nil, err
	}
	t.seed = given(o.Seed, y.Seed)
	if t.count, err = counted("cars", o.Cars, cmp.Or(y.Cars, DefaultCars), 1, maxCars); err != nil {
		return nil, err
	}
	if err := t.setSeries(y.Figure, o.Side); err != nil {
		return nil, err
	}
	return t, t.setToe(o.Toe, y.KeepToe)
}

// yieldAsked returns the study's yield with what a call is asked in its place, and the limit
// in degrees, nil where none is stated.
func yieldAsked(d *study.Document, candidate, figure string, limit *float64) (y study.Yield, _ *float64, err error) {
	if d.Yield != nil {
		y, limit = *d.Yield, new(given(limit, d.Yield.Limit))
	}
	switch name := y.Candidate; {
	case limit != nil && !(*limit >= 0):
		err = wrongf("limit", "%g deg is not a limit, want 0 or more", *limit)
	case candidate == "" && name != "" && name != study.BaseName && d.Candidate(name) == nil:
		err = wrongf("yield.candidate", "no candidate is called %.60q", name)
	}
	y.Candidate, y.Figure = cmp.Or(candidate, y.Candidate, study.BaseName), cmp.Or(figure, y.Figure, "peak")
	return y, limit, err
}

// What a series does with static toe.
const (
	ToeReSet   = "re-set"
	ToeAsBuilt = "as built"

	asBuiltOption = "as-built" // as a word without blanks
)

// setToe makes the cars leave the line as built where the option or, if that is
// empty, the study says so.
func (t *tolerancer) setToe(option string, keep bool) error {
	switch option {
	case "":
	case ToeReSet, asBuiltOption, ToeAsBuilt:
		keep = option != ToeReSet
	default:
		return wrongf("toe", "%.40q is neither re-set nor as-built", option)
	}
	if !keep {
		return nil
	}
	return explain(t.series.LeaveToe(t.car.axle), label(t.car.name))
}

func (t *tolerancer) setSeries(figure, side string) error {
	judge, err := t.judging(t.car, side)
	if err != nil {
		return err
	}
	t.series = optimize.Series{
		Judge: judge, Changes: t.car.axle.Changes(),
		Limit: solver.Deg(given(t.limit, 0)), Measure: measureOf(figure), Seed: uint64(int64(t.seed)),
	}
	for i := range t.doc.Tolerances {
		tol, err := t.tolerance(&t.doc.Tolerances[i])
		if err != nil {
			return err
		}
		t.series.Tolerances = append(t.series.Tolerances, tol)
	}
	return nil
}

// normalWidth is the number of standard deviations in the plus-minus of a normal
// distribution.
const normalWidth = 3.0

// tolerance returns one of the study's tolerances as package optimize takes it.
func (c *cars) tolerance(s *study.Tolerance) (out optimize.Tolerance, err error) {
	if out.Parameter, out.Sides, err = solver.FindParameter(c.design, s.Parameter); err != nil {
		return out, explain(err, "")
	}
	out.PerCar = s.Varies == "car"
	value := cmp.Or(s.PlusMinus, s.SD)
	out.Spread = c.doc.ToSolver(out.Parameter, value)
	switch shape := s.Distribution; {
	case shape == "triangular":
		out.Shape = optimize.Triangular
	case shape == "uniform" || shape == "" && s.SD == 0:
		out.Shape = optimize.Uniform
	case s.SD == 0:
		out.Spread /= normalWidth
	}
	if s.SD != 0 && out.Shape != optimize.Normal {
		out.Spread *= out.Spread / out.SD() // the half width whose standard deviation was stated
	}
	return out, nil
}
