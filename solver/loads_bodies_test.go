package solver_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// loadAgrees is how well two ways to a force agree, as a share of the largest force in
// the car: what a pose held to 1e-10 mm leaves.
const loadAgrees = 1e-9

// springPlaces are those where a spring can stand, each on the kinds that have it.
var springPlaces = []string{"knuckle", "lower-arm", "upper-arm", "own axis"}

// TestForcesBalanceEveryBody holds rod and spring against the statics of every body
// (any textbook of mechanics): each is cut free where it stands, and all reactions,
// those inside arms and at pivots too, are solved together. Every kind and gear, both
// sides, random loads, travels and steers.
func TestForcesBalanceEveryBody(t *testing.T) {
	r := seeded(61)
	for _, on := range springPlaces {
		eachCar(t, 61, func(t *testing.T, d *solver.Design, steer float64) {
			parts, ok := springsOn(d, on)
			if !ok {
				return
			}
			x := assembled(t, d, nil)
			k, err := x.Statics(parts)
			if err != nil {
				t.Fatal(err)
			}
			in := randomLoads(r, steer)
			ws := solver.NewWorkspace()
			var got [2]solver.Forces
			if err := k.Forces(ws, &in, &got); err != nil {
				t.Fatal(err)
			}
			b := cutFree(t, x, parts, &in)
			unknowns := b.solve(t)
			for _, s := range solver.Sides {
				checkForce(t, s.String()+" tie rod", got[s].TieRod, unknowns, b.tie[s])
				checkForce(t, s.String()+" spring, "+on, got[s].Spring, unknowns, b.spring[s])
				if x.Solid() {
					checkForce(t, "drag link", got[s].DragLink, unknowns, b.drag)
				}
			}
		})
	}
}

// checkForce compares a force with unknown i of those of all bodies.
func checkForce(t *testing.T, what string, got float64, unknowns []float64, i int) {
	t.Helper()
	size := 0.0
	for _, u := range unknowns {
		size = math.Max(size, math.Abs(u))
	}
	near(t, what, got, unknowns[i], loadAgrees*size)
}

// springsOn returns springs of usual places on a part, false where the kind has none.
func springsOn(d *solver.Design, on string) (*solver.LoadParts, bool) {
	p := &solver.LoadParts{}
	kind := d.Kind.Name
	carrier := map[string]solver.Carrier{"knuckle": solver.OnUpright, "lower-arm": solver.OnLowerArm, "upper-arm": solver.OnUpperArm}[on]
	switch {
	case on == "own axis":
		return p, kind == "strut"
	case on == "lower-arm" && (kind == "multi-link" || kind == "solid-axle"), on == "upper-arm" && kind != "double-wishbone":
		return nil, false
	}
	for _, s := range solver.Sides {
		wheel := wheelOf(d, s)
		in := func(x, part, z float64) solver.Vec {
			return solver.Vec{X: wheel.X + x, Y: part * wheel.Y, Z: wheel.Z + z}
		}
		spring := &solver.Spring{Body: in(-10, 0.62, 380), Wheel: in(15, 0.78, -90), On: carrier}
		if on == "upper-arm" {
			spring.Wheel = in(10, 0.7, 160)
		}
		p.Springs[s] = spring
	}
	return p, true
}

// wheelOf returns the wheel centre of a side as measured.
func wheelOf(d *solver.Design, s solver.Side) solver.Vec {
	for i, h := range d.Kind.SidePoints {
		if h.Role == solver.WheelCentreRole {
			return d.Points[s][i]
		}
	}
	panic("no wheel centre")
}

func randomLoads(r *rand.Rand, steer float64) solver.LoadCase {
	in := solver.LoadCase{Attitude: solver.Attitude{Heave: 50*r.Float64() - 25, Roll: 20*r.Float64() - 10, Steer: steer}}
	any := func(size float64) solver.Vec {
		return solver.Vec{X: size * (2*r.Float64() - 1), Y: size * (2*r.Float64() - 1), Z: size * (2*r.Float64() - 1)}
	}
	for s := range in.Wheels {
		in.Wheels[s] = solver.WheelLoad{Force: any(9000), Moment: any(4e5), AtCentre: r.IntN(2) == 0}
		in.Wheels[s].Force.Z += 3000
	}
	return in
}

// bodies is a car cut into its bodies: six equations for each, and an unknown for each
// reaction between two of them. Body -1 is the car's own.
type bodies struct {
	count   int
	columns [][]float64
	load    []float64
	tie     [2]int // unknowns
	spring  [2]int
	drag    int
	// grounded are the forces between a body and the car.
	grounded []grounded
}

// grounded is the unknown of a force on a body from the car, at a point.
type grounded struct {
	unknown int
	at, dir solver.Vec
}

const ground = -1

// add puts a wrench about the origin on a body's six equations.
func addWrench(column []float64, body int, force, moment solver.Vec) {
	if body == ground {
		return
	}
	for i, v := range []float64{force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z} {
		column[6*body+i] += v
	}
}

