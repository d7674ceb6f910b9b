package solver_test

import (
	"math"
	"path/filepath"
	"testing"

	"toewright/solver"
)

// turnedCases are axles to be steered, some with their static position solved.
var turnedCases = []struct {
	name, file string
	input      float64 // mm or radians
	changed    map[string]float64
}{
	{"rack", "dw05_antidive_skewed_axes.json", 30, nil},
	{"rack, car changed", "dw07_large_caster.json", -20,
		map[string]float64{"lowerBallJointHeight": -10, "tieRodOuterHeight": 6, "steeringArmLength": 5, "caster": 11, "rideHeight": -20}},
	{"strut", "st01_hatch_rear_steer.json", -15, nil},
	{"strut, car changed", "st03_high_tie_rod_on_strut.json", 20, map[string]float64{"camber": -1.5, "caster": 4, "lowerBallJointHeight": 8}},
	{"multi-link", "ml01_front_virtual_axis.json", 20, nil},
	{"centre link", "cl01_dw03.json", 0.3, nil},
	{"drag link", "sa01_cross_steer_right_arm.json", 25, map[string]float64{"caster": 6, "rideHeight": 20}},
}

// steeredCar is what is said of a steered axle.
type steeredCar struct {
	wheel                           [2]float64
	pivot, circle, mean, toe, ratio float64
}

// wheelHeld is the angle at which the inner wheel is held.
const wheelHeld = 12

// turnedAt steers an axle, and the inner wheel to an angle.
func turnedAt(t *testing.T, x *solver.Axle, at solver.Attitude, inner solver.Side) (out steeredCar, held solver.SteerPoint) {
	t.Helper()
	ws := solver.NewWorkspace()
	var c solver.SteerCurve
	if err := x.Steer(ws, &solver.SteerInput{Inputs: []float64{at.Steer}, At: at}, &c); err != nil || len(c.Points) != 1 {
		t.Fatal(c.Reach, err)
	}
	p := c.Points[0]
	circle, err := x.TurningCircle(p.Turn())
	if err != nil {
		t.Fatal(err)
	}
	angle := solver.Deg(wheelHeld)
	if inner == solver.Right {
		angle = -angle
	}
	if held, err = x.SteerFor(ws, inner, angle, at); err != nil {
		t.Fatal(err)
	}
	percent, err := x.Ackermann(held.Turn())
	if err != nil {
		t.Fatal(err)
	}
	out = steeredCar{pivot: x.KingpinTrack(), circle: circle, mean: p.MeanRate(), toe: held.Turn().ToeOut().Radians(), ratio: percent}
	for _, s := range solver.Sides {
		out.wheel[s] = float64(p.Wheel[s])
	}
	return out, held
}

func (a steeredCar) numbers() []float64 {
	return []float64{a.wheel[0], a.wheel[1], a.pivot, a.circle, a.mean, a.toe, a.ratio}
}

