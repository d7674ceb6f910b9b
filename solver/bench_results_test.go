package solver_test

import (
	"testing"

	"toewright/solver"
)

// BenchmarkResults moves the left corner through 21 positions and measures all
// there is.
func BenchmarkResults(b *testing.B) {
	c := loadCase(b, "../testdata/cases/dw01_saloon_rear_steer.json")
	x := c.Study.candidate(b, c.Study.design(b), "base")
	in := solver.SweepInput{Sides: solver.LeftOnly, Ground: true, Instant: true, Joints: x.Joints()}
	in.Travels, _ = solver.Grid(50, 50, 5)
	ws := solver.NewWorkspace()
	var out [2]solver.Curve
	b.ReportAllocs()
	for b.Loop() {
		if err := x.Sweep(ws, &in, &out); err != nil {
			b.Fatal(err)
		}
	}
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
