package optimize_test

import (
	"context"
	"math"
	"reflect"
	"runtime"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

// TestSearchIsThatOfOneProcessor: searches that several processors share end where those of
// one do, to the last bit, and count as many evaluations.
func TestSearchIsThatOfOneProcessor(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	length := optimize.Limit{Name: "length", Min: math.Inf(-1), Max: 0.3, Scale: 0.1,
		Of: func(car *solver.Axle, _ *solver.Workspace) float64 { return 0.25 }}
	for name, p := range map[string]*optimize.ToeSearch{"free": limitedSearch(t), "limited": limitedSearch(t, length)} {
		on := func(processors int) *optimize.ToeAnswer {
			runtime.GOMAXPROCS(processors)
			a, err := optimize.SearchToe(context.Background(), p, &optimize.Settings{Seed: 3})
			if err != nil {
				t.Fatal(name, err)
			}
			a.Cars = 0 // those that the run itself has assembled
			return a
		}
		want := on(1)
		for _, n := range []int{2, 3, 8} {
			if got := on(n); !reflect.DeepEqual(got, want) {
				t.Errorf("%s: %d processors find\n%+v, want\n%+v", name, n, got, want)
			}
		}
	}
}
