package engine

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"math"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// SeriesOptions say by what the cars of a series are judged. The zero value takes what the
// study says.
type SeriesOptions struct {
	// Candidate is the car whose part they have: where empty, that of the study's yield, else
	// the one whose parts were on when the first run was read, else the base car.
	Candidate string   `json:"candidate,omitzero"`
	Limit     *float64 `json:"limit,omitzero"`  // degrees; nil is the study's
	Figure    string   `json:"figure,omitzero"` // "peak" or "rms"; where empty, the study's, else "peak"

	Progress func(Progress) `json:"-"`
}

// SeriesResult is what [Series] returns: cars of a series as they were measured, beside what
// was predicted. Lengths are in the file's units, angles in degrees, of toe change less
// target over the window by which a yield is judged.
type SeriesResult struct {
	Units     study.Units  `json:"units"`
	Candidate string       `json:"candidate"`
	Window    Window       `json:"window"`
	Figure    string       `json:"figure"` // "peak" or "rms", of the worse wheel
	Limit     Number       `json:"limit"`  // none where none is stated: no car passes or fails then
	Predicted Number       `json:"predicted"`
	Cars      []SeriesCar  `json:"cars"` // as the study lists them
	Share     *SeriesShare `json:"share,omitzero"`
	// Common are the deviations that the cars have in common, the likeliest single one first;
	// Scatter is by which share of the priors they differ from one another besides.
	Common  []CommonResult `json:"common"`
	Scatter Number         `json:"scatter"`
	Words   []string       `json:"words"` // what it comes to, in sentences
}

// What a car of a series comes to.
const (
	SeriesPass = "pass"
	SeriesFail = "fail"
	SeriesOpen = "open" // its readings do not say
)

// SeriesCar is a car of a series.
type SeriesCar struct {
	Car      string     `json:"car"`
	Date     string     `json:"date,omitzero"`
	Readings int        `json:"readings"`
	LeftOut  int        `json:"leftOut"` // readings that disagree with all others
	Verdict  string     `json:"verdict,omitzero"`
	Figure   BandResult `json:"figure"` // of the car fitted to its own readings, with its 90 % band
	// Near says that the limit lies in that band: the verdict may be the other one.
	Near bool `json:"near"`
	// Off is where the toe change is furthest from what was predicted.
	Off     *SeriesOff `json:"off,omitzero"`
	Problem string     `json:"problem,omitzero"` // why it is open
}

// Said is the verdict in words, "" for none.
func (c *SeriesCar) Said() string {
	if c.Near {
		return c.Verdict + ", near"
	}
	return c.Verdict
}

// SeriesOff is a toe change less that predicted.
type SeriesOff struct {
	Side   string  `json:"side"`
	Travel float64 `json:"travel"`
	Change float64 `json:"change"`
}

// SeriesShare is the part of the cars judged that passes, with its 95 % interval by Wilson's
// score.
type SeriesShare struct {
	Passed int    `json:"passed"`
	Judged int    `json:"judged"`
	Share  Number `json:"share"`
	Low    Number `json:"low"`
	High   Number `json:"high"`
	Method string `json:"method"`
}

// CommonResult is by how much a dimension is off on all cars alike.
type CommonResult struct {
	Parameter string `json:"parameter"` // without its side: both sides alike
	// FittedValue is that with all dimensions free at once.
	FittedValue
	Alone float64 `json:"alone"` // were no other dimension off
	Gain  float64 `json:"gain"`  // of chi-square, by it alone
	Share float64 `json:"share"` // of what all dimensions together gain
}

// Series judges the cars of a series by their readings, each fitted by itself, and says what
// they have in common. A car whose readings cannot be fitted is open, and why is said. A call
// that is cancelled is an error.
func Series(ctx context.Context, d *study.Document, o SeriesOptions) (*SeriesResult, error) {
	if err := d.ReadyForSeries(); err != nil {
		return nil, explain(err, "")
	}
	s, err := newSeriesJudge(d, &o)
	if err != nil {
		return nil, err
	}
	w := s.window
	out := &SeriesResult{
		Units: d.Units, Candidate: s.car.name, Window: Window{w.Bump, w.Droop, w.Step}, Figure: s.measure.String(),
		Limit: none, Predicted: s.figureOf(), Common: []CommonResult{}, Scatter: none,
	}
	if s.limit != nil {
		out.Limit = Number(*s.limit)
	}
	for i := range d.Series {
		stages(o.Progress).report(float64(i) / float64(len(d.Series)))
		car, err := s.judged(ctx, &d.Series[i])
		if err != nil {
			return nil, err
		}
		out.Cars = append(out.Cars, car)
	}
	out.Share = s.share(out.Cars)
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	s.addCommon(out)
	s.addWords(out)
	return out, nil
}

