package calls

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// polled is a context that is asked whether it has ended: it ends when it is asked for the
// last time of so many, and notes the longest that the process worked between two times.
type polled struct {
	context.Context
	mu      sync.Mutex
	left    int // times until it ends; below 0 never
	times   int
	last    time.Duration // of the processor, when it was asked last
	ended   time.Duration // of the processor, when it ended
	longest time.Duration
	where   string // who asked after that
	done    chan struct{}
}

func newPolled(parent context.Context, left int) *polled {
	return &polled{Context: parent, left: left, last: worked(), done: make(chan struct{})}
}

// worked returns how long the processor has worked for this process.
func worked() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// asked counts one time.
func (p *polled) asked(by string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.times++
	now := worked()
	if gap := now - p.last; gap > p.longest {
		p.longest, p.where = gap, by
	}
	p.last = now
	if p.left--; p.left == 0 {
		p.ended = now
		close(p.done)
	}
}

func (p *polled) Err() error {
	p.asked(caller())
	select {
	case <-p.done:
		return context.Canceled
	default:
		return nil
	}
}

func (p *polled) Done() <-chan struct{} {
	p.asked(caller())
	return p.done
}

// caller names whoever asks.
func caller() string {
	pc, _, line, _ := runtime.Caller(2)
	return fmt.Sprintf("%s:%d", runtime.FuncForPC(pc).Name(), line)
}

// busy returns a study that keeps every call at work: set-ups with attitudes, limits of
// the travel and of the lock, readings, a tape, loads.
func busy(t *testing.T, key string) *study.Document {
	t.Helper()
	all := study.Templates()
	at := slices.IndexFunc(all, func(t study.Template) bool { return t.Key == key })
	if at < 0 {
		t.Fatalf("no template %s", key)
	}
	d := all[at].Document()
	mm := d.Units.FromMillimetres
	d.Search.Limits = []study.Limit{{Result: "outerBallAngle", Max: new(25.0)}, {Result: "innerBallAngle", Max: new(40.0)}}
	d.Search.Scenarios = []study.Scenario{
		{Name: "as drawn"}, {Name: "low", Changes: study.Changes{"rideHeight": -mm(10)}},
		{Name: "turned", Attitude: &study.Attitude{Steer: mm(5)}}, {Name: "leaning", Attitude: &study.Attitude{Roll: 1}},
	}
	if d.Loads == nil {
		d.Loads = []study.LoadCase{{Name: "kerb", Left: &study.WheelLoad{Force: study.Vec3{0, -1000, 3000}, At: "contact"}}}
	}
	d.Travel, d.Search.Window = &study.Travel{Bump: mm(50), Droop: mm(50), Step: mm(25)}, nil
	d.Series = []study.MeasuredCar{{Car: "1", Readings: d.Readings}, {Car: "2", Readings: d.Readings}}
	for i := range d.Search.Variables {
		d.Search.Variables[i].Grid = mm(0.5)
	}
	d.Measured = &study.Measured{Marks: map[string]study.Vec3{"A": {mm(500), 0, 0}, "B": {mm(-500), 0, 0}, "C": {0, mm(900), 0}, "D": {0, 0, mm(900)}}}
	for _, p := range d.Points() {
		for name, m := range d.Measured.Marks {
			far := math.Sqrt(square(p.Place[0]-m[0]) + square(p.Place[1]-m[1]) + square(p.Place[2]-m[2]))
			d.Measured.Lengths = append(d.Measured.Lengths, study.Length{From: name, To: d.SourcePath(p), Value: far})
		}
	}
	return d
}

func square(x float64) float64 { return x * x }

// few are options that keep calls that take long to some seconds.
var few = map[string]map[string]string{
	Map: {"columns": "12", "rows": "12", "scenario": "all"}, TradeOff: {"designs": "3"}, Tolerance: {"cars": "1000"}, Report: {"cars": "1000"},
}

// fleet returns a study with many runs of readings, each with parts of its own, every
// other one to verify, at travels read of the tyre.
func fleet(d *study.Document) *study.Document {
	d = d.Clone()
	d.Measured, d.Readings = nil, nil
	mm := d.Units.FromMillimetres
	for i := range 120 {
		r := study.Reading{Side: study.Left, Base: mm(300), TravelAs: "contact", Changes: study.Changes{"tieRodOuterHeight": mm(-float64(i) / 100)}}
		if i%2 == 1 {
			r.Side, r.Purpose = study.Right, "verify"
		}
		for k := range 9 {
			r.Values = append(r.Values, [2]float64{mm(float64(10*k - 40)), mm(0.002*float64(k*k) + 0.05*float64((i*k)%7-3))})
		}
		d.Readings = append(d.Readings, r)
	}
	return d
}

