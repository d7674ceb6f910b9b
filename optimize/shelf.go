package optimize

import (
	"context"
	"math"
	"slices"

	"toewright/solver"
)

// Part is something that can be bought and fitted.
type Part struct {
	Name     string
	Price    float64 // in the user's currency
	Changes  []solver.Change
	Excludes []string // names of parts of other slots that do not go with it
}

// Slot is a place on the car that takes one part or stays as it is.
type Slot struct {
	Name  string
	Parts []Part
}

// Effect is something else that a choice of parts changes, to be kept small: the
// larger its value, the worse.
type Effect struct {
	Name string
	// Of returns the effect's value for a car; NaN counts as worst.
	Of func(*solver.Axle) float64
}

// Shelf asks for the best of all combinations of parts.
type Shelf struct {
	Judge
	Measure Measure
	Slots   []Slot
	Effects []Effect // beside toe change and price
}

// Choice is one combination of parts.
type Choice struct {
	// Parts has, for each slot, the part's place in it, or -1 for none.
	Parts   []int
	Price   float64
	Figures Figures
	Effects []float64
}

// maxCombinations bounds a shelf.
const maxCombinations = 20_000_000

// Combinations returns the number of combinations, every slot with the choice of
// leaving it as it is, and an error where there are more than can be tried.
func (s *Shelf) Combinations() (int, error) {
	n := 1
	for _, slot := range s.Slots {
		if n *= len(slot.Parts) + 1; n > maxCombinations {
			return 0, problemErrorf("the catalogue has more than %d combinations; leave out parts or slots", maxCombinations)
		}
	}
	return n, nil
}

// Choices are the best of a run of combinations.
type Choices struct {
	// Best are the combinations of least toe change, best first.
	Best []Choice
	// Front are the undominated ones: no other is as good in toe change, price
	// and every effect, and better in one of them. By price, then toe change.
	Front []Choice
	Tried int // combinations tried
	Built int // of them, those that do not exclude each other and reach the window
}

// KeepBest is the number of combinations that Choices.Best holds at most.
const KeepBest = 100

// Try tries the combinations from first up to end. A cancelled context ends it
// early with the best so far.
func (s *Shelf) Try(ctx context.Context, first, end int) (*Choices, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	if _, err := s.Combinations(); err != nil {
		return nil, err
	}
	out := &Choices{}
	b := s.bench()
	var changes []solver.Change
	for n := first; n < end; n++ {
		if n%cancelEvery == 0 && ctx.Err() != nil {
			break
		}
		out.Tried++
		c := Choice{Parts: s.parts(n)}
		if s.excluded(c.Parts) {
			continue
		}
		changes = s.gather(changes[:0], &c)
		car, f := b.judge(changes)
		if car == nil {
			continue
		}
		out.Built++
		c.Figures = f
		for _, e := range s.Effects {
			c.Effects = append(c.Effects, e.Of(car))
		}
		out.offer(s.Measure, c)
	}
	return out, nil
}

// parts returns the combination of number n: a number whose digits are the slots'
// choices, 0 for none.
func (s *Shelf) parts(n int) []int {
	ps := make([]int, len(s.Slots))
	for i := range s.Slots {
		base := len(s.Slots[i].Parts) + 1
		ps[i] = n%base - 1
		n /= base
	}
	return ps
}

// excluded reports whether two parts of a combination do not go together.
func (s *Shelf) excluded(parts []int) bool {
	for i, p := range parts {
		if p < 0 || len(s.Slots[i].Parts[p].Excludes) == 0 {
			continue
		}
		for j, q := range parts {
			if j != i && q >= 0 && slices.Contains(s.Slots[i].Parts[p].Excludes, s.Slots[j].Parts[q].Name) {
				return true
			}
		}
	}
	return false
}

// gather appends the changes of a combination and sets its price.
func (s *Shelf) gather(changes []solver.Change, c *Choice) []solver.Change {
	for i, p := range c.Parts {
		if p >= 0 {
			changes = append(changes, s.Slots[i].Parts[p].Changes...)
			c.Price += s.Slots[i].Parts[p].Price
		}
	}
	return changes
}

// offer enters a choice where it belongs.
func (cs *Choices) offer(m Measure, c Choice) {
	cs.Front = offerFront(cs.Front, m, c)
	at, _ := slices.BinarySearchFunc(cs.Best, c, func(a, b Choice) int { return compareChoices(m, a, b) })
	if at < KeepBest {
		cs.Best = slices.Insert(cs.Best, at, c)
		cs.Best = cs.Best[:min(len(cs.Best), KeepBest)]
	}
}

// compareChoices orders by toe change, then by price, then by parts.
func compareChoices(m Measure, a, b Choice) int {
	for _, d := range [2]float64{float64(a.Figures.Of(m) - b.Figures.Of(m)), a.Price - b.Price} {
		if d < 0 {
			return -1
		}
		if d > 0 {
			return 1
		}
	}
	return slices.Compare(a.Parts, b.Parts)
}

// offerFront adds c to a front unless a member is at least as good in everything,
// and removes the members that c betters.
func offerFront(front []Choice, m Measure, c Choice) []Choice {
	for i := range front {
		if dominates(m, &front[i], &c) {
			return front
		}
	}
	front = slices.DeleteFunc(front, func(f Choice) bool { return dominates(m, &c, &f) })
	at, _ := slices.BinarySearchFunc(front, c, comparePrices(m))
	return slices.Insert(front, at, c)
}

func comparePrices(m Measure) func(a, b Choice) int {
	return func(a, b Choice) int {
		if a.Price != b.Price {
			if a.Price < b.Price {
				return -1
			}
			return 1
		}
		return compareChoices(m, a, b)
	}
}

// dominates reports whether a is at least as good as b in everything. Of two that
// are alike in everything the one that was there first stays.
func dominates(m Measure, a, b *Choice) bool {
	if !(a.Figures.Of(m) <= b.Figures.Of(m) && a.Price <= b.Price) {
		return false
	}
	for i := range a.Effects {
		if !(worst(a.Effects[i]) <= worst(b.Effects[i])) {
			return false
		}
	}
	return true
}

// worst counts a value that is no number as infinitely bad.
func worst(x float64) float64 {
	if math.IsNaN(x) {
		return math.Inf(1)
	}
	return x
}

// Join adds what another run of combinations found.
func (cs *Choices) Join(m Measure, other *Choices) {
	cs.Tried += other.Tried
	cs.Built += other.Built
	best := append(cs.Best, other.Best...)
	slices.SortStableFunc(best, func(a, b Choice) int { return compareChoices(m, a, b) })
	cs.Best = best[:min(len(best), KeepBest)]
	for _, c := range other.Front {
		cs.Front = offerFront(cs.Front, m, c)
	}
}
