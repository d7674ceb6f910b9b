package solver

import "math"

// Remedy is a move of balls that makes a toe curve as good as moves of that kind
// can: least squares over the travels asked for.
type Remedy struct {
	Changes []Change // in mm, beside those that the axle has
	RMS     Angle    // of the error that remains
	Peak    Angle    // its largest value, without sign
	// Rod is the length of the tie rod, of a solid axle's drag link, before and
	// after.
	Rod RodChange
	// Bound says that the parameter's usual bounds stop the move.
	Bound bool
}

// remedyKeys are the moves that are tried, alone and together: of a corner's tie
// rod and of a solid axle's drag link.
var (
	tieRodRemedies = [][]string{
		{"tieRodOuterHeight"}, {"tieRodInnerHeight"}, {"tieRodInnerLateral"},
		{"tieRodOuterHeight", "tieRodInnerLateral"}, {"tieRodInnerHeight", "tieRodInnerLateral"},
	}
	dragLinkRemedies = [][]string{
		{"dragLinkOuterHeight"}, {"dragLinkInnerHeight"}, {"dragLink.inner.y"},
		{"dragLinkOuterHeight", "dragLink.inner.y"}, {"dragLinkInnerHeight", "dragLink.inner.y"},
	}
)

// remedyKeysOf returns those of a car: of its tie rods or, on a solid axle, its drag link.
func remedyKeysOf(k *Kind) [][]string {
	if len(k.CommonPoints) > 0 {
		return dragLinkRemedies
	}
	return tieRodRemedies
}

// MendingParts returns the keys of the two parameters that between them mend most toe
// curves: the height of the outer ball, to which slope answers, and the place of the inner
// ball across the car, to which curvature does.
func MendingParts(d *Design) (height, across string) {
	both := remedyKeysOf(d.Kind)[3]
	return both[0], both[1]
}

const (
	maxRemedySteps = 30
	// remedyLimit is the last step, mm, of a remedy that has arrived: a
	// hundredth of what a shop can hold.
	remedyLimit = 1e-3
	// maxRemedyHalvings bounds how often a step that makes the curve worse is
	// halved.
	maxRemedyHalvings = 12
)

// remedySearch looks for the best values of one or two parameters by Gauss and
// Newton's method with exact derivatives.
type remedySearch struct {
	x       *Axle
	ws      *Workspace
	side    Side
	travels []float64
	target  func(float64) Angle
	moves   []Change
	out     [2]Curve
}

// moved is the axle at some values of the moves.
type moved struct {
	axle  *Axle
	error []float64 // by travel, radians
	rates [][2]float64
}

// at returns the axle with the moves at values. It returns false where it cannot be
// assembled or does not reach all travels.
func (r *remedySearch) at(values [2]float64) (moved, bool) {
	cs := append([]Change(nil), r.x.changes...)
	for k, m := range r.moves {
		m.Value = values[k]
		cs = append(cs, m)
	}
	x, err := r.x.assembler.Assemble(cs, r.x.hold)
	if err != nil {
		return moved{}, false
	}
	by, err := x.Tangents(r.moves)
	if err != nil {
		return moved{}, false
	}
	in := SweepInput{Travels: r.travels, Sides: selectionOf(r.side), By: by}
	if x.Sweep(r.ws, &in, &r.out) != nil || len(r.out[r.side].Positions) != len(r.travels) {
		return moved{}, false
	}
	return r.errors(x), true
}

// errors returns the errors and their rates of the curve at hand.
func (r *remedySearch) errors(x *Axle) moved {
	c := &r.out[r.side]
	m := moved{axle: x, error: make([]float64, len(r.travels)), rates: make([][2]float64, len(r.travels))}
	home := homeOf(c.Positions)
	for i := range c.Positions {
		p := &c.Positions[i]
		m.error[i] = float64(p.Toe - c.Positions[home].Toe - wantedAt(r.target, p.Travel))
		for k := range r.moves {
			m.rates[i][k] = c.ToeRate(i, k) - c.ToeRate(home, k)
		}
	}
	return m
}

// wantedAt returns a target's toe change; a nil target is flat.
func wantedAt(target func(float64) Angle, travel float64) Angle {
	if target == nil {
		return 0
	}
	return target(travel)
}

// find returns the remedy. It returns false where the axle itself does not reach
// all travels.
func (r *remedySearch) find() (Remedy, bool) {
	var values [2]float64
	now, ok := r.at(values)
	if !ok {
		return Remedy{}, false
	}
	for range maxRemedySteps {
		next, v, moved := r.improve(now, values)
		if !moved {
			break
		}
		size := math.Max(math.Abs(v[0]-values[0]), math.Abs(v[1]-values[1]))
		now, values = next, v
		if size <= remedyLimit {
			break
		}
	}
	return r.remedy(now, values), true
}

// improve takes one step from values, halved until the curve gets better. It
// returns false where none does.
func (r *remedySearch) improve(now moved, values [2]float64) (next moved, v [2]float64, better bool) {
	step := r.step(&now, values)
	for range maxRemedyHalvings {
		v = r.bounded(values, step)
		if v == values {
			return now, values, false
		}
		if next, ok := r.at(v); ok && meanSquare(next.error) < meanSquare(now.error) {
			return next, v, true
		}
		step[0], step[1] = step[0]/2, step[1]/2
	}
	return now, values, false
}

// remedy returns what the search has come to.
func (r *remedySearch) remedy(now moved, values [2]float64) Remedy {
	out := Remedy{RMS: Angle(math.Sqrt(meanSquare(now.error)))}
	for _, e := range now.error {
		out.Peak = Angle(math.Max(float64(out.Peak), math.Abs(e)))
	}
	for k, m := range r.moves {
		m.Value = values[k]
		out.Changes = append(out.Changes, m)
		out.Bound = out.Bound || m.Value == m.Parameter.Min || m.Value == m.Parameter.Max
	}
	out.Rod = RodChange{r.x.gearedLength(r.side), now.axle.gearedLength(r.side)}
	return out
}