// seriesJudge judges the cars of a series.
type seriesJudge struct {
	*sweeper
	car     car
	parts   []solver.Change
	measure optimize.Measure
	limit   *float64              // degrees; nil where none is stated
	nominal [2][]float64          // toe change less target, radians, as predicted
	fitted  []*optimize.FittedCar // those that count for what is common
	widened []float64
}

func newSeriesJudge(d *study.Document, o *SeriesOptions) (*seriesJudge, error) {
	sweep, err := newJudge(d, "")
	if err != nil {
		return nil, err
	}
	s := &seriesJudge{sweeper: sweep}
	name := o.Candidate
	if d.Yield == nil || d.Yield.Candidate == "" {
		name = cmp.Or(name, carRead(d))
	}
	y, limit, err := yieldAsked(d, name, o.Figure, o.Limit)
	if err != nil {
		return nil, err
	}
	s.limit, s.measure = limit, measureOf(y.Figure)
	if s.car, err = s.byName(y.Candidate); err != nil {
		return nil, err
	}
	var changes study.Changes
	if k := d.Candidate(y.Candidate); k != nil {
		changes = k.Changes
	}
	if s.parts, err = d.SolverChanges(s.design, changes); err != nil {
		return nil, explain(err, label(s.car.name))
	}
	if s.car.axle, err = s.base.Assemble(s.parts, solver.HoldAll); err != nil { // as readings are taken
		return nil, explain(err, label(s.car.name))
	}
	return s, s.predict()
}

// carRead returns the name of the car whose parts were on when the first run of a series was
// read, "" for none.
func carRead(d *study.Document) string {
	for i := range d.Series {
		if len(d.Series[i].Readings) == 0 {
			continue
		}
		changes := d.Series[i].Readings[0].Changes
		for _, k := range d.Candidates {
			if len(k.Changes) > 0 && maps.Equal(k.Changes, changes) {
				return k.Name
			}
		}
		break
	}
	return ""
}

// predict notes the curves of the car as drawn.
func (s *seriesJudge) predict() error {
	if err := s.move(s.car, Attitude{}); err != nil {
		return err
	}
	target, zero := targets(s.doc), len(s.grid.below())
	for _, side := range solver.Sides {
		c := &s.curves[side]
		if r := s.reach(&c.Reach); r != nil {
			return &Error{Fault: Unsolvable, Car: label(s.car.name), Message: fmt.Sprintf("does not reach the window: %s is in the way", r.Link)}
		}
		for i := range c.Positions {
			p := &c.Positions[i]
			s.nominal[side] = append(s.nominal[side], float64(p.Toe-c.Positions[zero].Toe-target[side].At(p.Travel)))
		}
	}
	return nil
}

// figureOf returns the figure of the car as drawn, of its worse wheel.
func (s *seriesJudge) figureOf() Number {
	f := optimize.CarFigures(append(s.nominal[0][:len(s.nominal[0]):len(s.nominal[0])], s.nominal[1]...), 2)
	return degrees(f.Of(s.measure).Radians())
}

// judged fits a car to its own readings and judges it. An error is that of the context.
func (s *seriesJudge) judged(ctx context.Context, m *study.MeasuredCar) (SeriesCar, error) {
	out := SeriesCar{Car: m.Car, Date: m.Date, Figure: BandResult{none, none, none}}
	for i := range m.Readings {
		out.Readings += len(m.Readings[i].Values)
	}
	err := s.judge(ctx, m, &out)
	switch {
	case isContext(err):
		return out, err
	case err != nil:
		out.Problem = InUnits(explain(err, ""), s.doc).Error()
		if out.Verdict != SeriesFail { // which it does whatever the other wheel does
			out.Verdict = SeriesOpen
		}
	}
	return out, nil
}

// judge sets what comes of a car. An error is why it is open.
func (s *seriesJudge) judge(ctx context.Context, m *study.MeasuredCar, out *SeriesCar) error {
	f, err := s.fit(ctx, m)
	if err != nil {
		return err
	}
	out.LeftOut = len(f.car.Outliers)
	if f.car.Verdict() == optimize.NotExplained {
		return wrongf("", "no car near the one stated gives these readings (chi-square %.1f on %d degrees of freedom): fit them by themselves to see why", f.car.ChiSquare, f.car.Freedom)
	}
	s.fitted, s.widened = append(s.fitted, f.car), append(s.widened, f.widened)
	var sides []solver.Side
	var short error
	for _, side := range solver.Sides {
		if err := s.read(f, side); err != nil {
			short = cmp.Or(short, err)
			continue
		}
		sides = append(sides, side)
	}
	if len(sides) == 0 {
		return short
	}
	j := optimize.Judge{Travels: s.grid.mm, Targets: targets(s.doc), Sides: selectionOf(sides)}
	p, err := f.car.Predict(&j, s.parts)
	if err != nil {
		return err
	}
	s.take(out, p)
	return short
}

