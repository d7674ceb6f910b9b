package optimize

import (
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// GaugeFit asks for the car that readings of a gauge most likely came from.
type GaugeFit struct {
	Base *solver.Assembler
	Sets []ReadingSet
	// Priors are what is free and how well it was known; nil means every
	// coordinate of every hardpoint with the registry's tolerance.
	Priors []FitPrior
	// TravelZero and SteerZero, where positive, free the errors of the travels'
	// zero of each side, mm, and of the steering's centre, mm or radians: their
	// standard deviations.
	TravelZero, SteerZero float64
	// Taped is what was measured beside the gauge, or in its place; nil for nothing. No
	// set of readings is needed then, and without one the base may be nil.
	Taped *Taped
	// Progress, if not nil, hears of [GaugeFit.WidenPriors] and of [GaugeFit.Slips] how much
	// of either is done, from 0 to 1, and must return soon.
	Progress func(fraction float64)
}

// FittedCar is the most likely car behind readings, and how well it is known.
type FittedCar struct {
	Base     *solver.Assembler
	Sets     []ReadingSet
	Unknowns []Unknown
	// Values are those of the unknowns: changes from the file's geometry, mm or
	// radians. Covariance is theirs, by the linearised model.
	Values     []float64
	Covariance *mat.SymDense
	// Zeros are the readings of the sets that stand for no toe, mm.
	Zeros []float64
	// Residuals are readings less prediction, mm, by set and reading.
	Residuals [][]float64
	// Outliers are readings that were left out; see [Outlier].
	Outliers []Outlier
	// TapeOutliers are measures of the tape that were left out.
	TapeOutliers []TapeOutlier
	// ChiSquare is the sum of the squared residuals in units of their standard
	// deviation, those of the priors included; Freedom is the number of readings
	// and measures used less the unknown zeros.
	ChiSquare float64
	Freedom   int
	Status    nlp.Status
}

// Check returns an error that says what the fit lacks.
func (p *GaugeFit) Check() error {
	if len(p.Sets) == 0 && p.Taped == nil {
		return nlp.ProblemErrorf("there are no readings to fit")
	}
	if p.Taped != nil {
		if err := p.Taped.check(); err != nil {
			return err
		}
	}
	for i := range p.Sets {
		if err := p.Sets[i].check(i); err != nil {
			return err
		}
	}
	return p.checkPriors()
}

func (p *GaugeFit) checkPriors() error {
	err := solver.CheckOnce(len(p.Priors), func(i int) (*solver.Parameter, solver.Selection) {
		return &p.Priors[i].Parameter, p.Priors[i].Sides
	})
	if err != nil {
		return err
	}
	for _, q := range p.Priors {
		if !(q.SD > 0) || math.IsInf(q.SD, 0) {
			return nlp.ProblemErrorf("prior of %s has standard deviation %g, must be positive", q.Parameter.Key+q.Sides.Suffix(), q.SD)
		}
	}
	if p.SteerZero > 0 && p.Base.Design().Gear.Kind == solver.NoGear {
		return nlp.ProblemErrorf("prior of steerZero frees the steering's centre, but nothing steers this axle; leave it out")
	}
	for _, z := range []struct {
		key string
		sd  float64
	}{{"travelZero", p.TravelZero}, {"steerZero", p.SteerZero}} {
		if !(z.sd >= 0) || math.IsInf(z.sd, 0) {
			return nlp.ProblemErrorf("prior of %s has standard deviation %g, must be 0 or more", z.key, z.sd)
		}
	}
	return nil
}

// FitCar returns the most likely car behind readings: the one that makes least
// the squares of the readings' residuals and of the departures from the priors
// together. Outliers are left out and named. An error is an input that cannot be
// fitted, such as a travel that the car as filed does not reach.
func FitCar(ctx context.Context, p *GaugeFit) (*FittedCar, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	us := p.unknowns()
	if len(us) == 0 {
		return nil, nlp.ProblemErrorf("no prior applies to a side that was read: free at least one parameter of it")
	}
	m := newGaugeModel(ctx, p, us)
	if m.size.Residuals == 0 { // nothing was measured yet
		return p.unread(us), nil
	}
	start, err := p.start(ctx, m)
	if err != nil {
		return nil, err
	}
	e, err := m.snoop(ctx, start)
	if err != nil {
		return nil, err
	}
	f := m.fitted(&e)
	return f, ctx.Err() // which may have ended while the residuals were found
}

// start returns where a fit begins: where the tape alone puts the car, if it makes the
// readings' travels there, or as filed. What the tape alone has left out stays so at first.
func (p *GaugeFit) start(ctx context.Context, m *gaugeModel) ([]float64, error) {
	if p.Taped == nil || len(p.Sets) == 0 {
		return m.start()
	}
	alone, e, err := p.byTape(ctx, m.unknowns)
	if err != nil {
		return nil, err
	}
	copy(m.used[m.tape.first:], alone.used)
	if v := (nlp.Values{R: make([]float64, m.size.Residuals)}); m.evaluate(e.X, &v) == nil {
		return e.X, nil
	}
	return m.start()
}

// byTape fits what was taped alone.
func (p *GaugeFit) byTape(ctx context.Context, us []Unknown) (*gaugeModel, nlp.Estimate, error) {
	m := newGaugeModel(ctx, &GaugeFit{Base: p.Base, Taped: p.Taped}, us)
	e, err := m.snoop(ctx, make([]float64, len(us)))
	return m, e, err
}

// start returns the car as filed.
func (m *gaugeModel) start() ([]float64, error) {
	x := make([]float64, m.size.Variables)
	v := nlp.Values{R: make([]float64, m.size.Residuals)}
	if err := m.evaluate(x, &v); err != nil {
		if m.ctx.Err() != nil {
			return nil, err
		}
		return nil, nlp.ProblemErrorf("the car as filed does not make the readings' travels: %v", err)
	}
	return x, nil
}

func mean(xs []float64) float64 {
	sum := 0.0
	for _, x := range xs {
		sum += x
	}
	return sum / float64(len(xs))
}

// solve fits the readings in use. A fit that was cancelled, or that says nothing
// of some variable, is an error; one that stalled is as good as rounding allows.
func (m *gaugeModel) solve(ctx context.Context, start []float64, loss nlp.Loss) (nlp.Estimate, error) {
	r := nlp.Readings{Model: m, Start: start, Priors: make([]nlp.Prior, m.size.Variables), Loss: loss}
	for k := range m.unknowns {
		r.Priors[k].SD = m.unknowns[k].SD
	}
	m.loss = loss
	e, err := nlp.LeastSquares(ctx, r, m.settings())
	m.loss = nil
	if err == nil {
		err = ctx.Err()
	}
	if err == nil && e.Covariance == nil {
		err = e.Status.Err()
	}
	return e, err
}

// manyStep is the relative step at which a fit to many readings has converged: some
// millionth of the standard deviation of one. Where no car follows them the steps get
// shorter slowly.
const manyStep = 1e-8

// settings are those of a fit to the model's rows.
func (m *gaugeModel) settings() *nlp.LeastSquaresSettings {
	if len(m.used) > mostByHand {
		return &nlp.LeastSquaresSettings{Step: manyStep}
	}
	return nil
}

// fitted describes the car that an estimate stands for.
func (m *gaugeModel) fitted(e *nlp.Estimate) *FittedCar {
	n := len(m.unknowns)
	f := &FittedCar{
		Base: m.base, Sets: m.sets, Unknowns: m.unknowns,
		Values: e.X, Covariance: mat.NewSymDense(n, nil),
		Outliers: m.outliers(e), ChiSquare: e.ChiSquare, Freedom: m.freedom(), Status: e.Status,
	}
	f.Covariance.CopySym(e.Covariance)
	f.TapeOutliers = m.tapeOutliers(e, f.Covariance)
	f.Residuals = m.residuals(e.X)
	f.Zeros = slices.Clone(m.zeros)
	return f
}

// freedom returns the number of readings in use less the unknown zeros.
func (m *gaugeModel) freedom() int {
	n := 0
	for i := range m.sets {
		if m.sets[i].Zero == nil {
			n--
		}
	}
	for _, used := range m.used {
		if used {
			n++
		}
	}
	return n
}

// residuals returns readings less prediction, mm, of all readings.
func (m *gaugeModel) residuals(x []float64) [][]float64 {
	v := nlp.Values{R: make([]float64, m.size.Residuals)}
	if m.evaluate(x, &v) != nil {
		return nil
	}
	out := make([][]float64, len(m.sets))
	row := 0
	for i := range m.sets {
		for range m.sets[i].Readings {
			out[i] = append(out[i], -v.R[row]*m.sets[i].Repeatability)
			row++
		}
	}
	return out
}

// SD returns the standard deviation of unknown k after the readings.
func (f *FittedCar) SD(k int) float64 { return math.Sqrt(f.Covariance.At(k, k)) }

// sdOf returns the standard deviation of what has the given derivatives by the
// unknowns.
func (f *FittedCar) sdOf(rates []float64) float64 {
	return math.Sqrt(nlp.Inner(f.Covariance, rates))
}

// Car returns the changes from the file that make the fitted car with parts
// fitted to it.
func (f *FittedCar) Car(parts []solver.Change) []solver.Change {
	return carOf(f.Base, parts, f.Unknowns, f.Values)
}
