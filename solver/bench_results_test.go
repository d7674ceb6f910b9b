package solver_test

import (
	"math"
	"testing"
	"time"

	"toewright/solver"
)

// BenchmarkResults moves the left corner, or an axle, through 21 positions: for its toe
// alone, for what a wheel does without rates or joints, and for all there is. The two
// are timed by turns, least of many, so that "x-toe", the ratio, holds on a machine that
// does other work too.
func BenchmarkResults(b *testing.B) {
	for _, k := range benchedKinds {
		x := benchedAxle(b, k.file)
		all := solver.SweepInput{Sides: solver.LeftOnly, Ground: true, Instant: true, Joints: x.Joints()}
		for _, in := range []struct {
			name string
			solver.SweepInput
		}{{"usual", solver.SweepInput{Sides: solver.LeftOnly, Ground: true}}, {"all", all}} {
			b.Run(in.name+"/"+k.name, func(b *testing.B) { byToe(b, x, in.SweepInput) })
		}
	}
}

// byToe reports the time of a sweep beside that of one for the toe alone.
func byToe(b *testing.B, x *solver.Axle, in solver.SweepInput) {
	in.Travels, _ = solver.Grid(50, 50, 5)
	toe := in
	toe.ToeOnly = true
	ws := solver.NewWorkspace()
	var out [2]solver.Curve
	took := func(in *solver.SweepInput) time.Duration {
		const sweeps = 10
		began := time.Now()
		for range sweeps {
			if err := x.Sweep(ws, in, &out); err != nil {
				b.Fatal(err)
			}
		}
		return time.Since(began) / sweeps
	}
	least, base := time.Duration(math.MaxInt64), time.Duration(math.MaxInt64)
	b.ReportAllocs()
	for b.Loop() {
		base = min(base, took(&toe))
		least = min(least, took(&in))
	}
	b.ReportMetric(float64(least)/float64(base), "x-toe")
	b.ReportMetric(float64(least)/1e3, "µs/least")
	if f, ok := solver.NewFigures(out[solver.Left].Positions, nil); !ok || f.RMS == 0 {
		b.Fatal("no figures")
	}
}

// BenchmarkSteerFor finds the input for 20 deg of the inner wheel.
func BenchmarkSteerFor(b *testing.B) {
	c := loadCase(b, "../testdata/cases/dw01_saloon_rear_steer.json")
	x := c.Study.candidate(b, c.Study.design(b), "base")
	ws := solver.NewWorkspace()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := x.SteerFor(ws, solver.Left, solver.Deg(20), solver.Attitude{}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkDiagnose explains a curve of 21 positions and finds five remedies.
func BenchmarkDiagnose(b *testing.B) {
	c := loadCase(b, "../testdata/cases/dw01_saloon_rear_steer.json")
	x := c.Study.candidate(b, c.Study.design(b), "base")
	travels, _ := solver.Grid(50, 50, 5)
	ws := solver.NewWorkspace()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := x.Diagnose(ws, solver.Left, travels, nil); err != nil {
			b.Fatal(err)
		}
	}
}
