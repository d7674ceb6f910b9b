package solver_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"toewright/solver"
)

// rateAgrees is how well the derivatives of forces agree with differences, as a share of
// the largest force, stress or moment of the car by mm or by what a radian moves in 300.
const rateAgrees = 2e-8

// TestForceRates compares the derivatives of every force by every parameter of the
// registry with central differences of re-assembled cars, Richardson's extrapolation
// applied once: on every kind, with springs wherever they can stand,
// the loads of the sides unlike, parts and setpoints changed, in random load cases.
func TestForceRates(t *testing.T) {
	r := seeded(68)
	seen := map[string]int{}
	for i := range specimens {
		p := &specimens[i]
		for _, on := range springPlaces {
			d := p.design(t)
			scatter(r, d, lawSpread)
			for i, v := range d.Points[0] { // a setpoint is set alike on both sides
				d.Points[1][i] = mirrored(v)
			}
			d.Toe[1], d.Camber[1] = d.Toe[0], d.Camber[0]
			if _, ok := springsOn(d, on); !ok || p.gear.Kind == solver.CentreLink && on != springOf(d) {
				continue
			}
			seen[p.kind]++
			for _, base := range []map[string]float64{nil, {"tieRodOuterHeight": -9, "steeringArmLength": 4},
				{"tieRodOuterHeight": 7, "caster": home(t, assembled(t, d, nil)).Caster.Degrees() + 1.5, "rideHeight": -12}} {
				t.Run(p.kind+", "+p.gear.Kind.String()+", spring on "+on, func(t *testing.T) { checkForceRates(t, r, d, on, base) })
			}
		}
	}
	if len(seen) != len(solver.Kinds()) {
		t.Errorf("kinds looked at: %v", seen)
	}
}

func checkForceRates(t *testing.T, r *rand.Rand, d *solver.Design, on string, base map[string]float64) {
	t.Helper()
	a, err := solver.NewAssembler(d)
	if err != nil {
		t.Fatal(err)
	}
	var cs []solver.Change
	for key, v := range base {
		cs = append(cs, change(t, d, key, v))
	}
	parts := boltedArms(d, on)
	steer := 12 * (2*r.Float64() - 1)
	if d.Gear.Kind == solver.CentreLink {
		steer /= 150
	}
	in := randomLoads(r, steer)
	assemble := func(cs []solver.Change) (*solver.Axle, error) { return a.Assemble(cs, solver.HoldAll) }
	x, err := assemble(cs)
	if err != nil {
		t.Fatal(err)
	}
	by := everyParameter(x.Design(), solver.HoldAll)
	tangents, err := x.Tangents(by)
	if err != nil {
		t.Fatal(err)
	}
	k, err := x.Statics(parts)
	if err != nil {
		t.Fatal(err)
	}
	at := func(p solver.Change, h float64) (out [2][8]float64) {
		p.Value = h
		if p.Parameter.Absolute {
			p.Value += settingNow(t, assemble, cs, p)
		}
		y, err := assemble(append(append([]solver.Change(nil), cs...), p))
		if err != nil {
			t.Fatal(err)
		}
		f := forcesOf(t, y, parts, &in)
		return [2][8]float64{figuresOf(&f[0]), figuresOf(&f[1])}
	}
	now := forcesOf(t, x, parts, &in)
	got := [2][]solver.Forces{make([]solver.Forces, len(by)), make([]solver.Forces, len(by))}
	for _, s := range solver.Sides {
		if !k.Rates(solver.NewWorkspace(), &in, s, tangents, got[s]) {
			t.Fatal("no rates")
		}
	}
	for i, p := range by {
		h, scale := 0.1, 1.0
		if p.Parameter.Quantity == solver.AngleQuantity {
			h, scale = 1e-3, 300
		}
		f := [4][2][8]float64{at(p, h), at(p, -h), at(p, 2*h), at(p, -2*h)}
		for _, s := range solver.Sides {
			size, rates := figuresOf(&now[s]), figuresOf(&got[s][i])
			for j, name := range forceNames {
				one, two := (f[0][s][j]-f[1][s][j])/(2*h), (f[2][s][j]-f[3][s][j])/(4*h)
				want, limit := one+(one-two)/3, rateAgrees
				if name == "stud" && p.Parameter.Key == "tieRodOuterHeight" && base == nil {
					// A stack bends the stud up and down alike: its curve has a kink at none.
					want, limit = (4*f[0][s][j]-f[2][s][j]-3*size[j])/(2*h), 1e-5
				}
				most := math.Max(math.Abs(want), math.Abs(size[j]))
				switch name {
				case "pull", "shear":
					most = math.Max(most, math.Abs(size[0]))
				case "twist":
					most = math.Max(most, size[5])
				}
				if !(math.Abs(rates[j]-want) <= limit*scale*most) {
					t.Errorf("%s, %s, %s: rate %.12g, differences give %.12g", p.Key(), s, name, rates[j], want)
				}
			}
		}
	}
}

var forceNames = [8]string{"tie rod", "spring", "pull", "shear", "twist", "bend", "stud", "drag link"}

// figuresOf are the figures of forces that have rates.
func figuresOf(f *solver.Forces) [8]float64 {
	return [8]float64{f.TieRod, f.Spring, f.Arm.Pull, f.Arm.Shear, f.Arm.Twist, f.Arm.Bend, f.StudBending, f.DragLink}
}
