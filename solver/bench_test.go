package solver_test

import (
	"path/filepath"
	"strings"
	"testing"

	"toewright/solver"
)

// benchedKinds are a linkage of each kind, by its case.
var benchedKinds = []struct{ name, file string }{
	{"double-wishbone", "dw01_saloon_rear_steer.json"},
	{"strut", "st01_hatch_rear_steer.json"},
	{"multi-link", "ml01_front_virtual_axis.json"},
	{"swing-arm", "sw01_split_beam.json"},
	{"solid-axle", "sa01_cross_steer_right_arm.json"},
}

// benchedAxle returns the base car of a case.
func benchedAxle(b *testing.B, file string) *solver.Axle {
	b.Helper()
	c := loadCase(b, filepath.Join("../testdata/cases", file))
	return c.Study.candidate(b, c.Study.design(b), "base")
}

// BenchmarkSweep moves one corner, or one axle, through 41 positions over ±80 mm.
func BenchmarkSweep(b *testing.B) {
	for _, k := range benchedKinds {
		b.Run(k.name, func(b *testing.B) {
			x := benchedAxle(b, k.file)
			in := solver.SweepInput{Sides: solver.LeftOnly}
			in.Travels, _ = solver.Grid(80, 80, 4)
			ws := solver.NewWorkspace()
			var out [2]solver.Curve
			b.ReportAllocs()
			for b.Loop() {
				if err := x.Sweep(ws, &in, &out); err != nil {
					b.Fatal(err)
				}
			}
			if n := len(out[0].Positions); n != 41 {
				b.Fatalf("%d positions, want 41", n)
			}
		})
	}
}

// BenchmarkAssemble makes a candidate with one part changed and all setpoints
// held.
func BenchmarkAssemble(b *testing.B) {
	c := loadCase(b, "../testdata/cases/dw01_saloon_rear_steer.json")
	a, err := solver.NewAssembler(c.Study.design(b))
	if err != nil {
		b.Fatal(err)
	}
	changes := []solver.Change{change(b, a.Design(), "tieRodOuterHeight", -10)}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := a.Assemble(changes, solver.HoldAll); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSensitivity takes the derivatives of 21 toes by every coordinate of
// every hardpoint.
func BenchmarkSensitivity(b *testing.B) {
	c := loadCase(b, "../testdata/cases/dw01_saloon_rear_steer.json")
	d := c.Study.design(b)
	x := c.Study.candidate(b, d, "base")
	var by []solver.Change
	for _, p := range solver.Parameters(d) {
		if strings.Contains(p.Key, ".") {
			by = append(by, solver.Change{Parameter: p})
		}
	}
	in := solver.SweepInput{Sides: solver.LeftOnly}
	in.Travels, _ = solver.Grid(50, 50, 5)
	ws := solver.NewWorkspace()
	var out [2]solver.Curve
	b.ReportAllocs()
	for b.Loop() {
		t, err := x.Tangents(by)
		if err != nil {
			b.Fatal(err)
		}
		in.By = t
		if err := x.Sweep(ws, &in, &out); err != nil {
			b.Fatal(err)
		}
	}
}
