package optimize

import (
	"cmp"
	"math"
	"slices"
)

// Choice is one combination of a shelf's parts.
type Choice struct {
	Number  int // of the combination, see [Shelf.Parts]
	Price   float64
	Figures Figures
	Effects []float64
}

// Choices are the best of some of a shelf's combinations. Those of several lots
// add up to just those of all, in any order.
type Choices struct {
	// Best are the combinations of least toe change, best first; of equal ones
	// the cheapest, then the lowest number.
	Best []Choice
	// Front are the undominated ones: no other is as good in toe change, price
	// and every effect, and better in one of them; of those alike in all, the
	// lowest number. By price, then toe change.
	Front []Choice
	Tried int // combinations tried
	Built int // of them, those that go together and reach the window, whatever the limits
}

// Join adds what was found among other combinations of a shelf.
func (cs *Choices) Join(s *Shelf, other *Choices) {
	cs.Tried += other.Tried
	cs.Built += other.Built
	for i := range other.Best {
		cs.offerBest(s, &other.Best[i])
	}
	for i := range other.Front {
		cs.offerFront(s.Measure, &other.Front[i])
	}
}

// wants reports whether a choice would be entered.
func (cs *Choices) wants(s *Shelf, c *Choice) bool {
	if len(cs.Best) < s.Most || compareToe(s.Measure, c, &cs.Best[len(cs.Best)-1]) < 0 {
		return true
	}
	return !slices.ContainsFunc(cs.Front, func(f Choice) bool { return dominates(s.Measure, &f, c) })
}

// offer enters a choice of a shelf where it belongs.
func (cs *Choices) offer(s *Shelf, c *Choice) {
	cs.offerBest(s, c)
	cs.offerFront(s.Measure, c)
}

// offerBest enters a copy of a choice among the best if it is one of them.
func (cs *Choices) offerBest(s *Shelf, c *Choice) {
	at, _ := slices.BinarySearchFunc(cs.Best, c, func(a Choice, b *Choice) int { return compareToe(s.Measure, &a, b) })
	if at < s.Most {
		cs.Best = slices.Insert(cs.Best, at, c.clone())
		cs.Best = cs.Best[:min(len(cs.Best), s.Most)]
	}
}

// offerFront adds a copy of a choice to the front unless a member dominates it,
// and removes the members that it dominates.
func (cs *Choices) offerFront(m Measure, c *Choice) {
	for i := range cs.Front {
		if dominates(m, &cs.Front[i], c) {
			return
		}
	}
	cs.Front = slices.DeleteFunc(cs.Front, func(f Choice) bool { return dominates(m, c, &f) })
	at, _ := slices.BinarySearchFunc(cs.Front, c, func(a Choice, b *Choice) int {
		return cmp.Or(cmp.Compare(a.Price, b.Price), compareToe(m, &a, b))
	})
	cs.Front = slices.Insert(cs.Front, at, c.clone())
}

// clone returns a copy that keeps its effects.
func (c *Choice) clone() Choice {
	out := *c
	out.Effects = slices.Clone(c.Effects)
	return out
}

// compareToe orders by toe change, then by price, then by number.
func compareToe(m Measure, a, b *Choice) int {
	return cmp.Or(
		cmp.Compare(a.Figures.Of(m), b.Figures.Of(m)),
		cmp.Compare(a.Price, b.Price),
		cmp.Compare(a.Number, b.Number),
	)
}

// dominates reports whether a is at least as good as b in everything, and better
// in something or of lower number.
func dominates(m Measure, a, b *Choice) bool {
	if !(a.Figures.Of(m) <= b.Figures.Of(m) && a.Price <= b.Price) {
		return false
	}
	better := a.Figures.Of(m) < b.Figures.Of(m) || a.Price < b.Price
	for i := range a.Effects {
		x, y := worst(a.Effects[i]), worst(b.Effects[i])
		if !(x <= y) {
			return false
		}
		better = better || x < y
	}
	return better || a.Number < b.Number
}

// worst counts a value that is not a number as infinitely bad.
func worst(x float64) float64 {
	if math.IsNaN(x) {
		return math.Inf(1)
	}
	return x
}