// force adds an unknown force along dir at a point, on a and against it on b.
func (b *bodies) force(on, against int, at, dir solver.Vec) int {
	column := make([]float64, 6*b.count)
	addWrench(column, on, dir, r3.Cross(at, dir))
	addWrench(column, against, r3.Scale(-1, dir), r3.Scale(-1, r3.Cross(at, dir)))
	b.columns = append(b.columns, column)
	if against == ground {
		b.grounded = append(b.grounded, grounded{len(b.columns) - 1, at, dir})
	}
	return len(b.columns) - 1
}

// moment adds an unknown moment likewise.
func (b *bodies) moment(on, against int, dir solver.Vec) {
	column := make([]float64, 6*b.count)
	addWrench(column, on, solver.Vec{}, dir)
	addWrench(column, against, solver.Vec{}, r3.Scale(-1, dir))
	b.columns = append(b.columns, column)
}

// ball joins two bodies at a point; hinge at a point that may slide along an axis.
func (b *bodies) ball(on, against int, at solver.Vec) {
	for _, dir := range []solver.Vec{{X: 1}, {Y: 1}, {Z: 1}} {
		b.force(on, against, at, dir)
	}
}

// across returns two directions square to an axis and to each other.
func across(axis solver.Vec) [2]solver.Vec {
	p := r3.Unit(r3.Cross(axis, solver.Vec{X: 0.3, Y: -0.7, Z: 0.2}))
	return [2]solver.Vec{p, r3.Cross(r3.Unit(axis), p)}
}

func (b *bodies) slide(on, against int, at, axis solver.Vec) {
	for _, dir := range across(axis) {
		b.force(on, against, at, dir)
	}
}

// hinge joins an arm to the car on two pivots, the second of which slides.
func (b *bodies) hinge(arm int, front, rear solver.Vec) {
	b.ball(arm, ground, front)
	b.slide(arm, ground, rear, r3.Sub(rear, front))
}

// pin joins a knuckle to what carries its kingpin: it may turn about it alone.
func (b *bodies) pin(knuckle, carrier int, upper, lower solver.Vec) {
	b.ball(knuckle, carrier, lower)
	for _, dir := range across(r3.Sub(upper, lower)) {
		b.moment(knuckle, carrier, dir)
	}
}

// rod pulls a body's point towards another's, of tension 1.
func (b *bodies) rod(on, against int, at, towards solver.Vec) int {
	return b.force(on, against, at, r3.Unit(r3.Sub(towards, at)))
}

// solve returns the unknowns that balance the loads.
func (b *bodies) solve(t *testing.T) []float64 {
	t.Helper()
	n := 6 * b.count
	if len(b.columns) != n {
		t.Fatalf("%d unknowns for %d equations", len(b.columns), n)
	}
	a := mat.NewDense(n, n, nil)
	for j, c := range b.columns {
		for i, v := range c {
			if i%6 >= 3 {
				v /= 500 // moments at a lever of half a metre
			}
			a.Set(i, j, v)
		}
	}
	rhs := mat.NewVecDense(n, nil)
	for i, v := range b.load {
		if i%6 >= 3 {
			v /= 500
		}
		rhs.SetVec(i, -v)
	}
	var out mat.VecDense
	if err := out.SolveVec(a, rhs); err != nil {
		if _, only := err.(mat.Condition); !only {
			t.Fatal(err)
		}
	}
	return out.RawVector().Data
}

// cutFree returns the bodies of an axle where a load case has them.
func cutFree(t *testing.T, x *solver.Axle, parts *solver.LoadParts, in *solver.LoadCase) *bodies {
	t.Helper()
	ws := solver.NewWorkspace()
	var home, now solver.Placed
	if err := x.Place(ws, [2]float64{}, 0, &home); err != nil {
		t.Fatal(err)
	}
	if err := x.Place(ws, [2]float64{in.Heave - in.Roll, in.Heave + in.Roll}, in.Steer, &now); err != nil {
		t.Fatal(err)
	}
	b := &bodies{count: 6}
	if x.Solid() {
		b.count = 3
	}
	b.load = make([]float64, 6*b.count)
	if x.Solid() {
		b.cutAxle(x, parts, &home, &now, in)
		return b
	}
	// Corners are cut one by one into bodies of one system: knuckle and two arms each,
	// of which those that a kind has not are left out.
	count := map[string]int{"double-wishbone": 3, "strut": 2, "multi-link": 1, "swing-arm": 2}[x.Design().Kind.Name]
	b.count = 2 * count
	b.load = make([]float64, 6*b.count)
	for _, s := range solver.Sides {
		b.cutCorner(x, s, int(s)*count, parts.Springs[s], &home, &now)
		b.addLoad(int(s)*count, &now, s, &in.Wheels[s], x.TyreRadius(), x.Design().Kind)
	}
	return b
}

// addLoad puts a wheel's load on its knuckle.
func (b *bodies) addLoad(knuckle int, p *solver.Placed, s solver.Side, l *solver.WheelLoad, radius float64, k *solver.Kind) {
	at := p.Wheel[s].WheelCentre
	if !l.AtCentre {
		e := p.Spin[s]
		down := r3.Unit(r3.Sub(r3.Scale(e.Z, e), solver.Vec{Z: 1})) // in the wheel's plane
		at = r3.Add(at, r3.Scale(radius, down))
	}
	addWrench(b.load, knuckle, l.Force, r3.Add(l.Moment, r3.Cross(at, l.Force)))
}

