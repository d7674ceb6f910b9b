package solver

import "fmt"

// CheckOnce returns an [*InputError] where two entries of one list are of one parameter
// and share a wheel: a key stands twice, or plain, which is both sides', and with a side.
// Entry returns the parameter and sides of each of n entries.
func CheckOnce(n int, entry func(i int) (*Parameter, Selection)) error {
	for i := range n {
		p, a := entry(i)
		for j := range i {
			q, b := entry(j)
			if p.Key != q.Key || !a.Overlaps(b) {
				continue
			}
			if a == b {
				return &InputError{p.Key + a.Suffix(), "is given twice; give it once"}
			}
			return &InputError{p.Key, fmt.Sprintf("is given both plain, which is of both sides, and as %s; give it for each side by itself, or once", p.Key+max(a, b).Suffix())}
		}
	}
	return nil
}
