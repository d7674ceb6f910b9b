package engine

import (
	"context"
	"strings"

	"toewright/internal/study"
	"toewright/optimize"
)

// verdictNames are the verdicts as results have them.
var verdictNames = map[optimize.Verdict]string{
	optimize.Explained: "explained", optimize.NotExplained: "not explained", optimize.TooGood: "too good",
}

func (f *fitter) result(ctx context.Context, o FitOptions) (*FitResult, error) {
	c := f.car
	out := &FitResult{
		Units: f.doc.Units, Fitted: map[string]FittedValue{}, ChiSquare: c.ChiSquare, DegreesOfFreedom: c.Freedom,
		Chance: c.Chance(), Verdict: verdictNames[c.Verdict()],
		Outliers: f.outliers(), TapeOutliers: f.tapeOutliers(), Slips: f.slipResults(), Play: f.play(), Sets: f.sets(), Settled: f.settled(), Next: []MeasurementResult{},
	}
	for k := range c.Unknowns {
		u := &c.Unknowns[k]
		if u.Kind == optimize.MarkUnknown {
			continue // a mark of the tape is not a part of the car
		}
		out.Fitted[f.key(u)] = FittedValue{f.shown(u, c.Values[k]), f.shown(u, c.SD(k)), f.shown(u, u.SD)}
	}
	steps := []func(context.Context, *FitResult, FitOptions) error{f.addAdvice, f.addVerify, f.addCars}
	for i, add := range steps {
		f.progress.within(fitCar, 1).report(float64(i) / float64(len(steps)))
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if err := add(ctx, out, o); err != nil {
			return nil, explain(err, "")
		}
	}
	f.addWords(out)
	return out, nil
}

// key returns an unknown's key, without the side where only one was read and the
// study's prior has none either. A gauge's slope always says whose, and so does what a
// tape may have measured on the other side.
func (f *fitter) key(u *optimize.Unknown) string {
	key := u.Key()
	if f.bothRead() || u.Kind == optimize.GaugeSlopeUnknown || f.taping != nil && f.doc.Priors == nil {
		return key
	}
	bare, _, _ := strings.Cut(key, "@")
	for _, p := range f.doc.Priors {
		if p.Parameter == key {
			return key
		}
	}
	return bare
}

// bothRead reports whether both sides were read.
func (f *fitter) bothRead() bool {
	for i := range f.problem.Sets {
		if f.problem.Sets[i].Side != f.problem.Sets[0].Side {
			return true
		}
	}
	return false
}

// shown returns an unknown's value in file units or degrees.
func (f *fitter) shown(u *optimize.Unknown, v float64) float64 {
	switch u.Kind {
	case optimize.CarUnknown:
		return f.doc.FromSolver(u.Parameter, v)
	case optimize.SteerZeroUnknown:
		return f.steerShown(v)
	case optimize.GaugeSlopeUnknown: // the same in any unit
		return v
	}
	return f.doc.Units.FromMillimetres(v)
}

func (f *fitter) length(mm float64) float64 { return f.doc.Units.FromMillimetres(mm) }

func (f *fitter) lengths(mm []float64) []float64 {
	out := make([]float64, len(mm))
	for i, x := range mm {
		out[i] = f.length(x)
	}
	return out
}

func (f *fitter) outliers() []OutlierResult {
	out := []OutlierResult{}
	for _, x := range f.car.Outliers {
		out = append(out, OutlierResult{
			Set: f.places[x.Set], Reading: x.Reading, Side: f.problem.Sets[x.Set].Side.String(),
			Travel: f.length(x.Travel), Value: f.length(x.Value), Off: f.length(x.Off), Score: x.Score,
		})
	}
	return out
}

func (f *fitter) tapeOutliers() []TapeOutlierResult {
	if f.taping == nil {
		return nil
	}
	return f.taping.outliers(f.car)
}

func (f *fitter) slipResults() []SlipResult {
	out := []SlipResult{}
	for i := range f.slips {
		out = append(out, SlipResult{f.places[f.slips[i].Set], f.slips[i].Words(f.problem.Sets)})
	}
	return out
}

// playScore is the gap between two runs, in standard deviations, from which on
// there is play.
const playScore = 3.0

func (f *fitter) play() []PlayResult {
	out := []PlayResult{}
	for _, h := range f.problem.Hystereses() {
		if h.Score < playScore {
			continue
		}
		out = append(out, PlayResult{[2]int{f.places[h.Sets[0]], f.places[h.Sets[1]]}, f.length(h.Travel), f.length(h.Gap), h.Score})
	}
	return out
}

func (f *fitter) sets() []ReadingSetResult {
	var out []ReadingSetResult
	for i := range f.car.Sets {
		s := &f.car.Sets[i]
		r := ReadingSetResult{Set: f.places[i], Side: s.Side.String(), Zero: f.length(f.car.Zeros[i]), Residuals: f.lengths(f.car.Residuals[i])}
		for _, v := range s.Readings {
			r.Travels = append(r.Travels, f.length(v.Travel))
			r.Toe = append(r.Toe, degrees(s.Gauge.Toe(v.Value-f.car.Zeros[i], s.Base).Radians()))
		}
		out = append(out, r)
	}
	return out
}

// mostSettled is how many settled combinations are listed.
const mostSettled = 6

func (f *fitter) settled() []SettledResult {
	out := []SettledResult{}
	for _, p := range f.car.Pairs() {
		if len(out) == mostSettled {
			break
		}
		a, b := &f.car.Unknowns[p.A], &f.car.Unknowns[p.B]
		out = append(out, SettledResult{f.key(a), f.key(b), p.Sum, f.shown(a, p.SD), f.shown(a, p.Before)})
	}
	return out
}

