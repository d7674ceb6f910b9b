package optimize_test

import (
	"context"
	"testing"

	"github.com/google/go-cmp/cmp"

	"toewright/optimize"
	"toewright/solver"
)

// invented parts: three spacers, two arms, two rack mounts.
func textbookShelf(t testing.TB) *optimize.Shelf {
	t.Helper()
	s := &optimize.Shelf{Judge: textbookJudge(t), Measure: optimize.RMS, Most: 100}
	part := func(name string, price float64, key string, v float64, excludes ...string) optimize.Part {
		p, sel, err := solver.FindParameter(s.Base.Design(), key)
		if err != nil {
			t.Fatal(err)
		}
		return optimize.Part{Name: name, Price: price, Changes: []solver.Change{{Parameter: p, Sides: sel, Value: v}}, Excludes: excludes}
	}
	s.Slots = []optimize.Slot{
		{Name: "spacer", Parts: []optimize.Part{part("1 mm", 4, "tieRodOuterHeight", 1), part("2 mm", 5, "tieRodOuterHeight", 2), part("3 mm", 6, "tieRodOuterHeight", 3)}},
		{Name: "arm", Parts: []optimize.Part{part("short", 90, "steeringArmLength", -8), part("long", 95, "steeringArmLength", 8, "lowered rack")}},
		{Name: "rack", Parts: []optimize.Part{part("lowered rack", 60, "tieRodInnerHeight", -2), part("shimmed rack", 12, "tieRodInnerLateral", 2)}},
	}
	s.Effects = []optimize.Effect{{Name: "changes", Of: func(x *solver.Axle) float64 { return float64(len(x.Changes())) }}}
	return s
}

func TestShelfTriesEverything(t *testing.T) {
	s := textbookShelf(t)
	n, err := s.Combinations()
	if err != nil || n != 4*3*3 {
		t.Fatalf("%d combinations, %v; want 36", n, err)
	}
	got, err := s.Try(context.Background(), optimize.Span{End: n}, optimize.Parallel{})
	if err != nil {
		t.Fatal(err)
	}
	if got.Tried != 36 || got.Built != 36-4 { // the long arm with the lowered rack, four spacers each
		t.Errorf("tried %d, built %d", got.Tried, got.Built)
	}
	for i := 1; i < len(got.Best); i++ {
		if got.Best[i-1].Figures.RMS > got.Best[i].Figures.RMS {
			t.Errorf("best %d is worse than %d", i-1, i)
		}
	}
	checkFront(t, got)
}

// endsAfter is a context that has ended once it was looked at so many times.
type endsAfter struct {
	context.Context
	looks int
}

func (c *endsAfter) Err() error {
	if c.looks--; c.looks < 0 {
		return context.Canceled
	}
	return nil
}

// TestShelfStoppedListsWhatItBuilt stops a shelf without limits at any look at the context: of what it
// built by then the best are listed.
func TestShelfStoppedListsWhatItBuilt(t *testing.T) {
	s := textbookShelf(t)
	s.Most = 10
	for looks := range 40 {
		got, err := s.Try(&endsAfter{context.Background(), looks}, optimize.Span{First: 1, End: 36}, optimize.Parallel{Workers: 1})
		if err != nil {
			t.Fatal(err)
		}
		if len(got.Best) != min(got.Built, s.Most) || len(got.Front) == 0 && got.Built > 0 {
			t.Errorf("stopped at look %d: %d best and %d undominated of %d built", looks, len(got.Best), len(got.Front), got.Built)
		}
	}
}

// checkFront holds the front against the definition, over all that was built.
func checkFront(t *testing.T, cs *optimize.Choices) {
	t.Helper()
	in := map[int]bool{}
	for _, c := range cs.Front {
		in[c.Number] = true
	}
	for i, a := range cs.Best {
		beaten := false
		for j, b := range cs.Best {
			better := b.Figures.RMS < a.Figures.RMS || b.Price < a.Price || b.Effects[0] < a.Effects[0]
			if i != j && better && b.Figures.RMS <= a.Figures.RMS && b.Price <= a.Price && b.Effects[0] <= a.Effects[0] {
				beaten = true
			}
		}
		if in[a.Number] == beaten {
			t.Errorf("combination %d: beaten %v, on the front %v", a.Number, beaten, !beaten)
		}
	}
}

