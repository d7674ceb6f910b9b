package optimize_test

import (
	"context"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"toewright/optimize"
)

// TestShelfHoldsLimits: combinations that break a limit are not listed, and counted
// where none is left.
func TestShelfHoldsLimits(t *testing.T) {
	s := textbookShelf(t)
	n, err := s.Combinations()
	if err != nil {
		t.Fatal(err)
	}
	all, err := s.Try(context.Background(), optimize.Span{End: n}, optimize.Parallel{})
	if err != nil {
		t.Fatal(err)
	}
	s.Limits = []optimize.Limit{{Name: "tie rod length", Min: math.Inf(-1), Max: 314, Scale: 1, Of: tieRodLength}}
	held, err := s.Try(context.Background(), optimize.Span{End: n}, optimize.Parallel{})
	if err != nil {
		t.Fatal(err)
	}
	by, of := s.Broken(context.Background(), n)
	if of != all.Built || held.Built != all.Built || len(held.Best) != all.Built-by[0] || by[0] == 0 || len(held.Best) == 0 {
		t.Errorf("%d built, %d of %d listed, %d of %d break the limit", all.Built, len(held.Best), held.Built, by[0], of)
	}
	for most := 1; most <= len(held.Best); most++ { // those judged are fewer then, the answer the same
		s.Most = most
		few, err := s.Try(context.Background(), optimize.Span{End: n}, optimize.Parallel{Workers: 2, Chunk: 5})
		if err != nil || !cmp.Equal(few.Best, held.Best[:most]) || !cmp.Equal(few.Front, held.Front) {
			t.Errorf("the best %d of the shelf are %v, %v, want %v", most, few.Best, err, held.Best[:most])
		}
	}
	s.Limits[0].Max = 1
	none, err := s.Try(context.Background(), optimize.Span{End: n}, optimize.Parallel{})
	if err != nil || none.Built != all.Built || len(none.Best)+len(none.Front) != 0 {
		t.Errorf("%+v, %v: want nothing listed", none, err)
	}
}

// TestMapLimitValues: a cell measures what a limit measures on its car.
func TestMapLimitValues(t *testing.T) {
	j := textbookJudge(t)
	m := optimize.ParameterMap{Judge: j, Columns: 3, Rows: 2,
		X: freeOf(t, j.Base, "tieRodInnerLateral", -10, 10), Y: freeOf(t, j.Base, "upperBallJoint.z", 0, 4)}
	limit := optimize.Limit{Name: "tie rod length", Min: 300, Max: math.Inf(1), Scale: 1, Of: tieRodLength}
	values, err := m.LimitValues(context.Background(), optimize.Span{End: m.Rows}, []optimize.Limit{limit, limit}, optimize.Parallel{})
	if err != nil {
		t.Fatal(err)
	}
	for col := range 3 {
		car, err := j.Base.Assemble(m.ChangesAt(col, 0), j.Hold)
		if err != nil {
			t.Fatal(err)
		}
		if want := tieRodLength(car, nil); values[0][col] != want || values[1][col] != want {
			t.Errorf("column %d: %g and %g, want %g", col, values[0][col], values[1][col], want)
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := m.LimitValues(ctx, optimize.Span{End: m.Rows}, []optimize.Limit{limit}, optimize.Parallel{}); err != context.Canceled {
		t.Errorf("cancelled: %v", err)
	}
}
