package optimize

import (
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"toewright/optimize/nlp"
)

// Slip is a mistake in how readings were taken or written down, that would
// explain why they fit no likely car.
type Slip struct {
	Kind SlipKind
	Set  int // counted from 0
	// Other is the set exchanged with Set; -1 for other slips.
	Other int
	// First to End are the readings concerned, by their order in the set.
	First, End int
	// Value is what a single reading says, Likely what would fit, mm.
	Value, Likely float64
}

// SlipKind is a kind of slip.
type SlipKind uint8

// The kinds of slips.
const (
	DigitSlip        SlipKind = iota // a digit or a decimal point wrong in one reading
	SignSlip                         // toe-out written as toe-in, from one reading to another
	InchSlip                         // inches among millimetres, or millimetres as inches
	TravelSignSlip                   // bump and droop exchanged
	TravelInchSlip                   // travels in inches
	SwappedSidesSlip                 // left and right exchanged between two sets
)

const (
	// mostByHand bounds the readings among which slips are looked for, and default priors
	// are widened for: what a hand writes down in a day. The time that slips take grows
	// with their square.
	mostByHand = 400
	// maxSlips bounds how many slips are looked for.
	maxSlips = 6
	// slipGain is the least by which a slip put right lowers the chi-square:
	// e^12 times as likely.
	slipGain = 25
	// slipShare is the least share of the excess that it accounts for. A slip
	// that explains less is one of many ways to be a little better.
	slipShare = 0.3
)

// Slips returns what was likely written down wrongly, the gravest first, and the
// sets with all of it put right. Among more readings than a hand writes down it looks for
// none. It finds nothing in readings that some likely
// car explains.
func (p *GaugeFit) Slips(ctx context.Context) ([]Slip, []ReadingSet, error) {
	if err := p.Check(); err != nil {
		return nil, nil, err
	}
	if p.readings() > mostByHand {
		return nil, p.Sets, nil
	}
	now := *p
	var out []Slip
	for round := range maxSlips {
		before, freedom, err := now.misfit(ctx)
		if err != nil {
			return nil, nil, err
		}
		if chance(before, freedom) >= verdictLevel {
			break
		}
		h, after, err := now.likeliestSlip(ctx, func(fraction float64) {
			if p.Progress != nil {
				p.Progress((float64(round) + fraction) / maxSlips)
			}
		})
		if err != nil {
			return nil, nil, err
		}
		if h == nil || !(before-after >= max(slipGain, slipShare*(before-float64(freedom)))) {
			break
		}
		out, now.Sets = append(out, h.slip), h.sets
	}
	return out, now.Sets, nil
}

// readings returns how many readings there are.
func (p *GaugeFit) readings() int {
	n := 0
	for i := range p.Sets {
		n += len(p.Sets[i].Readings)
	}
	return n
}

// misfit returns the chi-square of a fit to all readings, and its degrees of
// freedom.
func (p *GaugeFit) misfit(ctx context.Context) (chiSquare float64, freedom int, err error) {
	m, e, err := p.fitAll(ctx)
	if err != nil {
		return 0, 0, err
	}
	return e.ChiSquare, m.freedom(), nil
}

// fitAll fits all readings, whether or not they agree.
func (p *GaugeFit) fitAll(ctx context.Context) (*gaugeModel, *nlp.Estimate, error) {
	m := newGaugeModel(ctx, p, p.unknowns())
	start, err := p.start(ctx, m)
	if err != nil {
		return nil, nil, err
	}
	e, err := m.solve(ctx, start, nil)
	return m, &e, err
}

// hypothesis is what the readings would be if a slip were put right.
type hypothesis struct {
	slip Slip
	sets []ReadingSet
	// stretch is by how much the values are made larger, as the logarithm of all
	// factors: readings that are made small fit any car, and would have to be
	// written down that much more finely.
	stretch float64
}

// shortList is the number of slips that are judged by a fit each.
const shortList = 6