// TestShelfJoins: in whatever order parts are joined, and though the arms here are
// alike in everything but their names.
func TestShelfJoins(t *testing.T) {
	s := textbookShelf(t)
	s.Slots[1].Parts[1].Changes, s.Slots[1].Parts[1].Price = s.Slots[1].Parts[0].Changes, s.Slots[1].Parts[0].Price
	all := optimize.Span{End: 36}
	whole, err := s.Try(context.Background(), all, optimize.Parallel{})
	if err != nil {
		t.Fatal(err)
	}
	joined := &optimize.Choices{}
	for _, i := range []int{3, 1, 0, 4, 2} {
		part, err := s.Try(context.Background(), all.Of(i, 5), optimize.Parallel{})
		if err != nil {
			t.Fatal(err)
		}
		joined.Join(s, part)
	}
	if diff := cmp.Diff(whole, joined); diff != "" {
		t.Errorf("parts joined differ from one run (-want +got):\n%s", diff)
	}
}

func TestShelfTooLarge(t *testing.T) {
	s := textbookShelf(t)
	for range 20 {
		s.Slots = append(s.Slots, s.Slots[0])
	}
	if _, err := s.Try(context.Background(), optimize.Span{End: 1}, optimize.Parallel{}); err == nil {
		t.Error("a shelf of 36·4²⁰ combinations was accepted")
	}
}

// BenchmarkShelf tries 10,000 combinations on one core, each through 21 positions:
// of parts that move the ends of the tie rod alone, and with ball joints among them,
// which the static position has to be solved for.
func BenchmarkShelf(b *testing.B) {
	for _, tt := range []struct{ name, other string }{{"tie rod", "tieRodInnerLateral"}, {"ball joints", "upperBallJointHeight"}} {
		b.Run(tt.name, func(b *testing.B) {
			s := &optimize.Shelf{Judge: textbookJudge(b), Most: 100}
			s.Travels, _ = solver.Grid(50, 50, 5)
			for _, key := range []string{tt.other, "tieRodOuterHeight", "tieRodInnerHeight", "steeringArmLength"} {
				s.Slots = append(s.Slots, slotOf(b, s.Base.Design(), key))
			}
			b.ReportAllocs()
			for b.Loop() {
				if c, err := s.Try(context.Background(), optimize.Span{End: 10_000}, optimize.Parallel{Workers: 1}); err != nil || c.Built != 10_000 {
					b.Fatalf("%d built, %v", c.Built, err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/10_000, "µs/combination")
		})
	}
}

// slotOf returns a slot of nine parts, 1 to 9 mm of a parameter, the dearer the
// longer.
func slotOf(t testing.TB, d *solver.Design, key string) optimize.Slot {
	t.Helper()
	p, sides, err := solver.FindParameter(d, key)
	if err != nil {
		t.Fatal(err)
	}
	out := optimize.Slot{Name: key}
	for v := 1.0; v <= 9; v++ {
		out.Parts = append(out.Parts, optimize.Part{Price: 10 * v, Changes: []solver.Change{{Parameter: p, Sides: sides, Value: v}}})
	}
	return out
}

// TestShelfLimitsSeeBothWheels: a limit may look at the right wheel though the left
// one's toe is judged. The arms of the textbook's car are alike, so that one limit
// on either holds for the same parts.
func TestShelfLimitsSeeBothWheels(t *testing.T) {
	built := map[solver.Side]int{}
	for _, side := range solver.Sides {
		s := textbookShelf(t)
		s.Effects = nil
		most := armOf(t, s, side) + 1
		s.Limits = []optimize.Limit{{Name: "arm", Max: most, Of: func(x *solver.Axle, _ *solver.Workspace) float64 { return x.SteeringArm(side) }}}
		found, err := s.Try(context.Background(), optimize.Span{End: 36}, optimize.Parallel{})
		if err != nil {
			t.Fatal(err)
		}
		built[side] = len(found.Best)
	}
	if l, r := built[solver.Left], built[solver.Right]; l != r || l == 0 || l == 32 {
		t.Errorf("%d combinations hold the limit on the left arm, %d on the right, of 32", l, r)
	}
}

// armOf returns the length of a steering arm of the base car, mm.
func armOf(t *testing.T, s *optimize.Shelf, side solver.Side) float64 {
	t.Helper()
	car, err := s.Base.Assemble(nil, s.Hold)
	if err != nil {
		t.Fatal(err)
	}
	return car.SteeringArm(side)
}
