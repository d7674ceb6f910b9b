package engine

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"toewright/internal/study"
	"toewright/solver"
)

// liveStudies are the templates of every suspension and gear, each as it is, in the other
// unit of length, with a window of the search of its own, and with each kind of target.
func liveStudies(t *testing.T) map[string]*study.Document {
	t.Helper()
	list := map[string]*study.Document{}
	for _, template := range study.Templates() {
		put := func(name string, change func(*study.Document)) {
			d := template.Document()
			if d.Search == nil {
				d.Search = &study.Search{}
			}
			change(d)
			list[template.Key+", "+name] = d
		}
		put("as it is", func(*study.Document) {})
		put("one window", func(d *study.Document) { d.Search.Window = nil })
		put("odd windows", func(d *study.Document) {
			w := d.Window()
			d.Travel = &study.Travel{Bump: w.Bump, Droop: 0.9 * w.Droop, Step: 0.37 * w.Step}
			d.Search.Window = &study.Travel{Bump: 0.5 * w.Bump, Droop: 0, Step: 0.4 * w.Step}
		})
		put("a slope wanted", func(d *study.Document) {
			d.Search.Target, d.Search.TargetRight, d.Search.TargetOf, d.Search.TargetSlope = nil, nil, "", 0.01
		})
		put("a car's curve wanted", func(d *study.Document) {
			d.Search.Target, d.Search.TargetRight, d.Search.TargetSlope = nil, nil, 0
			d.Search.TargetOf = d.Candidates[len(d.Candidates)-1].Name
		})
	}
	return list
}

// TestLiveIsCompare: what a page shows of a car's toe is to the last bit what the other
// doors say of it.
func TestLiveIsCompare(t *testing.T) {
	for name, d := range liveStudies(t) {
		t.Run(name, func(t *testing.T) {
			want, err := Compare(t.Context(), d, CompareOptions{})
			if err != nil {
				t.Fatal(err)
			}
			live := NewLive(d)
			if live.Err != nil {
				t.Fatal(live.Err)
			}
			if n := len(live.List); n != 1+len(d.Candidates) {
				t.Fatalf("%d cars, want the base car and %d candidates", n, len(d.Candidates))
			}
			for i := range want.Cars {
				w, car := &want.Cars[i], live.List[i/2]
				got := w.Figures
				live.judge.toeFigures(&car.Figures[i%2], &got)
				if diff := cmp.Diff(w.Figures, got, cmp.Comparer(sameNumber)); w.Candidate != car.Name || diff != "" {
					t.Errorf("%s side of %q, here %q: the figures differ: %s", w.Side, w.Candidate, car.Name, diff)
				}
				rest := live.judge.position(car.Rest(solver.Side(i % 2)))
				if w.StaticToe != Number(rest.Toe) || w.StaticCaster != rest.Caster || w.ScrubRadius != rest.ScrubRadius || w.RollCentre != rest.RollCentreHeight {
					t.Errorf("%s side of %q: at rest %+v, want %+v", w.Side, w.Candidate, rest, w.Figures)
				}
			}
		})
	}
}

// TestLiveFollows holds the cars after edits of candidates, of which those left alone are
// not solved again, against all cars solved anew.
func TestLiveFollows(t *testing.T) {
	lower := study.Changes{"tieRodOuterHeight": -6}
	impossible := study.Changes{"tieRodLength": -300}
	for _, of := range []string{"", study.BaseName, "a", "gone"} {
		d := study.Template{Key: "strut-rack"}.Document()
		d.Search, d.Candidates = &study.Search{TargetOf: of, Window: &study.Travel{Bump: 20, Droop: 20, Step: 4}}, nil
		live := NewLive(d)
		for step, list := range [][]study.Candidate{
			{{Name: "a", Changes: lower}},
			{{Name: "a", Changes: study.Changes{"tieRodOuterHeight": -9}}, {Name: "b", Changes: lower}},
			{{Name: "b", Changes: lower}, {Name: "a", Changes: study.Changes{"tieRodOuterHeight": -9}}},
			{{Name: "b", Changes: impossible}, {Name: "a", Changes: lower, Hidden: true}, {Name: "c", Changes: lower, Hold: []string{}}},
			{{Name: "c", Changes: lower, Hold: []string{}}, {Name: "d", Changes: lower}, {Name: "b", Changes: lower}},
			{{Name: "b", Changes: study.Changes{"noSuchPart": 1}}, {Name: "a", Changes: lower}},
			{},
			{{Name: "a", Changes: impossible}, {Name: "b", Changes: lower}},
		} {
			next := *d
			next.Candidates = list
			live.Follow(&next)
			checkLive(t, of, step, live, NewLive(&next))
		}
	}
}

