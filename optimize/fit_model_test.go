package optimize

import (
	"strings"
	"testing"

	"gonum.org/v1/gonum/floats"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// inventedCar is a double wishbone with a tilted rack; coordinates invented.
func inventedCar(t testing.TB) *solver.Assembler {
	t.Helper()
	k, err := solver.KindByName("double-wishbone")
	if err != nil {
		t.Fatal(err)
	}
	d := &solver.Design{Kind: k, Gear: solver.Gear{Kind: solver.Rack, Axis: solver.Vec{X: 0.05, Y: 1}}, TyreRadius: 305}
	for _, p := range []solver.Vec{
		{X: 140, Y: 380, Z: 210}, {X: -160, Y: 380, Z: 205}, {X: 5, Y: 700, Z: 190},
		{X: 100, Y: 430, Z: 470}, {X: -120, Y: 430, Z: 455}, {X: -15, Y: 670, Z: 450},
		{X: -120, Y: 680, Z: 230}, {X: -110, Y: 350, Z: 240}, {X: 0, Y: 760, Z: 305},
	} {
		d.Points[solver.Left] = append(d.Points[solver.Left], p)
		p.Y = -p.Y
		d.Points[solver.Right] = append(d.Points[solver.Right], p)
	}
	for _, s := range solver.Sides {
		d.Toe[s], d.Camber[s] = solver.Deg(0.1), solver.Deg(-0.5)
	}
	a, err := solver.NewAssembler(d)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// part returns a change in mm or degrees.
func part(t testing.TB, a *solver.Assembler, key string, v float64) solver.Change {
	t.Helper()
	p, _, err := solver.FindParameter(a.Design(), key)
	if err != nil {
		t.Fatal(err)
	}
	if p.Quantity == solver.AngleQuantity {
		v = float64(solver.Deg(v))
	}
	c, err := solver.NewChange(a.Design(), key, v)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// prior returns the prior of a key with its registry's tolerance.
func prior(t testing.TB, a *solver.Assembler, key string, shared bool) FitPrior {
	t.Helper()
	p, sides, err := solver.FindParameter(a.Design(), key)
	if err != nil {
		t.Fatal(err)
	}
	return FitPrior{Parameter: p, Sides: sides, SD: p.Tolerance, Shared: shared}
}

// readAt returns readings of nothing at some travels.
func readAt(s solver.Side, g Gauge, changes []solver.Change, travels ...float64) ReadingSet {
	set := ReadingSet{Side: s, Gauge: g, Base: 300, Repeatability: 0.05, Changes: changes}
	for _, t := range travels {
		set.Readings = append(set.Readings, Reading{Travel: t})
	}
	return set
}

// TestGaugeModelDerivatives holds all kinds of unknowns against differences: each
// side's own, one shared, an absolute setting that a set-up sets too, and the
// errors of the readings themselves.
func TestGaugeModelDerivatives(t *testing.T) {
	a := inventedCar(t)
	known := 0.7
	p := &GaugeFit{
		Base: a, TravelZero: 2, SteerZero: 1,
		Priors: []FitPrior{
			prior(t, a, "tieRodOuter.z", false), prior(t, a, "lowerBallJoint.y", true),
			prior(t, a, "upperFrontPivot.z@right", false), prior(t, a, "caster", false), prior(t, a, "steeringArmLength", false),
		},
		Sets: []ReadingSet{
			readAt(solver.Left, Indicators, nil, 30, -40, 10, 30), // unsorted, one travel twice
			readAt(solver.Right, Plate, nil, -20, 25),
			readAt(solver.Left, Tape, []solver.Change{part(t, a, "caster", 7), part(t, a, "tieRodOuterHeight", -6)}, -35, 45),
		},
	}
	p.Sets[1].Zero = &known
	p.Sets[0].SlopeSD, p.Sets[2].SlopeSD, p.Sets[2].Turned = 0.001, 0.002, true // and the right one is known not to lean
	us := p.unknowns()
	m := newGaugeModel(t.Context(), p, us)
	if got, want := keysOf(us), "tieRodOuter.z@left tieRodOuter.z@right lowerBallJoint.y upperFrontPivot.z@right caster@left caster@right steeringArmLength@left steeringArmLength@right travelZero@left travelZero@right steerZero gaugeSlope@left"; got != want {
		t.Errorf("unknowns are %s, want %s", got, want)
	}
	if m.size != (nlp.Size{Variables: len(us), Residuals: 8}) {
		t.Fatalf("size = %+v, want %d variables and 8 readings", m.size, len(us))
	}
	x, scales := make([]float64, m.size.Variables), make([]float64, m.size.Variables)
	for k := range x {
		x[k], scales[k] = 0.4*float64(k%5)-0.7, 50
		if k < len(us) && us[k].Parameter.Quantity == solver.AngleQuantity {
			x[k], scales[k] = 0.004, 0.2
		}
		if k < len(us) && us[k].Kind == GaugeSlopeUnknown {
			x[k], scales[k] = 0.003, 0.1
		}
	}
	checkJacobian(t, m, x, scales)
}

func keysOf(us []Unknown) string {
	var keys []string
	for i := range us {
		keys = append(keys, us[i].Key())
	}
	return strings.Join(keys, " ")
}

// TestGaugeModelResiduals compares with a car swept by hand.
func TestGaugeModelResiduals(t *testing.T) {
	a := inventedCar(t)
	stack := part(t, a, "tieRodOuterHeight", -6)
	p := &GaugeFit{Base: a, TravelZero: 2, Priors: []FitPrior{prior(t, a, "tieRodInner.z", false)},
		Sets: []ReadingSet{readAt(solver.Right, Plate, []solver.Change{stack}, 40, -20)}}
	p.Sets[0].Readings[0].Value = 1.5
	zero := -3.0
	p.Sets[0].Zero = &zero
	m := newGaugeModel(t.Context(), p, p.unknowns())
	v := nlp.NewValues(m.size)
	const inner, low = 1.25, 0.5
	if !m.Evaluate([]float64{inner, low}, &v) {
		t.Fatal("the model cannot be evaluated")
	}
	car, err := a.Assemble([]solver.Change{stack, part(t, a, "tieRodInner.z@right", inner)}, solver.HoldAll)
	if err != nil {
		t.Fatal(err)
	}
	var curves [2]solver.Curve
	if err := car.Sweep(solver.NewWorkspace(), &solver.SweepInput{Travels: []float64{-20 + low, 40 + low}}, &curves); err != nil {
		t.Fatal(err)
	}
	at := curves[solver.Right].Positions
	for i, want := range []float64{
		(zero + Plate.Reading(at[1].Toe, 300) - 1.5) / 0.05,
		(zero + Plate.Reading(at[0].Toe, 300)) / 0.05,
	} {
		if !near(v.R[i], want, 1e-9) {
			t.Errorf("residual %d = %.12g, want %.12g", i, v.R[i], want)
		}
	}
}

// TestGaugeModelZeros: where the zero is not known the residuals of the readings in use
// have a mean of none, by whatever loss weighs them, and one left out changes nothing.
func TestGaugeModelZeros(t *testing.T) {
	a := inventedCar(t)
	p := &GaugeFit{Base: a, Priors: []FitPrior{prior(t, a, "tieRodInner.z", false)},
		Sets: []ReadingSet{readAt(solver.Left, Indicators, nil, -40, -20, 0, 15, 40), readAt(solver.Right, Plate, nil, -20, 30, 5)}}
	p.Sets[0].Readings[1].Value = 7 // an outlier
	m := newGaugeModel(t.Context(), p, p.unknowns())
	x := []float64{1, -2}
	for _, loss := range []nlp.Loss{nil, nlp.StudentT{}, nlp.Huber{}} {
		m.loss = loss
		for _, out := range []int{-1, 1, 7} {
			for i := range m.used {
				m.used[i] = i != out
			}
			v := nlp.NewValues(m.size)
			if !m.Evaluate(x, &v) {
				t.Fatal("the model cannot be evaluated")
			}
			for set := range m.sets {
				first, end := m.span(set)
				sum, rates := 0.0, make([]float64, len(x))
				for i := first; i < end; i++ {
					w := 1.0
					if loss != nil {
						_, w = loss.Rho(v.R[i] * v.R[i])
					}
					sum += w * v.R[i]
					floats.AddScaled(rates, w, v.JR.RawRowView(i))
				}
				if !near(sum, 0, 1e-8) || !near(rates[set], 0, 1e-7) {
					t.Errorf("%T, without %d: set %d has %g and derivatives %g left of its zero", loss, out, set, sum, rates)
				}
			}
			if out >= 0 && (v.R[out] != 0 || v.JR.At(out, 0) != 0 || v.JR.At(out, 1) != 0) {
				t.Errorf("reading %d is left out and has a residual of %g", out, v.R[out])
			}
		}
	}
}

func TestUnknownsByDefault(t *testing.T) {
	a := inventedCar(t)
	for _, tt := range []struct {
		name  string
		sides []solver.Side
		want  int
	}{
		{"one side", []solver.Side{solver.Right}, 27},
		{"both sides", solver.Sides[:], 54},
	} {
		p := &GaugeFit{Base: a}
		for _, s := range tt.sides {
			p.Sets = append(p.Sets, readAt(s, Indicators, nil, -10, 10))
		}
		us := p.unknowns()
		if len(us) != tt.want {
			t.Errorf("%s: %d unknowns, want %d", tt.name, len(us), tt.want)
		}
		for i := range us {
			if us[i].SD != 2.5 || us[i].Sides == solver.BothSides {
				t.Errorf("%s: %s has standard deviation %g, want 2.5 mm on a side of its own", tt.name, us[i].Key(), us[i].SD)
			}
		}
	}
}
