//go:build unix

package main

import (
	"math"
	"runtime"
	"runtime/metrics"
	"slices"
	"syscall"
	"time"
)

// processorTime returns what this process has used of all processors.
func processorTime() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// batch is how long calls are repeated for one time: long beside the clock's
// steps of some 10 µs.
const batch = 20 * time.Millisecond

// timed returns the processor time of one call of f in ns, from a batch of calls.
func timed(f func() error) (float64, error) {
	for n := 1; ; n *= 2 {
		start := processorTime()
		for range n {
			if err := f(); err != nil {
				return 0, err
			}
		}
		if d := processorTime() - start; d >= batch {
			return float64(d) / float64(n), nil
		}
	}
}

// spread is the least and the middle of some times, in ns.
type spread struct{ least, median float64 }

func spreadOf(times []float64) spread {
	if len(times) == 0 {
		return spread{math.NaN(), math.NaN()}
	}
	s := slices.Sorted(slices.Values(times))
	return spread{s[0], s[len(s)/2]}
}

// workMeter tells how much of the processors' time there was work for: whether the
// machine had time for it besides other programs does not count.
type workMeter struct{ idle, total float64 }

func newWorkMeter() workMeter {
	runtime.GC() // Go counts both up at a collection
	s := []metrics.Sample{{Name: "/cpu/classes/idle:cpu-seconds"}, {Name: "/cpu/classes/total:cpu-seconds"}}
	metrics.Read(s)
	return workMeter{s[0].Value.Float64(), s[1].Value.Float64()}
}

// busy returns the share since the meter was made.
func (m workMeter) busy() float64 {
	now := newWorkMeter()
	return 1 - (now.idle-m.idle)/(now.total-m.total)
}
