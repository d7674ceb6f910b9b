package referee

import (
	"context"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

// margin is by how much, degrees, a rival may end below ours: rounding.
const margin = 1e-6

// judge fails where one of gonum's methods ends below ours.
func judge(t testing.TB, p *Problem, starts int) {
	a, err := optimize.SearchToe(context.Background(), p.Search, nil)
	if err != nil {
		t.Fatal(err)
	}
	ours := solver.Angle(a.Result.Value).Degrees()
	for i, m := range Methods {
		theirs, cars := p.Least(i, starts, 1)
		if got := solver.Angle(theirs).Degrees(); got < ours-margin {
			t.Errorf("%s: %s ends at %.7f deg after %d cars, ours at %.7f after %d", p.Name, m.Name, got, cars, ours, a.Result.Evaluations)
		}
	}
}

// TestNoneEndsBelowOurs holds a few problems against gonum's methods; the benchmark
// holds all.
func TestNoneEndsBelowOurs(t *testing.T) {
	problems, err := Problems("../../testdata/studies")
	if err != nil {
		t.Fatal(err)
	}
	if len(problems) < 30 {
		t.Errorf("%d problems, want 30 at least", len(problems))
	}
	for i := range problems {
		if i%5 == 1 {
			judge(t, &problems[i], 2)
		}
	}
}

// BenchmarkReferee holds every problem against gonum's methods from many starts.
func BenchmarkReferee(b *testing.B) {
	problems, err := Problems("../../testdata/studies")
	if err != nil {
		b.Fatal(err)
	}
	for i := range problems {
		p := &problems[i]
		b.Run(p.Name, func(b *testing.B) {
			for b.Loop() {
				judge(b, p, 8)
			}
		})
	}
}
