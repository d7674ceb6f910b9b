package shards

import (
	"fmt"

	"toewright/optimize"
)

// counts are those of a tally: pairs of how many bins beyond the one before, the
// first from bin 0, and how many values.
type counts []int

// countsOf returns the counts of a tally.
func countsOf(t *optimize.Tally) counts {
	out, last := counts{}, 0
	for bin, n := range t.Counts() {
		out = append(out, bin-last, n)
		last = bin
	}
	return out
}

// maxStep is more bins than any tally has.
const maxStep = 1 << 24

// putInto adds the counts to a tally. They must ascend and be so many in all.
func (c counts) putInto(t *optimize.Tally, total int) error {
	if len(c)%2 != 0 {
		return fmt.Errorf("ends within a pair")
	}
	bin := 0
	for i := 0; i < len(c); i += 2 {
		if step := c[i]; step > maxStep || step < -maxStep || i > 0 && step < 1 {
			return fmt.Errorf("goes %d bins on, want 1 or more", step)
		}
		bin += c[i]
		if err := t.Put(bin, c[i+1]); err != nil {
			return err
		}
	}
	if t.Total() != total {
		return fmt.Errorf("counts %d cars, want the %d built", t.Total(), total)
	}
	return nil
}
