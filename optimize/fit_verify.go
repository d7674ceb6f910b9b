package optimize

import (
	"context"
	"math"
	"slices"
	"sort"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// Verification is what readings after fitting say about a prediction.
type Verification struct {
	Sets []SetCheck
	// Passed says that all sets together lie where the fitted car puts them.
	Passed bool
	Chance float64 // of differences as large, or larger, were the fitted car right
	// Causes are the single changes that would explain the differences, the
	// likeliest first; none where the readings pass.
	Causes []Cause
}

// SetCheck compares one set with what the fitted car predicts.
type SetCheck struct {
	Passed bool
	Chance float64
	// Predicted are the readings that the fitted car gives, on the gauge's own
	// zero, and Off is what was read beyond them, mm. SD is the standard deviation
	// that Off should have, by what is unknown of the car and the gauge's
	// repeatability.
	Predicted, Off, SD []float64
	Worst              int // the reading with the largest |Off|/SD
}

// Cause is a change of one parameter that would explain differences.
type Cause struct {
	Parameter solver.Parameter
	Sides     solver.Selection
	Value     float64 // the likeliest change, mm or radians
	// Gain is by how much the change, its own unlikeliness counted, lowers the
	// chi-square: 2 make it some three times as likely as none, 10 settle it.
	Gain float64
	// Left is the chance of the differences that remain.
	Left float64
}

// Key returns the parameter's key with the side it is restricted to.
func (c *Cause) Key() string { return c.Parameter.Key + c.Sides.Suffix() }

// Verify holds sets of readings, taken with the parts that they name, against the
// fitted car.
func (f *FittedCar) Verify(ctx context.Context, sets []ReadingSet) (*Verification, error) {
	p := GaugeFit{Base: f.Base, Sets: sets}
	if err := p.Check(); err != nil {
		return nil, err
	}
	v, err := f.innovation(ctx, sets)
	if err != nil {
		return nil, err
	}
	out := &Verification{Chance: chance(v.chiSquare(v.off), v.freedom())}
	out.Passed = out.Chance >= verdictLevel
	for i := range sets {
		c, err := f.checkSet(ctx, sets[i:i+1])
		if err != nil {
			return nil, err
		}
		out.Sets = append(out.Sets, *c)
		out.Passed = out.Passed && c.Passed
	}
	if !out.Passed {
		out.Causes, err = f.causes(v)
	}
	return out, err
}

// checkSet compares one set by itself.
func (f *FittedCar) checkSet(ctx context.Context, one []ReadingSet) (*SetCheck, error) {
	v, err := f.innovation(ctx, one)
	if err != nil {
		return nil, err
	}
	s := &one[0]
	c := &SetCheck{Chance: chance(v.chiSquare(v.off), v.freedom())}
	off, sd := v.settle()
	worst := 0.0
	for i, r := range s.Readings {
		c.Off = append(c.Off, off[i]*s.Repeatability)
		c.SD = append(c.SD, sd[i]*s.Repeatability)
		c.Predicted = append(c.Predicted, r.Value-c.Off[i])
		if score := math.Abs(off[i]) / sd[i]; score > worst {
			c.Worst, worst = i, score
		}
	}
	c.Passed = c.Chance >= verdictLevel && worst <= critical(len(s.Readings))
	return c, nil
}

// causes ranks single changes of any parameter of the car by how much of the
// differences they explain.
func (f *FittedCar) causes(v *innovation) ([]Cause, error) {
	us := f.suspects(v.model.sets)
	m := newGaugeModel(v.model.ctx, &GaugeFit{Base: f.Base, Sets: v.model.sets}, append(slices.Clone(f.Unknowns), us...))
	x := append(slices.Clone(f.Values), make([]float64, len(us))...)
	values, err := m.values(x)
	if err != nil {
		return nil, err
	}
	off := v.share(v.off)
	before := off.times(off)
	var out []Cause
	for k := range us {
		rate := v.share(nlp.Column(values.JR, len(f.Unknowns)+k))
		along := rate.times(off)
		stiff := rate.times(rate) + 1/(us[k].SD*us[k].SD)
		c := Cause{Parameter: us[k].Parameter, Sides: us[k].Sides, Value: along / stiff, Gain: along * along / stiff}
		c.Left = chance(before-c.Gain, v.freedom()-1)
		out = append(out, c)
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Gain > out[j].Gain })
	return out, nil
}

// doubtOfPart is the standard deviation, as a share of what was fitted, by which a
// part that was changed may be other than stated: a spacer left out of three.
const doubtOfPart = 1.0 / 3

// suspects are the parameters that may have changed since the fit: all of the
// registry that move the sides read, with its usual tolerances, and more for the
// parts that were touched.
func (f *FittedCar) suspects(sets []ReadingSet) []Unknown {
	p := GaugeFit{Base: f.Base, Sets: sets, Priors: []FitPrior{}}
	for _, q := range solver.Parameters(f.Base.Design()) {
		if q.OfGear() || q.RodLength() || q.Key == "tyreRadius" || q.Key == "toe" {
			continue
		}
		sd := q.Tolerance
		for i := range sets {
			for _, c := range sets[i].Changes {
				if c.Parameter.Key == q.Key && !q.Absolute {
					sd = math.Max(sd, doubtOfPart*math.Abs(c.Value))
				}
			}
		}
		p.Priors = append(p.Priors, FitPrior{Parameter: q, SD: sd})
	}
	return p.unknowns()
}