// fit finds the car that a car's readings came from.
func (s *seriesJudge) fit(ctx context.Context, m *study.MeasuredCar) (*fitter, error) {
	one := *s.doc
	one.Readings, one.Measured = nil, nil
	for _, r := range m.Readings {
		if r.Purpose = ""; len(r.Values) > 0 {
			one.Readings = append(one.Readings, r)
		}
	}
	f, err := newFitter(ctx, &one)
	if err != nil {
		return nil, err
	}
	f.widened = 1
	if f.car, err = optimize.FitCar(ctx, &f.problem); err != nil || f.car.Verdict() != optimize.NotExplained || f.problem.Priors != nil {
		return f, err
	}
	if f.widened, err = f.problem.WidenPriors(ctx); err == nil && f.widened > 1 {
		f.car, err = optimize.FitCar(ctx, &f.problem)
	}
	return f, err
}

// seriesShort is the part of the window that readings may leave out at an end: a travel is
// set by hand.
const seriesShort = 0.05

// read returns an error where a side was not read over the window with the candidate's parts
// on.
func (s *seriesJudge) read(f *fitter, side solver.Side) error {
	low, high, any := math.Inf(1), math.Inf(-1), false
	for i := range f.problem.Sets {
		set := &f.problem.Sets[i]
		if set.Side != side {
			continue
		}
		any = true
		if !maps.Equal(partsOn(set.Changes, side), partsOn(s.parts, side)) {
			continue
		}
		for _, r := range set.Readings {
			low, high = min(low, r.Travel), max(high, r.Travel)
		}
	}
	first, last := s.grid.mm[0], s.grid.mm[len(s.grid.mm)-1]
	slack := seriesShort * (last - first)
	switch {
	case !any:
		return wrongf("", "the %s wheel was not read", side)
	case low > high:
		return wrongf("", "the %s wheel was not read with the parts of the %s on; state them as changes of a run", side, label(s.car.name))
	case low > first+slack || high < last-slack:
		return wrongf("", "the %s wheel was read from %.4g mm to %.4g mm alone, and the window is %.4g mm to %.4g mm", side, low, high, first, last)
	}
	return nil
}

// partsOn returns the parts that are on a side, by their keys; settings are none.
func partsOn(changes []solver.Change, side solver.Side) map[string]float64 {
	on := map[string]float64{}
	for _, c := range changes {
		if c.Sides.Includes(side) && !c.Parameter.Absolute {
			on[c.Parameter.Key] = c.Value
		}
	}
	return on
}

// take notes the figure of a fitted car, what it comes to and where it is off.
func (s *seriesJudge) take(out *SeriesCar, p *optimize.Prediction) {
	both := bandFigures(p)
	out.Figure = both.Peak
	if s.measure == optimize.RMS {
		out.Figure = both.RMS
	}
	if s.limit != nil {
		if out.Verdict = SeriesPass; !(float64(out.Figure.Value) <= *s.limit) {
			out.Verdict = SeriesFail
		}
		out.Near = float64(out.Figure.Low) <= *s.limit && *s.limit < float64(out.Figure.High)
	}
	n := len(p.Travels)
	for i, change := range p.Change {
		side := p.Sides[i/n]
		off := (change - solver.Angle(s.nominal[side][i%n])).Degrees()
		if out.Off == nil || math.Abs(off) > math.Abs(out.Off.Change) {
			out.Off = &SeriesOff{side.String(), s.grid.file[i%n], off}
		}
	}
}

// share counts the cars that pass; nil where none was judged.
func (s *seriesJudge) share(list []SeriesCar) *SeriesShare {
	out := SeriesShare{Method: "Wilson's score"}
	for i := range list {
		switch list[i].Verdict {
		case SeriesPass:
			out.Passed++
			out.Judged++
		case SeriesFail:
			out.Judged++
		}
	}
	if out.Judged == 0 {
		return nil
	}
	share, low, high := optimize.Share(out.Passed, out.Judged)
	out.Share, out.Low, out.High = Number(share), Number(low), Number(high)
	return &out
}

// addCommon adds what the cars that were fitted have in common, of two at least.
func (s *seriesJudge) addCommon(out *SeriesResult) {
	if len(s.fitted) < 2 {
		return
	}
	c := optimize.FitCommon(s.fitted, s.widened)
	out.Scatter = Number(c.Scatter)
	for i := range c.Deviations {
		v := &c.Deviations[i]
		shown := func(x float64) float64 { return s.doc.FromSolver(v.Parameter, x) }
		out.Common = append(out.Common, CommonResult{
			v.Key(), FittedValue{shown(v.Value), shown(v.SD), shown(v.PriorSD)}, shown(v.Alone), v.Gain, v.Share,
		})
	}
}