// jobs are the calls of a study, ready to be asked.
func jobs(t *testing.T, d *study.Document) map[string]func(context.Context, func(engine.Progress)) (any, error) {
	t.Helper()
	robust := d.Clone()
	robust.Search.Percentile = 95
	robust.Search.Scenarios, robust.Search.Variables = nil, robust.Search.Variables[:1]
	out := map[string]func(context.Context, func(engine.Progress)) (any, error){}
	for _, c := range all() {
		ask := func(d *study.Document) func(context.Context, func(engine.Progress)) (any, error) {
			return func(ctx context.Context, report func(engine.Progress)) (any, error) {
				r := c.New()
				for key, value := range few[c.Name] {
					i := slices.IndexFunc(r.Options, func(o Option) bool { return o.Name == key })
					if err := r.Options[i].Set(value); err != nil {
						t.Fatal(err)
					}
				}
				if o, ok := r.Values.(*engine.MapOptions); ok {
					o.Columns, o.Rows = new(12), new(12)
				}
				return r.Ask(ctx, d, report)
			}
		}
		out[c.Name] = ask(d)
		if c.Name == Search {
			out[c.Name+" of a share"] = ask(robust)
		}
		if c.Name == Fit {
			out[c.Name+" of a fleet"] = ask(fleet(d))
		}
	}
	return out
}

// soon is the longest that a call may work, by the processor's clock, without asking
// whether anybody waits, or after it was told that nobody does: a tenth of a second of a
// phone that is some times slower, with room for a collection of the garbage.
const soon = 60 * time.Millisecond

// TestEveryCallStopsSoon asks every call, a first time to its end, of which its progress
// tells on the way, and then cancelled after
// it has asked so many times, whether anybody waits, as chance has it, rather early than late. It works no longer
// than a moment between two times and after the last, and ends then with the context's
// error, with a part of its answer that says so, or with all of it.
func TestEveryCallStopsSoon(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1)) // what all processors do together is no gap
	random := rand.New(rand.NewPCG(1, 2))
	studies := []string{"double-wishbone-rack", "double-wishbone-centre-link"}
	for _, key := range studies {
		for name, ask := range jobs(t, busy(t, key)) {
			if long := strings.HasPrefix(name, Search) || name == TradeOff || name == Loads; long && key != studies[0] {
				continue // the same at more length, or without its springs
			}
			t.Run(key+"/"+name, func(t *testing.T) {
				from := worked()
				all := newPolled(t.Context(), -1)
				reports := 0
				last := -1.0
				whole, err := ask(all, func(p engine.Progress) {
					if reports++; !(p.Fraction >= last-1e-12 && p.Fraction <= 1) {
						t.Errorf("progress %g after %g", p.Fraction, last)
					}
					last = p.Fraction
				})
				all.asked("its end")
				if err != nil {
					t.Fatal(err)
				}
				if all.longest > soon {
					t.Errorf("works %v before %s, want %v at most", all.longest, all.where, soon)
				}
				if took := worked() - from; took > 2*soon && reports < 5 {
					t.Errorf("works %v and reports %d times", took, reports)
				}
				for range 2 {
					cut := newPolled(t.Context(), 1+int(float64(all.times-1)*square(random.Float64())))
					part, err := ask(cut, func(engine.Progress) {})
					if after := worked() - cut.ended; cut.ended > 0 && after > soon {
						t.Errorf("cancelled after %d times of %d, works on for %v before %s, want %v at most", all.times-cut.left, all.times, after, cut.where, soon)
					}
					if err != nil && !errors.Is(err, context.Canceled) {
						t.Errorf("cancelled, it fails: %v", err)
					}
					if err == nil && !same(t, part, whole) && !saysCut(part) {
						t.Errorf("cancelled, it answers something else and does not say so: %+v", part)
					}
				}
			})
		}
	}
}

// same reports whether two answers are one as they go out.
func same(t *testing.T, a, b any) bool {
	t.Helper()
	one, err := json.Marshal(a)
	other, also := json.Marshal(b)
	if numbers, ok := a.([]float64); ok { // which have no way out but as bytes
		return slices.EqualFunc(numbers, b.([]float64), func(x, y float64) bool { return x == y || x != x && y != y })
	}
	if err != nil || also != nil {
		t.Fatal(err, also)
	}
	return bytes.Equal(one, other)
}

// saysCut reports whether an answer says that it is not all that was asked for.
func saysCut(answer any) bool {
	switch a := answer.(type) {
	case *engine.SearchResult:
		return !a.Converged
	case *engine.ToleranceResult:
		return a.Cars < 1000 || slices.ContainsFunc(a.Scenarios, func(s engine.ToleranceScenario) bool { return s.Problem != "" })
	case *engine.ChooseResult:
		return a.Stopped
	case *engine.TradeOffResult:
		return a.Stopped
	}
	return false
}