func checkLive(t *testing.T, of string, step int, got, want *Live) {
	t.Helper()
	if len(got.List) != len(want.List) {
		t.Fatalf("target of %q, step %d: %d cars, want %d", of, step, len(got.List), len(want.List))
	}
	for i, w := range want.List {
		g := got.List[i]
		opts := cmp.Options{cmpopts.EquateEmpty(), cmpopts.EquateNaNs(), cmp.Comparer(sameAngle), cmpopts.IgnoreUnexported(LiveCar{}, solver.Curve{}), cmpopts.IgnoreFields(LiveCar{}, "Err", "Axle")}
		if diff := cmp.Diff(w, g, opts); diff != "" {
			t.Errorf("target of %q, step %d, car %d differs from that solved anew: %s", of, step, i, diff)
		}
		if (w.Err == nil) != (g.Err == nil) || w.Err != nil && w.Err.Error() != g.Err.Error() || (g.Axle == nil) != (g.Err != nil) {
			t.Errorf("target of %q, step %d, car %d: error %v and axle %v, want %v", of, step, i, g.Err, g.Axle != nil, w.Err)
		}
		if g.Err != nil && !math.IsNaN(g.Figures[0].RMS.Radians()) {
			t.Errorf("target of %q, step %d: a car that cannot be solved has an RMS of %v", of, step, g.Figures[0].RMS)
		}
	}
}

// TestLiveSolution: a car has another solution when it was solved again, and only then.
func TestLiveSolution(t *testing.T) {
	d, drag := dragOf(t, "double-wishbone-rack")
	live := NewLive(d)
	base, moved, left := live.List[0].Solution(), live.List[1].Solution(), live.List[2].Solution()
	live.Follow(drag[0])
	switch {
	case live.List[0].Solution() != base || live.List[2].Solution() != left:
		t.Error("a car that stands as it stood was solved again")
	case live.List[1].Solution() == moved:
		t.Error("a car that was solved again passes for the one before")
	case NewLive(d).List[0].Solution() == base:
		t.Error("a car of another study passes for one of this")
	}
}

// dragOf returns the study of a template, with two candidates, and two frames of a drag of
// the first.
func dragOf(t testing.TB, key string) (d *study.Document, frames [2]*study.Document) {
	t.Helper()
	d = study.Template{Key: key}.Document()
	part := "tieRodOuterHeight"
	if d.Suspension.Common != nil {
		part = "dragLinkLength"
	}
	for i, by := range []float64{-1, -2, -3} {
		next := *d
		next.Candidates = []study.Candidate{{Name: "moved", Changes: study.Changes{part: by, "toe": 0.1}}, {Name: "left", Changes: study.Changes{}}}
		if i == 2 {
			d = &next
		} else {
			frames[i] = &next
		}
	}
	return d, frames
}

// TestLiveAllocates: a frame of a drag needs no memory but what the assembly of the car
// itself does, which on a rack with double wishbones is none.
func TestLiveAllocates(t *testing.T) {
	if raced {
		t.Skip("pools lose memory under the race detector")
	}
	for _, template := range study.Templates() {
		d, frames := dragOf(t, template.Key)
		live := NewLive(d)
		for i := range 3 { // warm
			live.Follow(frames[i%2])
		}
		car := live.List[1]
		if car.Err != nil {
			t.Fatalf("%s: %v", template.Key, car.Err)
		}
		assembly := testing.AllocsPerRun(50, func() {
			_ = live.window.base.Reassemble(car.Axle, solver.BothSides, car.changes, car.Axle.Hold(), nil)
		})
		i := 0
		if n := testing.AllocsPerRun(50, func() { i++; live.Follow(frames[i%2]) }); n != assembly {
			t.Errorf("%s: %g allocations in a frame, want the %g of the assembly", template.Key, n, assembly)
		}
		if template.Key == "double-wishbone-rack" && assembly != 0 {
			t.Errorf("%s: %g allocations in an assembly, want none", template.Key, assembly)
		}
	}
}

// BenchmarkLive is a frame of a drag of one candidate.
func BenchmarkLive(b *testing.B) {
	for _, key := range []string{"double-wishbone-rack", "strut-rack", "multi-link-rack", "solid-axle-pitman"} {
		b.Run(key, func(b *testing.B) {
			d, frames := dragOf(b, key)
			live := NewLive(d)
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				live.Follow(frames[i%2])
			}
		})
	}
}

// sameAngle takes two angles that are no numbers for the same.
func sameAngle(a, b solver.Angle) bool {
	return a == b || math.IsNaN(a.Radians()) && math.IsNaN(b.Radians())
}

// sameNumber is [sameAngle] of numbers.
func sameNumber(a, b Number) bool { return a == b || !a.Valid() && !b.Valid() }

// TestLiveAxleAgrees holds what a page estimates of its cars against the call.
func TestLiveAxleAgrees(t *testing.T) {
	for name, d := range liveStudies(t) {
		live := NewLive(d)
		for _, car := range live.List {
			want, err := Axle(t.Context(), d, AxleOptions{Candidate: car.Name})
			if err != nil {
				t.Fatal(err)
			}
			got, err := live.Axle(car)
			if diff := cmp.Diff(want.Cars[0], got, cmpopts.EquateNaNs()); err != nil || diff != "" {
				t.Errorf("%s, %s: %v %s", name, car.Name, err, diff)
			}
		}
	}
}
