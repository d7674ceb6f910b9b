package nlp

import (
	"math"
	"slices"
)

const (
	// firstRadius and maxRadius of the trust region, in the unit box.
	firstRadius, maxRadius = 0.5, 1.0
	// minRadius is where a trust region has shrunk to nothing.
	minRadius = 1e-13
	// acceptRatio of actual to predicted reduction lets a step count; below
	// poorRatio the region shrinks, above goodRatio it may grow. Customary.
	acceptRatio, poorRatio, goodRatio = 1e-4, 0.25, 0.75
	// shrink and grow are the factors of the radius, of the step just made.
	shrink, grow = 0.3, 3.0
	// tailRadius keeps the radius within this multiple of the last step, so
	// that the accuracy of the program, relative to its radius, follows the
	// steps down.
	// Steps that count make it no smaller than endRadius.
	tailRadius, endRadius = 10, 1e-9
	// reductionTolerance is the predicted relative reduction of the merit below
	// which a step that is free to go further ends the polish. By then the
	// objective is right to about 1e-12.
	reductionTolerance = 1e-12
	// roundingTolerance is the predicted relative reduction below which a step
	// that fails is laid to rounding in the model: residuals solved to 1e-12 of
	// their size or better.
	roundingTolerance = 1e-10
	// confirmRadius is where a polish that seems to have ended solves once more:
	// so small a program resolves steps that the last one lost to rounding.
	confirmRadius = 1e-6
	// zeroTolerance is the fraction of the starting value that counts as zero.
	zeroTolerance = 1e-11
	// limitTolerance is by how much a limit may be broken, as a fraction of its
	// change over the whole range of the variables.
	limitTolerance = 1e-9
	// freeStep is the largest part of the radius that a step may use and still
	// be called free to go further.
	freeStep = 0.99
)

// local is the outcome of one polish.
type local struct {
	u         []float64
	began     float64 // objective where the polish began
	value     float64 // objective
	violation float64 // largest broken limit, 0 where all are held
	broken    bool    // whether a limit is broken beyond its tolerance
	status    Status
}

// polisher improves points, one after the other, until each is a local minimum.
type polisher struct {
	box        *unitBox
	scale      *scale
	step       *stepper
	now, trial *point
	spare      *point // of a trial that is corrected
	best       local  // on the way of the polish, its start included
	radius     float64
	iterations int    // allowed
	report     func() // called once in each iteration
}

func newPolisher(box *unitBox, s *scale, iterations int, report func()) *polisher {
	size := box.model.Size()
	return &polisher{
		box: box, scale: s, step: newStepper(newForm(s), size),
		now: newPoint(size), trial: newPoint(size), spare: newPoint(size),
		iterations: iterations, report: report,
	}
}

// run improves u and returns where that ended. It returns false where the model
// cannot be evaluated at u.
func (p *polisher) run(u []float64) (local, bool) {
	p.step.reset()
	p.radius = firstRadius
	copy(p.now.u, u)
	if !p.box.evaluate(p.now) {
		return local{}, false
	}
	p.best = p.here()
	p.best.u = slices.Clone(p.best.u)
	began := p.best.value
	l := p.outcome(p.iterate(began))
	l.began = began
	return l, true
}

// iterate makes steps until one of the reasons to stop holds. The objective was
// began at the first point.
func (p *polisher) iterate(began float64) Status {
	zero := zeroTolerance * began
	for range p.iterations {
		if s := p.box.stopped(); s != NotRun {
			return s
		}
		p.report()
		if p.scale.value(p.now.values.R) <= zero && !p.broken() {
			return Converged
		}
		predicted := p.step.solve(p.now, p.radius)
		length := distance(p.step.target, p.now.u)
		if p.settled(predicted, length) {
			if p.radius <= confirmRadius {
				return Converged
			}
			p.radius = confirmRadius
			continue
		}
		doubtful := p.within(roundingTolerance, predicted, length)
		moved := p.try(predicted, length)
		switch {
		case !moved && doubtful:
			return Converged
		case p.radius < minRadius:
			return Stalled
		}
	}
	return IterationLimit
}

