package solver

import "math"

const (
	// rimLimit is the error allowed in a clearance, mm: far below what anyone
	// can measure.
	rimLimit = 1e-4
	// clearancePieces is the number of pieces that a segment is cut into first,
	// and clearanceDepth how often each may be halved again.
	clearancePieces, clearanceDepth = 16, 40
)

// leastClearance returns the least value, within [rimLimit], of a distance f of
// the points of a segment of the given length, u running from 0 to 1 along it. No
// distance changes faster than the point moves, so that a piece whose ends are far
// enough away need not be looked into.
func leastClearance(f func(u float64) float64, length float64) float64 {
	least := f(0)
	if length == 0 { // a ball
		return least
	}
	p := piece{fHi: least}
	for k := range clearancePieces {
		hi := float64(k+1) / clearancePieces
		p = piece{p.hi, hi, p.fHi, f(hi)}
		least = p.least(f, length, math.Min(least, p.fHi), clearanceDepth)
	}
	return least
}

// piece is a part of a segment with the distances of its ends.
type piece struct{ lo, hi, fLo, fHi float64 }

// least returns the lesser of the least value found so far and that of the piece.
func (p piece) least(f func(float64) float64, length, found float64, depth int) float64 {
	bound := (p.fLo + p.fHi - (p.hi-p.lo)*length) / 2
	if !(bound < found-rimLimit) || depth == 0 {
		return found
	}
	mid := (p.lo + p.hi) / 2
	fMid := f(mid)
	found = math.Min(found, fMid)
	found = piece{p.lo, mid, p.fLo, fMid}.least(f, length, found, depth-1)
	return piece{mid, p.hi, fMid, p.fHi}.least(f, length, found, depth-1)
}
