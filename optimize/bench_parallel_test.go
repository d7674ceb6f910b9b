//go:build unix

package optimize_test

import (
	"context"
	"runtime"
	"runtime/metrics"
	"sync"
	"syscall"
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
// reports the processor time of a car as a multiple of that of a bare sweep of the toe on
// as many processors, and the share of the processors' time in which there was work.
func reportShare(b *testing.B, j optimize.Judge, cars int, do func() error) {
	b.Helper()
	sweep := sweepOnAll(b, j)
	idle, total := processorSeconds()
	b.ReportAllocs()
	used := processorTime()
	for b.Loop() {
		if err := do(); err != nil {
			b.Fatal(err)
		}
	}
	each := (processorTime() - used) / time.Duration(b.N)
	idleAfter, totalAfter := processorSeconds()
	b.ReportMetric(float64(each)/float64(cars)/float64(sweep), "sweeps/car")
	b.ReportMetric(100*(1-(idleAfter-idle)/(totalAfter-total)), "%busy")
}

// sweepOnAll returns the processor time of a sweep of the base car's toe while all
// processors sweep: two that share a core are slower than one alone.
func sweepOnAll(b *testing.B, j optimize.Judge) time.Duration {
	b.Helper()
	car, err := j.Base.Assemble(nil, j.Hold)
	if err != nil {
		b.Fatal(err)
	}
	const each = 20_000
	in := solver.SweepInput{ToeOnly: true, Travels: j.Travels, Sides: j.Sides}
	start := processorTime()
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
	return (processorTime() - start) / time.Duration(each*runtime.GOMAXPROCS(0))
}

// processorTime returns what this process has used of all processors.
func processorTime() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// processorSeconds returns how long the processors that Go may use have had
// nothing to do, and in all. Go counts both up at a collection.
func processorSeconds() (idle, total float64) {
	runtime.GC()
	s := []metrics.Sample{{Name: "/cpu/classes/idle:cpu-seconds"}, {Name: "/cpu/classes/total:cpu-seconds"}}
	metrics.Read(s)
	return s[0].Value.Float64(), s[1].Value.Float64()
}

// BenchmarkTolerance builds 100,000 cars of a series, all coordinates off, on all
// processors and moves each through 41 positions: static toe set again, and left as built.
func BenchmarkTolerance(b *testing.B) {
	for _, bb := range []struct {
		name   string
		series *optimize.Series
	}{{"100k-cars", textbookSeries(b)}, {"as-built", builtSeries(b)}} {
		b.Run(bb.name, func(b *testing.B) {
			s := bb.series
			s.Travels = manyTravels(b)
			const count = 100_000
			p, err := s.Propagate()
			if err != nil {
				b.Fatal(err)
			}
			reportShare(b, s.Judge, count, func() error {
				_, err := s.Count(context.Background(), p, cars(count), optimize.Parallel{})
				return err
			})
		})
	}
}

// BenchmarkMap fills a map of 64 by 64 cars on all processors, each moved through
// 41 positions.
func BenchmarkMap(b *testing.B) {
	b.Run("64x64", func(b *testing.B) {
		j := textbookJudge(b)
		j.Travels = manyTravels(b)
		m := optimize.ParameterMap{Judge: j, X: freeOf(b, j.Base, "tieRodOuterHeight", -20, 20), Y: freeOf(b, j.Base, "tieRodInnerHeight", -20, 20), Columns: 64, Rows: 64}
		reportShare(b, j, 64*64, func() error {
			_, err := m.Fill(context.Background(), optimize.Span{End: m.Rows}, optimize.Parallel{})
			return err
		})
	})
}
