package solver_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// softly states a stiffness for everything of a design that gives, N/mm.
func softly(r *rand.Rand, d *solver.Design) map[string]float64 {
	k := map[string]float64{}
	for _, name := range d.Members() {
		k[name] = 500 + 80000*r.Float64()
	}
	return k
}

// linearShare is how far the toe of a linkage that is solved again may be from the first
// order, as a share of what its members do: they give some thousandths of a millimetre.
const linearShare = 2e-4

// TestGiveSolvedAgain: the linkage solved again with every member as much longer, or its
// pivot elsewhere, as it gives, toes by the sum of the members' shares. Every kind and
// gear, springs wherever they can stand, both sides, random loads, attitudes and steers.
func TestGiveSolvedAgain(t *testing.T) {
	r := seeded(71)
	for _, on := range springPlaces {
		eachCar(t, 71, func(t *testing.T, d *solver.Design, steer float64) {
			parts, ok := springsOn(d, on)
			if !ok {
				return
			}
			parts.Stiffness = softly(r, d)
			for name := range parts.Stiffness {
				parts.Stiffness[name] *= 1000 // so that the second order is small
			}
			x := assembled(t, d, map[string]float64{"tieRodOuterHeight": 16*r.Float64() - 8})
			in := randomLoads(r, steer)
			if r.IntN(3) == 0 {
				in.Wheels[r.IntN(2)] = solver.WheelLoad{}
			}
			k, err := x.Statics(parts)
			if err != nil {
				t.Fatal(err)
			}
			got, want := forcesOf(t, x, parts, &in), solver.ToeGivenWay(t, k, &in)
			for _, s := range solver.Sides {
				sum, size := 0.0, 0.0
				for _, v := range got[s].Give {
					sum += v
					size += math.Abs(v)
				}
				near(t, s.String()+", spring on "+on, sum, want[s], linearShare*size)
			}
		})
	}
}

// TestGiveByEnergy holds what each member does to the toe against Castigliano's theorem:
// the toe is the derivative of the elastic energy by a moment that turns the wheel in toe,
// real force times that of a unit moment over the stiffness (any textbook of strength of
// materials). Both come from the reactions of bodies that are cut free, the wheels held
// at their heights by jacks in the second.
func TestGiveByEnergy(t *testing.T) {
	r := seeded(72)
	seen := map[string]int{}
	for _, on := range springPlaces {
		eachCar(t, 72, func(t *testing.T, d *solver.Design, steer float64) {
			parts, ok := springsOn(d, on)
			if !ok {
				return
			}
			seen[d.Kind.Name]++
			parts.Stiffness = softly(r, d)
			x := assembled(t, d, nil)
			in := randomLoads(r, steer)
			if r.IntN(3) == 0 {
				in.Wheels[r.IntN(2)] = solver.WheelLoad{}
			}
			got := forcesOf(t, x, parts, &in)
			real := reactionsOf(t, x, parts, &in, false)
			for _, s := range solver.Sides {
				unit := solver.LoadCase{Attitude: in.Attitude}
				unit.Wheels[s] = solver.WheelLoad{Moment: toeMoment(real.now.Spin[s], s), AtCentre: true}
				virtual := reactionsOf(t, x, parts, &unit, true)
				size := 0.0
				for _, v := range got[s].Give {
					size = math.Max(size, math.Abs(v))
				}
				for i, name := range d.Members() {
					near(t, s.String()+", "+name+", spring on "+on, got[s].Give[i], energy(t, x, name, parts.Stiffness, s, real, virtual), 1e-6*size)
				}
			}
		})
	}
	if len(seen) != len(solver.Kinds()) {
		t.Errorf("kinds looked at: %v", seen)
	}
}

