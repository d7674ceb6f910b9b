package solver

import "math"

// staticMemo remembers solved static positions of units by the changes that bear on
// them. Where static toe is held the rods that set it take what length they must, so
// that their balls do not: the combinations of a catalogue or the cells of a map that
// differ in nothing else share one solution, which is the very one that each would
// find by itself.
type staticMemo [memoSize]struct {
	key memoKey
	q   state
}

// Sizes of a memo: more positions than a catalogue has of one kind of part or a map
// columns, and more changes than bear on one.
const (
	memoBits    = 8
	memoSize    = 1 << memoBits
	memoChanges = 4
	// memoFrom is the number of positions from which on they are remembered: a memo is
	// larger than all else that a single car needs.
	memoFrom = 16
)

// memoKey is what a unit's static position follows from, beside the design.
type memoKey struct {
	valid   bool
	unit    int
	hold    Hold // and what the changes set, be it of the other side
	n       int  // changes in use
	changes [memoChanges]memoChange
}

type memoChange struct {
	key   string
	sides Selection
	value float64
}

// keyOf returns the key of unit i with the changes of w; not valid where it has
// none: for a car whose toe floats, and more changes than it can hold.
func (w *staticWork) keyOf(i int, hold Hold) memoKey {
	k := memoKey{unit: i, hold: w.held(hold, w.cs)}
	if w.rods != nil || hold&HoldToe == 0 {
		return k
	}
	for _, c := range w.cs {
		if e := w.assembler.units[i].extentOf(c.Change, hold); e == nothing || e == freeParts {
			continue
		}
		if k.n == memoChanges {
			return k
		}
		k.changes[k.n] = memoChange{c.Parameter.Key, c.Sides, c.Value}
		k.n++
	}
	k.valid = true
	return k
}

// slot returns the place of a key in a memo.
func (k *memoKey) slot() uint64 {
	h := uint64(k.unit)
	for i := range k.n {
		h = (h ^ math.Float64bits(k.changes[i].value)) * 0x9e3779b97f4a7c15 // 2⁶⁴ over the golden ratio: spreads bits upward
	}
	return h >> (64 - memoBits)
}

// solve returns the unknowns of the path that was prepared for unit i, remembered
// or found, and leaves the points in that position; lu are those of [staticWork.near].
func (w *staticWork) solve(i int, hold Hold, lu *factors) (state, error) {
	k := w.keyOf(i, hold)
	if w.memo == nil && w.solved >= memoFrom {
		w.memo = new(staticMemo)
	}
	w.solved++
	k.valid = k.valid && w.memo != nil
	if k.valid {
		if known := &w.memo[k.slot()]; known.key == k {
			w.path.put(&known.q, constant(1))
			return known.q, nil
		}
	}
	q, err := w.path.solve(&w.tracer, lu)
	if err != nil {
		return q, err
	}
	if q != (state{}) { // else the points are placed already
		w.path.put(&q, constant(1))
	}
	if k.valid {
		known := &w.memo[k.slot()]
		known.key, known.q = k, q
	}
	return q, nil
}
