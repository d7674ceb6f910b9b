package optimize_test

import (
	"runtime"
	"runtime/metrics"
	"sync"
	"testing"
	"time"

	"toewright/optimize"
	"toewright/solver"
)

// manyTravels returns 41 positions over ±50 mm.
func manyTravels(b *testing.B) []float64 {
	b.Helper()
	travels, err := solver.Grid(50, 50, 2.5)
	if err != nil {
		b.Fatal(err)
	}
	return travels
}

// reportShare benchmarks do, which judges a number of cars on all processors. It
// reports the time of a car as a multiple of that of a bare sweep on as many
// processors, and the share of the processors' time in which there was work.
func reportShare(b *testing.B, j optimize.Judge, cars int, do func() error) {
	b.Helper()
	sweep := sweepOnAll(b, j)
	idle, total := processorSeconds()
	b.ReportAllocs()
	for b.Loop() {
		if err := do(); err != nil {
			b.Fatal(err)
		}
	}
	each := b.Elapsed() / time.Duration(b.N)
	idleAfter, totalAfter := processorSeconds()
	b.ReportMetric(float64(each)/float64(cars)/float64(sweep), "sweeps/car")
	b.ReportMetric(100*(1-(idleAfter-idle)/(totalAfter-total)), "%busy")
}

// sweepOnAll returns the time of a sweep of the base car, divided by the
// processors, while all of them sweep.
func sweepOnAll(b *testing.B, j optimize.Judge) time.Duration {
	b.Helper()
	car, err := j.Base.Assemble(nil, j.Hold)
	if err != nil {
		b.Fatal(err)
	}
	const each = 20_000
	in := solver.SweepInput{Travels: j.Travels, Sides: j.Sides}
	start := time.Now()
	var wg sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			ws := solver.NewWorkspace()
			var out [2]solver.Curve
			for range each {
				if err := car.Sweep(ws, &in, &out); err != nil {
					b.Error(err)
					return
				}
			}
		})
	}
	wg.Wait()
	return time.Since(start) / time.Duration(each*runtime.GOMAXPROCS(0))
}

// processorSeconds returns how long the processors that Go may use have had
// nothing to do, and in all. Go counts both up at a collection.
func processorSeconds() (idle, total float64) {
	runtime.GC()
	s := []metrics.Sample{{Name: "/cpu/classes/idle:cpu-seconds"}, {Name: "/cpu/classes/total:cpu-seconds"}}
	metrics.Read(s)
	return s[0].Value.Float64(), s[1].Value.Float64()
}