// settled reports whether a step that could have gone further predicts nothing.
func (p *polisher) settled(predicted, length float64) bool {
	return length == 0 || p.within(reductionTolerance, predicted, length)
}

// within reports whether a step that could have gone further predicts no more
// than a fraction of the merit.
func (p *polisher) within(fraction, predicted, length float64) bool {
	return predicted <= fraction*p.step.merit(&p.now.values) && length < freeStep*p.radius
}

// try evaluates the step, moves there if it gains enough of what was predicted, and
// sets the next radius. It reports whether it moved.
func (p *polisher) try(predicted, length float64) bool {
	copy(p.trial.u, p.step.target)
	if !p.box.evaluate(p.trial) {
		p.radius = shrink * length
		return false
	}
	ratio := p.gain() / predicted
	p.step.updateHessian(p.now, p.trial)
	if !(ratio > acceptRatio) && p.correct() {
		ratio = p.gain() / predicted
		length = distance(p.trial.u, p.now.u)
	}
	switch {
	case !(ratio >= poorRatio):
		p.radius = shrink * length
	case ratio > goodRatio && length > freeStep*p.radius:
		p.radius = math.Min(grow*p.radius, maxRadius)
	default:
		p.radius = math.Min(p.radius, math.Max(tailRadius*length, endRadius))
	}
	if !(ratio > acceptRatio) {
		return false
	}
	p.now, p.trial = p.trial, p.now
	p.keep()
	return true
}

// gain is by how much the trial is better than the point now reached.
func (p *polisher) gain() float64 {
	return p.step.merit(&p.now.values) - p.step.merit(&p.trial.values)
}

// correct moves a trial that limits which bend have spoilt to where they would hold (the
// second-order correction of Fletcher, Practical Methods of Optimization, 2nd ed., section
// 14.4; from memory): along a bent limit a step on its tangent gains nothing, however near
// the minimum (Maratos 1978). It returns false where there is no better trial.
func (p *polisher) correct() bool {
	if !p.step.correct(p.now, p.trial, p.radius) {
		return false
	}
	copy(p.spare.u, p.step.target)
	if !p.box.evaluate(p.spare) || !(p.step.merit(&p.spare.values) < p.step.merit(&p.trial.values)) {
		return false
	}
	p.trial, p.spare = p.spare, p.trial
	return true
}

// here describes the point now reached, in memory of the polisher.
func (p *polisher) here() local {
	return local{
		u:         p.now.u,
		value:     p.scale.value(p.now.values.R),
		violation: p.now.values.violation(),
		broken:    p.broken(),
	}
}

// keep remembers the point now reached if it is the best so far.
func (p *polisher) keep() {
	if l := p.here(); better(l, p.best) < 0 {
		l.u = append(p.best.u[:0], l.u...)
		p.best = l
	}
}

// outcome describes where a polish ended: at a minimum that holds the limits, else at
// the best point on the way. The merit that steps reduce may let a limit be broken for
// a while, or for good where none holds it, so that the last point may be worse than
// the first.
func (p *polisher) outcome(s Status) local {
	l := p.here()
	if (s != Converged || l.broken) && better(p.best, l) < 0 {
		l = p.best
		if s == Converged {
			s = Stalled
		}
	}
	if l.status = s; l.broken && (s == Converged || s == Stalled) {
		l.status = Infeasible
	}
	l.u = slices.Clone(l.u)
	return l
}

// broken reports whether a limit is broken beyond its tolerance.
func (p *polisher) broken() bool {
	v := &p.now.values
	for k, g := range v.G {
		if g > limitTolerance*largest(v.JG, k) {
			return true
		}
	}
	return false
}

// distance returns the largest difference of two points.
func distance(a, b []float64) float64 {
	top := 0.0
	for i, v := range a {
		top = math.Max(top, math.Abs(v-b[i]))
	}
	return top
}