// cutCorner cuts one side; its knuckle is body first, its arms follow.
func (b *bodies) cutCorner(x *solver.Axle, s solver.Side, first int, spring *solver.Spring, home, now *solver.Placed) {
	at := func(name string) solver.Vec { return placed(x, s, now, name) }
	lower, upper := first+1, first+2
	switch x.Design().Kind.Name {
	case "double-wishbone":
		b.hinge(lower, at("lowerFrontPivot"), at("lowerRearPivot"))
		b.hinge(upper, at("upperFrontPivot"), at("upperRearPivot"))
		b.ball(first, lower, at("lowerBallJoint"))
		b.ball(first, upper, at("upperBallJoint"))
	case "strut":
		b.hinge(lower, at("lowerFrontPivot"), at("lowerRearPivot"))
		b.ball(first, lower, at("lowerBallJoint"))
		b.slide(first, ground, at("strutTop"), r3.Sub(at("strutTop"), at("strutLower")))
	case "multi-link":
		for i := range 4 {
			b.rod(first, ground, at(fmt.Sprintf("rods.%d.outer", i)), at(fmt.Sprintf("rods.%d.inner", i)))
		}
	case "swing-arm":
		b.hinge(lower, at("frontPivot"), at("rearPivot"))
		b.pin(first, lower, at("kingpinUpper"), at("kingpinLower"))
	}
	b.tie[s] = b.rod(first, ground, at("tieRodOuter"), at("tieRodInner"))
	if spring == nil { // a strut's own: it pushes the knuckle away from the mount
		b.spring[s] = b.force(first, ground, at("strutTop"), r3.Unit(r3.Sub(at("strutLower"), at("strutTop"))))
		return
	}
	carrier := map[solver.Carrier]int{solver.OnUpright: first, solver.OnLowerArm: lower, solver.OnUpperArm: upper}[spring.On]
	moving := movedMount(x, s, spring, home, now)
	b.spring[s] = b.force(carrier, ground, moving, r3.Unit(r3.Sub(moving, spring.Body)))
}

// movedMount returns where a spring's mount has gone, by four of the points of the
// part that carries it.
func movedMount(x *solver.Axle, s solver.Side, spring *solver.Spring, home, now *solver.Placed) solver.Vec {
	on := map[string][4]string{
		"double-wishbone": {"lowerBallJoint", "upperBallJoint", "tieRodOuter", "wheelCentre"},
		"strut":           {"lowerBallJoint", "strutLower", "tieRodOuter", "wheelCentre"},
		"multi-link":      {"rods.0.outer", "rods.2.outer", "tieRodOuter", "wheelCentre"},
		"swing-arm":       {"kingpinLower", "kingpinUpper", "tieRodOuter", "wheelCentre"},
	}[x.Design().Kind.Name]
	switch {
	case spring.On == solver.OnLowerArm && x.Design().Kind.Name == "swing-arm":
		on = [4]string{"frontPivot", "rearPivot", "kingpinLower"}
	case spring.On == solver.OnLowerArm:
		on = [4]string{"lowerFrontPivot", "lowerRearPivot", "lowerBallJoint"}
	case spring.On == solver.OnUpperArm:
		on = [4]string{"upperFrontPivot", "upperRearPivot", "upperBallJoint"}
	}
	h, n := frame(x, on, s, home), frame(x, on, s, now)
	if on[3] == "" {
		h[3], n[3] = r3.Cross(h[1], h[2]), r3.Cross(n[1], n[2])
	}
	return r3.Add(n[0], turned(h, n, r3.Sub(spring.Wheel, h[0])))
}

// cutAxle cuts a solid axle: bodies 0 and 1 are the knuckles, 2 the beam.
func (b *bodies) cutAxle(x *solver.Axle, parts *solver.LoadParts, home, now *solver.Placed, in *solver.LoadCase) {
	const beam = 2
	h, n := beamFrame(home), beamFrame(now)
	for _, s := range solver.Sides {
		p := now.Side[s]
		b.pin(int(s), beam, p[0], p[1])
		b.addLoad(int(s), now, s, &in.Wheels[s], x.TyreRadius(), x.Design().Kind)
		moving := r3.Add(n[0], turned(h, n, r3.Sub(parts.Springs[s].Wheel, h[0])))
		b.spring[s] = b.force(beam, ground, moving, r3.Unit(r3.Sub(moving, parts.Springs[s].Body)))
	}
	for i := range 4 {
		b.rod(beam, ground, now.Common[2*i+1], now.Common[2*i])
	}
	b.drag = b.rod(int(x.Design().DragSide), ground, now.Common[9], now.Common[8])
	tie := b.rod(0, 1, now.Side[0][2], now.Side[1][2])
	b.tie = [2]int{tie, tie}
}