func (f *fitter) addAdvice(ctx context.Context, out *FitResult, o FitOptions) error {
	q, err := f.request()
	if err != nil || q == nil {
		return err
	}
	list, err := f.car.Advise(q)
	if err != nil {
		return err
	}
	out.Advice = map[string]AdviceResult{}
	for _, a := range list {
		advice := f.advice(q, a)
		if why := f.saysNothing(a); len(why) > 0 {
			advice.Final = false
			out.Nothing = append(out.Nothing, why...)
		}
		if advice.SettlesLean, err = f.settlesLean(ctx, q, a); err != nil {
			return err
		}
		for _, side := range a.Sides {
			out.Advice[side.String()] = advice
		}
	}
	return f.addNext(ctx, out, q, list, given(o.Measure, DefaultMeasured))
}

func (f *fitter) advice(q *optimize.AdviceRequest, a *optimize.Advice) AdviceResult {
	shown := func(v float64) float64 { return f.doc.FromSolver(q.Parameter, v) }
	out := AdviceResult{
		Best: shown(a.Best), Low: shown(a.Low), High: shown(a.High), SD: Number(shown(a.SD)), Step: a.Step,
		Value: shown(a.Value), Fitted: shown(a.Fitted), AtBound: a.AtBound, Final: a.Final, Lean: shown(f.car.Lean(a)),
		TieRod: f.length(a.Tie), Turns: none, Expect: bandFigures(a.AtValue),
	}
	if rod := f.doc.TieRod; rod != nil && rod.ThreadPitch > 0 {
		out.Turns = Number(out.TieRod / rod.ThreadPitch)
	}
	return out
}

func bandFigures(p *optimize.Prediction) BandFigures {
	return BandFigures{RMS: bandResult(p.RMS), Peak: bandResult(p.Peak)}
}

func bandResult(b optimize.Band) BandResult {
	return BandResult{degrees(b.Fitted.Radians()), degrees(b.Low.Radians()), degrees(b.High.Radians())}
}

// addNext lists what to measure next for the advice that is known worst; nothing where
// nobody can say how the best value depends on the measures.
func (f *fitter) addNext(ctx context.Context, out *FitResult, q *optimize.AdviceRequest, list []*optimize.Advice, most int) error {
	if len(list) == 0 {
		return nil
	}
	worst := list[0]
	for _, a := range list {
		if a.SD > worst.SD {
			worst = a
		}
	}
	if worst.Rates == nil {
		return nil
	}
	found, err := f.car.NextMeasurements(ctx, q, worst, nil)
	if err != nil {
		return err
	}
	for _, m := range found[:min(most, len(found))] {
		out.Next = append(out.Next, MeasurementResult{f.measurementWords(&m), f.doc.FromSolver(q.Parameter, m.SD)})
	}
	return nil
}

// settlesLean says, where a gauge that leans could move advice by more than half a step,
// which readings would settle most of that; "" elsewhere.
func (f *fitter) settlesLean(ctx context.Context, q *optimize.AdviceRequest, a *optimize.Advice) (string, error) {
	if !(f.car.Lean(a) > q.HalfStep()) {
		return "", nil
	}
	list, err := f.car.NextMeasurements(ctx, q, a, nil)
	for i := range list {
		if list[i].Unknown < 0 {
			return f.measurementWords(&list[i]), err
		}
	}
	return "", err
}

func (f *fitter) addVerify(ctx context.Context, out *FitResult, _ FitOptions) error {
	if len(f.checks) == 0 {
		return nil
	}
	v, err := f.car.Verify(ctx, f.checks)
	if err != nil {
		return err
	}
	out.Verify = &VerifyResult{Passed: v.Passed, Chance: v.Chance, Causes: []CauseResult{}}
	for i := range v.Sets {
		s := &v.Sets[i]
		r := VerifiedSet{
			Set: f.checked[i], Side: f.checks[i].Side.String(), Passed: s.Passed,
			Predicted: f.lengths(s.Predicted), Off: f.lengths(s.Off), SD: f.lengths(s.SD), Worst: s.Worst,
		}
		for _, x := range f.checks[i].Readings {
			r.Travels = append(r.Travels, f.length(x.Travel))
		}
		out.Verify.Sets = append(out.Verify.Sets, r)
	}
	for _, c := range v.Causes {
		out.Verify.Causes = append(out.Verify.Causes, CauseResult{c.Key(), f.doc.FromSolver(c.Parameter, c.Value), c.Gain, c.Left})
	}
	return nil
}

// addCars adds what the base car and the candidates do as fitted.
func (f *fitter) addCars(ctx context.Context, out *FitResult, _ FitOptions) error {
	list := []study.Candidate{{Name: study.BaseName}}
	for _, k := range f.doc.Candidates {
		if !k.Hidden {
			list = append(list, k)
		}
	}
	j := f.judge()
	for _, k := range list {
		if err := ctx.Err(); err != nil {
			return err
		}
		parts, err := f.doc.SolverChanges(f.design, k.Changes)
		if err != nil {
			return explain(err, label(k.Name))
		}
		p, err := f.car.Predict(&j, parts)
		if err != nil {
			continue // a candidate that the fitted car cannot take has no band
		}
		out.Cars = append(out.Cars, f.predicted(k.Name, p))
	}
	return nil
}

func (f *fitter) predicted(name string, p *optimize.Prediction) PredictedCar {
	out := PredictedCar{Candidate: name, BandFigures: bandFigures(p)}
	for i := range p.Change {
		side := p.Sides[i/len(p.Travels)]
		out.Positions = append(out.Positions, PredictedPosition{
			Side: side.String(), Travel: f.grid.file[i%len(p.Travels)],
			Change: Number(p.Change[i].Degrees()), SD: Number(p.SD[i].Degrees()),
		})
	}
	return out
}
