package solver_test

import (
	"errors"
	"math"
	"path/filepath"
	"reflect"
	"strings"
	"sync"
	"testing"

	"toewright/solver"
)

// TestAssembleSides: the side asked for is as in the whole car, the other one of
// an independent suspension as in the base car.
func TestAssembleSides(t *testing.T) {
	for _, tt := range []struct {
		name, file string
		solid      bool
	}{
		{"wishbone", "dw01_saloon_rear_steer.json", false},
		{"strut", "st01_hatch_rear_steer.json", false},
		{"solid axle", "sa01_cross_steer_right_arm.json", true},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
			a, err := solver.NewAssembler(c.Study.design(t))
			if err != nil {
				t.Fatal(err)
			}
			changes := []solver.Change{change(t, a.Design(), "toe", 0.3), change(t, a.Design(), "steeringArmLength", -6)}
			assemble := func(s solver.Selection, cs []solver.Change) [2]solver.Curve {
				x, err := a.AssembleSides(s, cs, solver.HoldAll)
				if err != nil {
					t.Fatal(err)
				}
				return swept(t, x, solver.SweepInput{Travels: []float64{-40, 0, 40}})
			}
			base, whole := assemble(solver.BothSides, nil), assemble(solver.BothSides, changes)
			if reflect.DeepEqual(base[solver.Right], whole[solver.Right]) {
				t.Fatal("the changes do not move the right wheel's curve")
			}
			left := assemble(solver.LeftOnly, changes)
			if !reflect.DeepEqual(left[solver.Left], whole[solver.Left]) {
				t.Error("the left curve is not that of the whole car")
			}
			want := base[solver.Right]
			if tt.solid {
				want = whole[solver.Right]
			}
			if !reflect.DeepEqual(left[solver.Right], want) {
				t.Errorf("the right curve is %+v, want %+v", left[solver.Right].Positions, want.Positions)
			}
		})
	}
}

// TestSetting: an absolute parameter stands where the design, or its static position,
// says; one that is a change stands nowhere.
func TestSetting(t *testing.T) {
	for i := range specimens {
		d := specimens[i].design(t)
		scatter(seeded(41), d, 10)
		a, err := solver.NewAssembler(d)
		if err != nil {
			t.Fatal(err)
		}
		static := swept(t, assembled(t, d, nil), solver.SweepInput{Travels: []float64{0}})
		for _, p := range solver.Parameters(d) {
			for _, s := range solver.Sides {
				got := a.Setting(p, s)
				switch p.Key {
				case "toe":
					near(t, d.Kind.Name+" toe", got, float64(d.Toe[s]), 0)
				case "camber":
					near(t, d.Kind.Name+" camber", got, float64(d.Camber[s]), 0)
				case "caster":
					want := float64(static[s].Positions[0].Caster)
					if len(d.Common) > 0 { // a solid axle is turned whole, to the mean of its ends
						want = float64(static[solver.Left].Positions[0].Caster+static[solver.Right].Positions[0].Caster) / 2
					}
					near(t, d.Kind.Name+" caster", got, want, 1e-12)
				default:
					if !math.IsNaN(got) {
						t.Errorf("%s: setting of %s = %g, want none", d.Kind.Name, p.Key, got)
					}
				}
			}
		}
	}
}

// TestTangentsOfOneSide: the side that was left as it was has none.
func TestTangentsOfOneSide(t *testing.T) {
	c := loadCase(t, "../testdata/cases/dw01_saloon_rear_steer.json")
	a, err := solver.NewAssembler(c.Study.design(t))
	if err != nil {
		t.Fatal(err)
	}
	x, err := a.AssembleSides(solver.LeftOnly, nil, solver.HoldAll)
	if err != nil {
		t.Fatal(err)
	}
	by, err := x.Tangents([]solver.Change{change(t, a.Design(), "tieRodOuterHeight", 0)})
	if err != nil {
		t.Fatal(err)
	}
	var out [2]solver.Curve
	if err := x.Sweep(solver.NewWorkspace(), &solver.SweepInput{Travels: []float64{0, 40}, By: by}, &out); err != nil {
		t.Fatal(err)
	}
	if r := out[solver.Left].ToeRate(1, 0); r == 0 {
		t.Error("no derivative of the left toe")
	}
	if r := out[solver.Right].ToeRate(1, 0); r != 0 {
		t.Errorf("derivative of the right toe is %g, want 0", r)
	}
}