// TestSteerRatesByParameters compares the derivatives of a steered axle, and of its turn with
// one wheel held, by every parameter of the registry with differences.
func TestSteerRatesByParameters(t *testing.T) {
	names := []string{"left wheel", "right wheel", "pivot", "turning circle", "mean rate", "toe-out on the turn", "ackermann"}
	// What rounding in a solved position leaves of a difference, and a mean rate's own
	// difference, as a share of what a millimetre does to each: rad, mm, percent.
	slack := []float64{2e-9, 2e-9, 1e-6, 2e-4, 3e-9, 2e-8, 2e-5}
	for _, tt := range turnedCases {
		t.Run(tt.name, func(t *testing.T) {
			c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
			d := c.Study.design(t)
			d.Wheelbase = 2500
			a, err := solver.NewAssembler(d)
			if err != nil {
				t.Fatal(err)
			}
			make := func(cs []solver.Change) (*solver.Axle, error) { return a.Assemble(cs, solver.HoldAll) }
			var base []solver.Change
			for key, v := range tt.changed {
				base = append(base, change(t, d, key, v))
			}
			x, err := make(base)
			if err != nil {
				t.Fatal(err)
			}
			params := everyParameter(d, solver.HoldAll)
			by, err := x.Tangents(params)
			if err != nil {
				t.Fatal(err)
			}
			at := solver.Attitude{Heave: 5, Roll: -3, Steer: tt.input}
			inner := solver.Right
			_, held := turnedAt(t, x, at, inner)
			got := turnedRates(t, x, at, inner, &held, by)
			for k, p := range params {
				h, lever := 0.1, 1.0
				if p.Parameter.Quantity == solver.AngleQuantity {
					h, lever = 1e-3, 300
				}
				beside := func(h float64) []float64 {
					q := p
					if q.Value = h; q.Parameter.Absolute {
						q.Value += settingNow(t, make, base, p)
					}
					y, err := make(append(append([]solver.Change(nil), base...), q))
					if err != nil {
						t.Fatal(err)
					}
					v, _ := turnedAt(t, y, at, inner)
					return v.numbers()
				}
				u, v, u2, v2 := beside(h), beside(-h), beside(2*h), beside(-2*h)
				for i, name := range names {
					one, two := (u[i]-v[i])/(2*h), (u2[i]-v2[i])/(4*h)
					if want := one + (one-two)/3; !(math.Abs(got[k][i]-want) <= slack[i]*lever) {
						t.Errorf("%s by %s: rate %.10g, differences give %.10g", name, p.Key(), got[k][i], want)
					}
				}
			}
		})
	}
}

// turnedRates returns the derivatives of [steeredCar.numbers] by each parameter.
func turnedRates(t *testing.T, x *solver.Axle, at solver.Attitude, inner solver.Side, held *solver.SteerPoint, by *solver.Tangents) [][]float64 {
	t.Helper()
	ws := solver.NewWorkspace()
	var c solver.SteerCurve
	if err := x.Steer(ws, &solver.SteerInput{Inputs: []float64{at.Steer}, At: at}, &c); err != nil {
		t.Fatal(err)
	}
	mean := make([]float64, by.Len())
	if !x.MeanRateRates(ws, at, by, mean) {
		t.Fatal("the mean rate has no derivatives")
	}
	out := make([][]float64, by.Len())
	rates, ok := x.SteerRates(ws, at, by)
	if !ok {
		t.Fatal("no derivatives")
	}
	for k := range rates {
		r := &rates[k]
		out[k] = []float64{r.Wheel[0], r.Wheel[1], r.Pivot, x.TurningCircleRate(c.Points[0].Turn(), r), mean[k]}
	}
	at.Steer = held.Input
	if rates, ok = x.SteerRates(ws, at, by); !ok {
		t.Fatal("no derivatives")
	}
	held.HoldWheel(inner, rates)
	for k := range rates {
		out[k] = append(out[k], rates[k].ToeOut(), x.AckermannRate(held.Turn(), &rates[k]))
	}
	return out
}

// TestSteerRatesAllocate no memory where the workspace has room; of a centre link a ball is
// built for each parameter.
func TestSteerRatesAllocate(t *testing.T) {
	for _, tt := range turnedCases {
		if tt.name == "centre link" {
			continue
		}
		c := loadCase(t, filepath.Join("../testdata/cases", tt.file))
		x := c.Study.candidate(t, c.Study.design(t), "base")
		by, err := x.Tangents(everyParameter(x.Design(), solver.HoldAll))
		if err != nil {
			t.Fatal(err)
		}
		ws, out := solver.NewWorkspace(), make([]float64, by.Len())
		if n := testing.AllocsPerRun(10, func() { x.MeanRateRates(ws, solver.Attitude{Steer: tt.input}, by, out) }); n != 0 {
			t.Errorf("%s: %g allocations, want 0", tt.name, n)
		}
	}
}
