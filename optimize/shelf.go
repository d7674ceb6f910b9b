package optimize

import (
	"slices"

	"toewright/optimize/nlp"
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
	Most    int      // of the best combinations are kept, at least 1
	Effects []Effect // beside toe change and price
	Limits  []Limit  // that every combination listed holds
	// SetUps are the set-ups in which it holds them, the car as it is judged where there
	// are none.
	SetUps []Scenario
}

// Check returns an error that says what the shelf lacks.
func (s *Shelf) Check() error {
	if s.Most < 1 {
		return nlp.ProblemErrorf("%d of the best combinations, want 1 or more", s.Most)
	}
	return s.Judge.Check()
}

// maxCombinations bounds a shelf: days of work, so that it is a mistake.
const maxCombinations = 20_000_000_000

// Combinations returns the number of combinations, every slot with the choice of
// leaving it as it is, and an error where there are more than can be tried.
func (s *Shelf) Combinations() (int, error) {
	n := 1
	for _, slot := range s.Slots {
		if n > maxCombinations/(len(slot.Parts)+1) {
			return 0, nlp.ProblemErrorf("the catalogue has more than %d combinations; leave out parts or slots", maxCombinations)
		}
		n *= len(slot.Parts) + 1
	}
	return n, nil
}

// Parts returns the combination of a number, 0 up to Combinations: for each slot
// the part's place in it, or -1 for none. Slots are the digits of the number.
func (s *Shelf) Parts(number int) []int { return s.parts(nil, number) }

// parts appends the combination of a number to ps.
func (s *Shelf) parts(ps []int, number int) []int {
	for i := range s.Slots {
		base := len(s.Slots[i].Parts) + 1
		ps = append(ps, number%base-1)
		number /= base
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

// price returns what a combination costs.
func (s *Shelf) price(parts []int) float64 {
	sum := 0.0
	for i, p := range parts {
		if p >= 0 {
			sum += s.Slots[i].Parts[p].Price
		}
	}
	return sum
}

// changedAlike reports whether every part is fitted to both sides.
func (s *Shelf) changedAlike() bool {
	for _, slot := range s.Slots {
		for i := range slot.Parts {
			if !changedAlike(slot.Parts[i].Changes) {
				return false
			}
		}
	}
	return true
}

// gather appends the changes of a combination.
func (s *Shelf) gather(changes []solver.Change, parts []int) []solver.Change {
	for i, p := range parts {
		if p >= 0 {
			changes = append(changes, s.Slots[i].Parts[p].Changes...)
		}
	}
	return changes
}
