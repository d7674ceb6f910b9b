package optimize

import (
	"fmt"
	"math"
	"slices"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// AdviceRequest asks which value of a parameter makes a fitted car best.
type AdviceRequest struct {
	Parameter solver.Parameter
	Sides     solver.Selection
	// Step is the thickness of a spacer, mm; 0 means any value. Min and Max bound
	// the value.
	Step, Min, Max float64
	// Beside are other parts to be fitted with it.
	Beside []solver.Change
	// Window, targets and attitude in which the toe change is judged; its base
	// car and its sides are those of the fit.
	Window Judge
}

// Advice is the value of a parameter that makes the toe change of a fitted car
// least, as root mean square over the window.
type Advice struct {
	Sides []solver.Side // that it is for: one, or both where they share the part
	// Best is the change from the base car, mm or radians, and SD its standard
	// deviation. Low to High is its 90 % band, both within the bounds asked for.
	Best, SD, Low, High float64
	// Rates are the derivatives of Best by the unknowns of the fit.
	Rates []float64
	// AtBound says that the best value would lie beyond the bounds, or beyond what the
	// car can be built with and still make the window.
	AtBound bool
	// Step is Best as a whole number of steps within the bounds, and within what the
	// car can be built with; Value is what that comes to. Without steps Step is 0 and
	// Value is Best.
	Step  int
	Value float64
	// Fitted is the value that stood in the last readings of the side.
	Fitted float64
	// AtBest and AtValue are what the car then does.
	AtBest, AtValue *Prediction
	// Tie and Drag are by how much the tie rod, and a solid axle's drag link, get
	// longer from Fitted to Value, to bring static toe back; mm.
	Tie, Drag float64
	// Final says that the band is narrow enough to order the part: no wider than
	// one step, or [finalBand] without steps. Else Value is the next to read at.
	Final bool
}

// For reports whether the advice is for a side.
func (a *Advice) For(s solver.Side) bool { return slices.Contains(a.Sides, s) }

// finalBand is the width, mm, of a band that needs no further readings where no
// step is stated: a spacer of a millimetre hits it.
const finalBand = 1.0

// Learnt returns what the readings left of the standard deviation that the advised value
// had before them: 1 where they say nothing of it, NaN where nothing is known of how it
// depends on the car.
func (f *FittedCar) Learnt(a *Advice) float64 {
	if a.Rates == nil {
		return math.NaN()
	}
	before := 0.0
	for k := range f.Unknowns {
		before = math.Hypot(before, a.Rates[k]*f.Unknowns[k].SD)
	}
	return a.SD / before
}

// Check returns an error that says what the request lacks.
func (q *AdviceRequest) Check() error {
	key := q.Parameter.Key + q.Sides.Suffix()
	if !(q.Min < q.Max) || !nlp.AllFinite([]float64{q.Min, q.Max}) {
		return nlp.ProblemErrorf("advice on %s from %s to %s leaves no room: min must be below max", key, q.shown(q.Min), q.shown(q.Max))
	}
	if !(q.Step >= 0) || math.IsInf(q.Step, 0) {
		return nlp.ProblemErrorf("step of %s is %s, must be 0 or more", key, q.shown(q.Step))
	}
	if q.Step > 0 && math.Floor(q.Max/q.Step) < math.Ceil(q.Min/q.Step) {
		return nlp.ProblemErrorf("no whole number of steps of %s lies between min %s and max %s of %s", q.shown(q.Step), q.shown(q.Min), q.shown(q.Max), key)
	}
	return nil
}

// shown returns a value of the parameter with its unit.
func (q *AdviceRequest) shown(value float64) string {
	if q.Parameter.Quantity == solver.AngleQuantity {
		return fmt.Sprintf("%.4g deg", solver.Angle(value).Degrees())
	}
	return fmt.Sprintf("%.4g mm", value)
}

// Advise returns advice for each side that was read, or one for both where the
// part is one of both, as a drag link's ball is.
func (f *FittedCar) Advise(q *AdviceRequest) ([]*Advice, error) {
	if err := q.Check(); err != nil {
		return nil, err
	}
	var out []*Advice
	for _, sides := range f.judged(q) {
		s, err := f.stack(q, sides)
		if err != nil {
			return nil, err
		}
		a, err := s.advise()
		if err != nil {
			return nil, err
		}
		out = append(out, a)
	}
	return out, nil
}

// judged returns the sides for which one value is sought each.
func (f *FittedCar) judged(q *AdviceRequest) []solver.Selection {
	var read [2]bool
	for i := range f.Sets {
		read[f.Sets[i].Side] = true
	}
	if !q.Parameter.Sided() && read[solver.Left] && read[solver.Right] {
		return []solver.Selection{solver.BothSides}
	}
	var out []solver.Selection
	for _, s := range solver.Sides {
		if read[s] && (q.Sides.Includes(s) || !q.Parameter.Sided()) {
			out = append(out, only(s))
		}
	}
	return out
}

// advise finds the best value and describes it.
func (s *stack) advise() (*Advice, error) {
	room, err := s.search()
	if err != nil {
		return nil, err
	}
	a := &Advice{Sides: s.bench.sides, Best: room.best, Value: room.best, AtBound: room.edge, Fitted: s.fitted()}
	s.band(a, &room)
	wide := finalBand
	if s.q.Step > 0 {
		n, err := s.whole(room.best)
		if err != nil {
			return nil, err
		}
		a.Step, a.Value, wide = int(n), n*s.q.Step, s.q.Step
	}
	a.Final = a.High-a.Low <= wide
	return a, s.describe(a)
}

// describe sets what the car does at the values of the advice, and what has to be
// screwed to get there.
func (s *stack) describe(a *Advice) error {
	for _, at := range []struct {
		value float64
		out   **Prediction
	}{{a.Best, &a.AtBest}, {a.Value, &a.AtValue}} {
		c, err := s.at(at.value)
		if err != nil {
			return err
		}
		*at.out = s.f.predict(s.bench, c)
	}
	var rods [2]solver.Rods
	for i, value := range []float64{a.Fitted, a.Value} {
		car, err := s.car(value)
		if err != nil {
			return err
		}
		rods[i] = car.Rods()
	}
	side := s.bench.sides[0]
	a.Tie, a.Drag = rods[1].Tie[side]-rods[0].Tie[side], rods[1].Drag-rods[0].Drag
	return nil
}