// toeMoment is the derivative of the toe by a turn of the wheel about each axis.
func toeMoment(spin solver.Vec, s solver.Side) solver.Vec {
	toe := func(turn solver.Vec) float64 {
		a := s.Mirrored(r3.Add(spin, r3.Cross(turn, spin)))
		return math.Atan2(a.X, a.Y)
	}
	by := func(axis solver.Vec) float64 {
		const h = 1e-4
		return (toe(r3.Scale(h, axis)) - toe(r3.Scale(-h, axis))) / (2 * h)
	}
	return solver.Vec{X: by(solver.Vec{X: 1}), Y: by(solver.Vec{Y: 1}), Z: by(solver.Vec{Z: 1})}
}

// reactions are all forces between the bodies of a car.
type reactions struct {
	*bodies
	now      solver.Placed
	moving   [2]solver.Vec // the balls that the gear moves, by its movement
	pitman   float64       // and a pitman's own ball
	unknowns []float64
}

// reactionsOf solves them; jacks hold the wheels' centres in place of springs.
func reactionsOf(t *testing.T, x *solver.Axle, parts *solver.LoadParts, in *solver.LoadCase, jacks bool) *reactions {
	t.Helper()
	out := &reactions{bodies: cutFree(t, x, parts, in)}
	place := func(steer float64) (p solver.Placed) {
		travel := [2]float64{in.Heave - in.Roll, in.Heave + in.Roll}
		if err := x.Place(solver.NewWorkspace(), travel, steer, &p); err != nil {
			t.Fatal(err)
		}
		return p
	}
	out.now = place(in.Steer)
	if jacks {
		for _, s := range solver.Sides {
			column := make([]float64, 6*out.count)
			addWrench(column, int(s)*max(1, out.count/2*boolean(!x.Solid())), solver.Vec{Z: 1}, r3.Cross(out.now.Wheel[s].WheelCentre, solver.Vec{Z: 1}))
			out.columns[out.spring[s]] = column
		}
	}
	out.unknowns = out.solve(t)
	if x.Design().Gear.Kind == solver.NoGear {
		return out
	}
	h := 1e-2
	if x.Design().Gear.Kind == solver.CentreLink {
		h = 1e-4
	}
	up, down := place(in.Steer+h), place(in.Steer-h)
	rate := func(a, b solver.Vec) solver.Vec { return r3.Scale(1/(2*h), r3.Sub(a, b)) }
	for _, s := range solver.Sides {
		if x.Solid() {
			out.moving[s] = rate(up.Common[8], down.Common[8])
		} else {
			out.moving[s] = rate(placed(x, s, &up, "tieRodInner"), placed(x, s, &down, "tieRodInner"))
		}
	}
	out.pitman = 1
	if len(up.Gear) > 0 {
		out.pitman = r3.Norm(rate(up.Gear[1], down.Gear[1]))
	}
	return out
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}

// at returns the force on the car at a point of a reaction.
func (r *reactions) at(p solver.Vec) (sum solver.Vec) {
	for _, g := range r.grounded {
		if g.at == p && g.unknown != r.spring[0] && g.unknown != r.spring[1] {
			sum = r3.Add(sum, r3.Scale(r.unknowns[g.unknown], g.dir))
		}
	}
	return sum
}

// onGear returns the force on the steering by its movement.
func (r *reactions) onGear(x *solver.Axle) float64 {
	if x.Solid() {
		d := r3.Unit(r3.Sub(r.now.Common[9], r.now.Common[8]))
		return r.unknowns[r.drag] * r3.Dot(d, r.moving[0])
	}
	sum := 0.0
	for _, s := range solver.Sides {
		d := r3.Unit(r3.Sub(placed(x, s, &r.now, "tieRodOuter"), placed(x, s, &r.now, "tieRodInner")))
		sum += r.unknowns[r.tie[s]] * r3.Dot(d, r.moving[s])
	}
	return sum
}

