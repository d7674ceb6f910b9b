package ui

import (
	"math"
	"testing"
	"time"
)

// TestPaceDoesNotJump watches jobs that go faster and faster, or slower and slower: no time
// is told before a tenth is done, and from one look to the next the time that is told moves
// by a fraction of itself.
func TestPaceDoesNotJump(t *testing.T) {
	for _, whole := range []time.Duration{2 * time.Second, 40 * time.Second, 18 * time.Minute} {
		for _, power := range []float64{0.4, 1, 3} {
			var p pace
			told := 0
			last := time.Duration(-1)
			for at := progressTime; at <= whole; at += progressTime {
				done := math.Pow(float64(at)/float64(whole), power)
				p.look(done, at)
				left, ok := p.left()
				if ok != (done >= guessFrom) {
					t.Fatalf("%s, power %g: at %.2f of it a time is told: %t", whole, power, done, ok)
				}
				if !ok {
					continue
				}
				told++
				if moved := left - last; last >= 0 && (moved > last/10+progressTime || -moved > last/4+2*progressTime) {
					t.Fatalf("%s, power %g: at %.2f of it the time left goes from %s to %s", whole, power, done, last, left)
				}
				last = left
			}
			if told == 0 {
				t.Errorf("%s, power %g: no time is ever told", whole, power)
			}
			if power == 1 && last > time.Second {
				t.Errorf("%s: at the end %s are left", whole, last)
			}
		}
	}
}