// TestAssembleTogether: many goroutines share one assembler, and each gets the car
// that it asks for.
func TestAssembleTogether(t *testing.T) {
	c := loadCase(t, "../testdata/cases/dw01_saloon_rear_steer.json")
	a, err := solver.NewAssembler(c.Study.design(t))
	if err != nil {
		t.Fatal(err)
	}
	car := func(k int) [2]solver.Curve {
		x, err := a.Assemble([]solver.Change{change(t, a.Design(), "caster", float64(2+k)), change(t, a.Design(), "lowerBallJoint.z", float64(k))}, solver.HoldAll)
		if err != nil {
			t.Error(err)
			return [2]solver.Curve{}
		}
		return swept(t, x, solver.SweepInput{Travels: []float64{-40, 0, 40}})
	}
	const cars = 6
	var want, got [cars][2]solver.Curve
	for k := range want {
		want[k] = car(k)
	}
	var wg sync.WaitGroup
	for k := range got {
		wg.Go(func() { got[k] = car(k) })
	}
	wg.Wait()
	for k := range want {
		if !reflect.DeepEqual(got[k], want[k]) {
			t.Errorf("car %d differs when others are assembled beside it", k)
		}
	}
}

// TestReassemble: an axle assembled in the memory of another is the one that is
// assembled anew, whatever the other was.
func TestReassemble(t *testing.T) {
	in := solver.SweepInput{Travels: []float64{-40, 0, 40}}
	for _, file := range []string{"dw01_saloon_rear_steer.json", "st01_hatch_rear_steer.json", "ml01_front_virtual_axis.json", "sa01_cross_steer_right_arm.json"} {
		t.Run(file, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", file))
			a, err := solver.NewAssembler(c.Study.design(t))
			if err != nil {
				t.Fatal(err)
			}
			steps := [][]solver.Change{
				{change(t, a.Design(), "steeringArmLength", -6)},
				{change(t, a.Design(), "caster", 6), change(t, a.Design(), "tyreRadius", 9)},
				nil,
				{change(t, a.Design(), "tieRodOuterHeight@right", 4)},
			}
			var x solver.Axle
			for i, cs := range steps {
				if err := a.Reassemble(&x, solver.BothSides, cs, solver.HoldAll, nil); err != nil {
					t.Fatal(err)
				}
				anew, err := a.Assemble(cs, solver.HoldAll)
				if err != nil {
					t.Fatal(err)
				}
				if got, want := swept(t, &x, in), swept(t, anew, in); !reflect.DeepEqual(got, want) {
					t.Errorf("step %d: the axle differs from one assembled anew", i)
				}
			}
		})
	}
}

// TestReassembleAllocatesNothing holds that a series needs no new memory for a car
// whose points are off.
func TestReassembleAllocatesNothing(t *testing.T) {
	c := loadCase(t, "../testdata/cases/dw01_saloon_rear_steer.json")
	a, err := solver.NewAssembler(c.Study.design(t))
	if err != nil {
		t.Fatal(err)
	}
	var x solver.Axle
	cs := []solver.Change{change(t, a.Design(), "upperBallJoint.y", 2), change(t, a.Design(), "tieRodOuterHeight", 3)}
	allocs := testing.AllocsPerRun(100, func() {
		if err := a.Reassemble(&x, solver.LeftOnly, cs, solver.HoldAll, nil); err != nil {
			t.Fatal(err)
		}
	})
	if allocs != 0 {
		t.Errorf("%g allocations for each car, want none", allocs)
	}
}

// TestChangedAxisMustRise turns the kingpin over by a change, which a file may not do
// either: alone, and beside a part for which the static position is solved anew.
func TestChangedAxisMustRise(t *testing.T) {
	for _, tt := range []struct {
		name, file, key string
		by              float64
	}{
		{"wishbone", "dw01_saloon_rear_steer.json", "upperBallJoint.z", -400},
		{"solid axle", "sa01_cross_steer_right_arm.json", "kingpins.0.z", -400},
	} {
		c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
		a, err := solver.NewAssembler(c.Study.design(t))
		if err != nil {
			t.Fatal(err)
		}
		over := change(t, a.Design(), tt.key, tt.by)
		for name, changes := range map[string][]solver.Change{
			"alone": {over}, "with a part": {over, change(t, a.Design(), "steeringArmLength", -6)},
		} {
			_, err := a.Assemble(changes, solver.HoldNone)
			var input *solver.InputError
			if !errors.As(err, &input) || !strings.Contains(err.Error(), "is the pair swapped?") {
				t.Errorf("%s, %s: error %v, want one that names the ball joint", tt.name, name, err)
			}
		}
	}
}