// likeliestSlip returns the slip that, put right, lets a fit explain the readings
// best, and the chi-square of that fit; nil where no fit can be made. The fits are
// spent on those that make the readings least surprising before any: against the
// spread of all likely cars about the one filed. Report hears how much is done.
func (p *GaugeFit) likeliestSlip(ctx context.Context, report func(fraction float64)) (*hypothesis, float64, error) {
	filed, err := p.filed(ctx)
	if err != nil {
		return nil, 0, err
	}
	v, err := filed.innovation(ctx, p.Sets)
	if err != nil {
		return nil, 0, err
	}
	var list []hypothesis
	var surprises []float64
	all := p.hypotheses()
	for i, h := range all {
		report(float64(i) / float64(len(all)))
		if ctx.Err() != nil {
			return nil, 0, ctx.Err()
		}
		x, err := filed.surprise(ctx, v, h.sets)
		if err != nil {
			continue // such a travel is out of reach
		}
		x -= 2 * h.stretch
		i, _ := slices.BinarySearch(surprises, x)
		list, surprises = slices.Insert(list, i, h), slices.Insert(surprises, i, x)
	}
	var best *hypothesis
	least := math.Inf(1)
	for i := range list[:min(shortList, len(list))] {
		x, ok := p.judge(ctx, &list[i])
		if ctx.Err() != nil {
			return nil, 0, ctx.Err()
		}
		if ok && x < least {
			best, least = &list[i], x
		}
	}
	return best, least, nil
}

// judge returns the chi-square of a fit with a slip put right; false where there is
// none, or where a single reading put right still is an outlier, so that it was
// something else.
func (p *GaugeFit) judge(ctx context.Context, h *hypothesis) (float64, bool) {
	put := *p
	put.Sets = h.sets
	m, e, err := put.fitAll(ctx)
	if err != nil {
		return 0, false
	}
	chiSquare := e.ChiSquare - 2*h.stretch
	if !h.slip.single() {
		return chiSquare, true
	}
	if _, err := m.snoop(ctx, e.X); err != nil {
		return 0, false
	}
	first, _ := m.span(h.slip.Set)
	return chiSquare, m.used[first+h.slip.First]
}

// single reports whether the slip is of one reading's number.
func (s *Slip) single() bool {
	return s.Kind == DigitSlip || s.Kind == InchSlip && s.End == s.First+1
}

// filed returns the car as filed, known as well as the priors say, or as the tape alone
// has it.
func (p *GaugeFit) filed(ctx context.Context) (*FittedCar, error) {
	us := p.unknowns()
	if p.Taped != nil {
		m, e, err := p.byTape(ctx, us)
		if err != nil {
			return nil, err
		}
		f := m.fitted(&e)
		f.Sets = p.Sets
		return f, nil
	}
	return p.unread(us), nil
}

// unread returns the car as filed, known as well as the priors say.
func (p *GaugeFit) unread(us []Unknown) *FittedCar {
	f := &FittedCar{Base: p.Base, Sets: p.Sets, Unknowns: us, Values: make([]float64, len(us))}
	f.Covariance = mat.NewSymDense(len(us), nil)
	for k := range us {
		f.Covariance.SetSym(k, k, us[k].SD*us[k].SD)
	}
	return f
}

// surprise returns the chi-square of sets that differ from those of v; where only
// values do, v itself serves.
func (f *FittedCar) surprise(ctx context.Context, v *innovation, sets []ReadingSet) (float64, error) {
	off := slices.Clone(v.off)
	row := 0
	for i := range sets {
		s := &sets[i]
		for k, r := range s.Readings {
			was := v.model.sets[i].Readings[k]
			if was.Travel != r.Travel {
				moved, err := f.innovation(ctx, sets)
				if err != nil {
					return 0, err
				}
				return moved.chiSquare(moved.off), nil
			}
			off[row] += (r.Value - was.Value) / s.Repeatability
			row++
		}
	}
	return v.chiSquare(off), nil
}

// rewritten returns the sets with the readings of one of them changed.
func (p *GaugeFit) rewritten(set int, change func(i int, r *Reading)) []ReadingSet {
	out := slices.Clone(p.Sets)
	out[set].Readings = slices.Clone(out[set].Readings)
	for i := range out[set].Readings {
		change(i, &out[set].Readings[i])
	}
	return out
}
