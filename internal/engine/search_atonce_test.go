package engine

import (
	"encoding/json"
	"runtime"
	"sync"
	"testing"

	"toewright/internal/study"
)

// TestSearchIsThatOfOneProcessor: a search that several processors share answers in the
// bytes of one, with limits, grids and tolerances in mind, and its progress is one.
func TestSearchIsThatOfOneProcessor(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	robust := benched()
	robust.Search.Percentile, robust.Search.Limits = 95, nil
	for name, d := range map[string]*study.Document{"rounded with limits": benched(), "six set-ups": inSixSetUps(), "percentile": robust} {
		t.Run(name, func(t *testing.T) {
			answer := func(processors int) string {
				runtime.GOMAXPROCS(processors)
				var mu sync.Mutex
				last := Progress{}
				out, err := Search(t.Context(), d, SearchOptions{Progress: func(p Progress) {
					mu.Lock()
					defer mu.Unlock()
					if p.Best.Valid() && last.Best.Valid() && last.Evaluations > 0 && p.Fraction < last.Fraction-0.5 {
						t.Errorf("the progress falls from %g to %g", last.Fraction, p.Fraction)
					}
					last = p
				}})
				if err != nil {
					t.Fatal(err)
				}
				text, err := json.Marshal(out)
				if err != nil {
					t.Fatal(err)
				}
				return string(text)
			}
			one := answer(1)
			for _, n := range []int{2, 5} {
				if got := answer(n); got != one {
					t.Errorf("%d processors answer\n%.400s, want\n%.400s", n, got, one)
				}
			}
		})
	}
}