// energy returns the derivative of a member's elastic energy.
func energy(t *testing.T, x *solver.Axle, name string, k map[string]float64, s solver.Side, real, virtual *reactions) float64 {
	t.Helper()
	product := func(at func(*reactions) solver.Vec) float64 { return r3.Dot(at(real), at(virtual)) / k[name] }
	switch {
	case name == "gear":
		return real.onGear(x) * virtual.onGear(x) / (k[name] * real.pitman * real.pitman)
	case name == "tieRod":
		return real.unknowns[real.tie[s]] * virtual.unknowns[virtual.tie[s]] / k[name]
	case name == "dragLink":
		return real.unknowns[real.drag] * virtual.unknowns[virtual.drag] / k[name]
	case strings.HasPrefix(name, "links."):
		i, _ := strconv.Atoi(strings.TrimPrefix(name, "links."))
		return product(func(r *reactions) solver.Vec { return r.at(r.now.Common[2*i+1]) })
	case strings.HasPrefix(name, "rods."):
		return product(func(r *reactions) solver.Vec { return r.at(placed(x, s, &r.now, name+".outer")) })
	case name == "strutTop":
		return product(func(r *reactions) solver.Vec { return r.at(placed(x, s, &r.now, name)) })
	}
	// A pivot: the bodies leave all that is along the hinge to the front one.
	frontName, rearName := strings.Replace(name, "Rear", "Front", 1), strings.Replace(name, "Front", "Rear", 1)
	if strings.HasPrefix(name, "front") || strings.HasPrefix(name, "rear") {
		frontName, rearName = "frontPivot", "rearPivot"
	}
	return product(func(r *reactions) solver.Vec {
		front, rear := placed(x, s, &r.now, frontName), placed(x, s, &r.now, rearName)
		hinge := r3.Unit(r3.Sub(front, rear))
		along := r3.Dot(hinge, r.at(front))
		across := r.at(placed(x, s, &r.now, name))
		across = r3.Sub(across, r3.Scale(r3.Dot(hinge, across), hinge))
		return r3.Add(across, r3.Scale(along*k[name]/(k[frontName]+k[rearName]), hinge))
	})
}

// TestGiveTurnsTheWheel: where the steering alone is soft a wheel gives way as its load
// turns it about the steering axis. Behind that axis, by its trail, a side force towards
// the turn makes the outer wheel toe out, which is compliance understeer; braking toes a
// wheel out whose contact stands outboard of the axis, by its scrub radius, and in where
// it stands inboard (both common practice).
func TestGiveTurnsTheWheel(t *testing.T) {
	eachCar(t, 73, func(t *testing.T, d *solver.Design, _ float64) {
		if d.Gear.Kind == solver.NoGear {
			return
		}
		parts, _ := springsOn(d, springOf(d))
		parts.Stiffness = map[string]float64{}
		for _, name := range d.Members() {
			parts.Stiffness[name] = 1e12
		}
		parts.Stiffness["tieRod"] = 3000
		if d.Kind.CommonPoints != nil {
			parts.Stiffness["dragLink"] = 3000
		}
		x := assembled(t, d, nil)
		p := home(t, x)
		sum := func(force solver.Vec) (sum float64) {
			in := solver.LoadCase{Wheels: [2]solver.WheelLoad{{Force: force}, {Force: mirrored(force)}}}
			if d.Kind.CommonPoints != nil { // one rod for both: each turns by its own moment alone
				in.Wheels[1] = solver.WheelLoad{}
			}
			for _, v := range forcesOf(t, x, parts, &in)[0].Give {
				sum += v
			}
			return sum
		}
		if side := sum(solver.Vec{Y: -3000}); math.Abs(p.Trail) > 12 && !(side*p.Trail < 0) {
			t.Errorf("trail %.1f mm: a side force towards the turn toes the outer wheel by %g", p.Trail, side)
		}
		if brake := sum(solver.Vec{X: -3000}); math.Abs(p.ScrubRadius) > 12 && !(brake*p.ScrubRadius < 0) {
			t.Errorf("scrub radius %.1f mm: braking toes the wheel by %g", p.ScrubRadius, brake)
		}
	})
}
