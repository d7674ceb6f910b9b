package optimize

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// Prediction is what a fitted car, with parts fitted to it, does over a window,
// and how well that is known.
type Prediction struct {
	Sides   []solver.Side
	Travels []float64
	// Change is the toe change less target, and SD its standard deviation, of
	// each side at each travel; sides one after the other.
	Change, SD []solver.Angle
	RMS, Peak  Band
}

// Band is a figure of the fitted car, its median over the cars that the readings
// leave possible, and the ends between which 90 % of them lie. A fitted car is the
// smoothest of those, so that its figure may lie below the band of a small one.
type Band struct{ Fitted, Low, Median, High solver.Angle }

// Half of a 90 % band in standard deviations, and the shares that it leaves below
// its ends.
const (
	bandSD   = 1.6448536269514722
	bandLow  = 0.05
	bandHigh = 0.95
)

// Predict returns what the fitted car does in the window of a judge, with parts
// fitted. The judge's own
// base car and hold do not count.
func (f *FittedCar) Predict(j *Judge, parts []solver.Change) (*Prediction, error) {
	b, err := f.bench(j)
	if err != nil {
		return nil, err
	}
	c, err := b.rated(f.Car(parts), f.Unknowns, nil)
	if err != nil {
		return nil, err
	}
	return f.predict(b, c), nil
}

// bench returns the memory of a judge of fitted cars, whose setpoints hold at each
// set-up as they did when the readings were taken.
func (f *FittedCar) bench(j *Judge) (*bench, error) {
	own := *j
	own.Base, own.Hold = f.Base, solver.HoldAll
	if err := own.Check(); err != nil {
		return nil, err
	}
	return own.bench(), nil
}

// predict describes a curve of the fitted car whose rates begin with those by the
// unknowns.
func (f *FittedCar) predict(b *bench, c *ratedCurve) *Prediction {
	p := &Prediction{Sides: b.sides, Travels: b.Travels}
	spread := f.spread(c)
	for i, x := range c.change {
		p.Change = append(p.Change, solver.Angle(x))
		p.SD = append(p.SD, solver.Angle(math.Sqrt(spread.At(i, i))))
	}
	p.RMS, p.Peak = bandsOf(c.change, len(b.sides), spread)
	return p
}

// spread returns the covariance of a curve.
func (f *FittedCar) spread(c *ratedCurve) *mat.SymDense {
	rows, _ := c.rates.Dims()
	return nlp.Congruence(c.rates.Slice(0, rows, 0, len(f.Unknowns)).(*mat.Dense), f.Covariance)
}

const (
	// bandDraws is the number of curves that the ends of a band are taken from:
	// they are steady to some 2 % of its width.
	bandDraws = 2000
	// bandSeed makes them the same each time.
	bandSeed = 90
)

// bandsOf returns the figures of a car's wheels over what their covariance leaves possible.
// They are no linear functions of the curve, a root mean square least of all where
// it is small, so that they are drawn.
func bandsOf(change []float64, wheels int, spread *mat.SymDense) (rms, peak Band) {
	factor := nlp.CholeskyColumns(spread)
	r := rand.New(rand.NewPCG(bandSeed, bandSeed))
	x := make([]float64, len(change))
	var all, most []float64
	for range bandDraws {
		copy(x, change)
		for _, d := range factor {
			z := r.NormFloat64()
			for i := range x {
				x[i] += z * d[i]
			}
		}
		f := CarFigures(x, wheels)
		all, most = append(all, float64(f.RMS)), append(most, float64(f.Peak))
	}
	f := CarFigures(change, wheels)
	return bandOf(f.RMS, all), bandOf(f.Peak, most)
}

func bandOf(fitted solver.Angle, drawn []float64) Band {
	q := nlp.Quantiles(drawn, bandLow, 0.5, bandHigh)
	return Band{Fitted: fitted, Low: solver.Angle(q[0]), Median: solver.Angle(q[1]), High: solver.Angle(q[2])}
}
