package engine

import (
	"fmt"

	"toewright/optimize"
	"toewright/optimize/nlp"
	"toewright/solver"
)

// ScenarioResult says how a car serves one set-up of the study's search.
type ScenarioResult struct {
	Name   string  `json:"name"`
	Weight float64 `json:"weight"`
	// ToeFigures are those of the worse of the sides judged, over the window.
	ToeFigures
	// Score is the figure that the search minimises, travels weighted as it says.
	Score Number `json:"score"`
	Binds bool   `json:"binds"` // of all set-ups it has the worst score
	// Curves are those of the sides judged.
	Curves []ToeCurve `json:"curves"`
	// Problem says why there are no figures: the car cannot be assembled so, or
	// does not reach the window. It is empty where there are.
	Problem string `json:"problem,omitzero"`
}

// ToeCurve is the toe of one wheel along its travel.
type ToeCurve struct {
	Side   string    `json:"side"`
	Travel []float64 `json:"travel"`
	Toe    []float64 `json:"toe"`    // degrees, static toe included
	Change []float64 `json:"change"` // from the toe at travel 0
}

// setUps judges cars in all set-ups that the study's search must serve.
type setUps struct {
	*sweeper
	list  []setUp
	sides []solver.Side
	o     nlp.Objective // of one set-up
	all   nlp.Objective // of all
}

// setUp is a scenario; holds says that it states itself what is held.
type setUp struct {
	optimize.Scenario
	holds bool
}

// setUps returns those of the study's search, judged as p judges them.
func (s *sweeper) setUps(p *optimize.ToeSearch) (*setUps, error) {
	list, err := s.scenarios()
	if err != nil {
		return nil, err
	}
	return s.judgedIn(list, p), nil
}

// judgedIn judges cars in some set-ups as p judges them.
func (s *sweeper) judgedIn(list []setUp, p *optimize.ToeSearch) *setUps {
	u := &setUps{sweeper: s, list: list, sides: sidesOf(p.Judge)}
	q := *p
	q.Travels, q.Scenarios = s.grid.mm, nil
	u.o = q.Objective(len(u.sides))
	for i := range list {
		q.Scenarios = append(q.Scenarios, list[i].Scenario)
	}
	u.all = q.Objective(len(u.sides))
	return u
}

// studySetUps returns those of the study's search, judged as the study says.
func (s *sweeper) studySetUps() (*setUps, error) {
	p := s.studyJudging()
	return s.setUps(&p)
}

// studyJudging says how the study's search judges cars: a study without one by the root
// mean square.
func (s *sweeper) studyJudging() optimize.ToeSearch {
	var p optimize.ToeSearch
	if f := s.doc.Search; f != nil {
		p.Measure, p.Weights = measureOf(f.Minimise), weights(s.doc, s.grid)
		if f.Combine == "worst" {
			p.Across = optimize.Worst
		}
	}
	return p
}

// sidesOf lists the sides of a selection.
func sidesOf(j solver.Selection) (sides []solver.Side) {
	for _, s := range solver.Sides {
		if j.Includes(s) {
			sides = append(sides, s)
		}
	}
	return sides
}

// serve returns how a car with changes, holding what hold says unless a set-up has
// its own mind, serves each set-up, and its score over all of them, which is none
// where it cannot serve one.
func (u *setUps) serve(changes []solver.Change, hold solver.Hold) (score Number, each []ScenarioResult) {
	var residuals []float64
	worst := -1
	for i := range u.list {
		r, part := u.serveOne(&u.list[i], changes, hold)
		each, residuals = append(each, r), append(residuals, part...)
		if worst < 0 || r.Score > each[worst].Score {
			worst = i
		}
	}
	if worst >= 0 && len(u.list) > 1 {
		each[worst].Binds = true
	}
	if len(each) == 0 || len(residuals) < len(each)*len(u.sides)*len(u.grid.mm) {
		return none, each
	}
	return degrees(u.all.Value(residuals)), each
}

// serveOne returns how a car serves one set-up, with its toe changes less target in
// radians; without them where it does not.
func (u *setUps) serveOne(up *setUp, changes []solver.Change, hold solver.Hold) (ScenarioResult, []float64) {
	r := ScenarioResult{Name: up.Name, Weight: up.Weight, ToeFigures: ToeFigures{none, none}, Score: none, Curves: []ToeCurve{}}
	axle, err := u.assembleIn(up, changes, hold)
	if err == nil {
		in := solver.SweepInput{ToeOnly: true, Travels: u.grid.mm, From: up.From}
		err = axle.Sweep(u.ws, &in, &u.curves)
	}
	if err == nil {
		err = u.reached()
	}
	if err != nil {
		r.Problem = u.doc.Units.Sentence(bare(err))
		return r, nil
	}
	residuals := u.residuals()
	r.ToeFigures = toeFigures(optimize.CarFigures(residuals, len(u.sides)))
	r.Score = degrees(u.o.Value(residuals))
	for _, side := range u.sides {
		r.Curves = append(r.Curves, u.toeCurve(side))
	}
	return r, residuals
}

// reached returns an error where a side judged does not reach the window.
func (u *setUps) reached() error {
	for _, side := range u.sides {
		if r := &u.curves[side].Reach; !r.Whole() {
			return fmt.Errorf("the %s wheel does not reach the window: %s ends it", side, r.Link())
		}
	}
	return nil
}

// residuals returns the toe changes less target of the car moved last, radians.
func (u *setUps) residuals() (out []float64) {
	wanted, zero := targets(u.doc), len(u.grid.below())
	for _, side := range u.sides {
		ps := u.curves[side].Positions
		for i := range ps {
			out = append(out, float64(ps[i].Toe-ps[zero].Toe-wanted[side].At(ps[i].Travel)))
		}
	}
	return out
}

// toeCurve returns the curve of the car moved last.
func (u *setUps) toeCurve(side solver.Side) ToeCurve {
	c := ToeCurve{Side: side.String(), Travel: u.grid.file}
	ps, zero := u.curves[side].Positions, len(u.grid.below())
	for i := range ps {
		c.Toe = append(c.Toe, ps[i].Toe.Degrees())
		c.Change = append(c.Change, (ps[i].Toe - ps[zero].Toe).Degrees())
	}
	return c
}
