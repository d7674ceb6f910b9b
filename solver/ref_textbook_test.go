package solver_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// Limits of agreement with the textbook's double wishbone.
const (
	textbookAngle  = 1e-8 // deg: the tables have nine places
	textbookLength = 1e-6 // mm
)

const rillSource = "G. Rill, A. Arrieta Castro, *Road Vehicle Dynamics*, 2nd ed., CRC Press 2020, ch. 5, double wishbone with rack. " +
	"Coordinates read in three public copies of its listing, figures recomputed from them. " +
	"Its output angles are turns about +z and +x: toe and camber here are their negatives, camber the projected angle atan2(-e.z, e.y). " +
	"Its contact point lies one tyre radius from the centre along the wheel."

var textbookReferences = []reference{
	{"Textbook double wishbone: static values", rillSource, rillStatic},
	{"Textbook double wishbone: travel", rillSource, rillTravel},
	{"Textbook double wishbone: rotation of the lower arm", rillSource, rillArm},
	{"Textbook double wishbone: rack, the lower arm held", rillSource, rillRack},
	{"Textbook double wishbone: instantaneous screw", rillSource + " Velocities per unit travel of the wheel centre.", rillScrew},
}

// rillGround is the textbook car with its tyre radius measured straight down.
func rillGround(t testing.TB) *solver.Axle {
	d := rillDesign(t)
	d.TyreRadius *= math.Cos(float64(rillCamber))
	return assembled(t, d, nil)
}

// projected returns the camber seen along the car.
func projected(p *solver.Position) float64 {
	return solver.Angle(math.Atan(math.Tan(float64(p.Camber)) / math.Cos(float64(p.Toe)))).Degrees()
}

func rillStatic(t *testing.T) []claim {
	x := rillGround(t)
	p := swept(t, x, solver.SweepInput{Travels: []float64{0}, Ground: true})[solver.Left].Positions[0]
	return []claim{
		{"kingpin inclination", "deg", 10.518207022, p.KingpinInclination.Degrees(), textbookAngle},
		{"caster", "deg", 7.056096038, p.Caster.Degrees(), textbookAngle},
		{"caster trail at the ground", "mm", 30.325552, p.Trail, textbookLength},
		{"kingpin offset at the ground", "mm", 1.032709, p.ScrubRadius, textbookLength},
		{"camber", "deg", 0.799948018, p.Camber.Degrees(), textbookAngle},
	}
}

// rillCurve are toe, camber and the movement of the wheel centre by travel.
var rillCurve = [][5]float64{
	{-60, -0.192330650, -0.556595489, +3.039500, -16.308438},
	{-50, -0.152228635, -0.197731237, +2.526011, -12.573099},
	{-40, -0.116281742, +0.098479149, +2.015560, -9.278106},
	{-30, -0.083676747, +0.340541423, +1.507865, -6.394205},
	{-20, -0.053760872, +0.534957874, +1.002762, -3.898285},
	{-10, -0.026009271, +0.686774740, +0.500157, -1.771854},
	{0, 0, +0.799948018, 0, 0},
	{+10, +0.024605306, +0.877595325, -0.497733, +1.429335},
	{+20, +0.048076460, +0.922173504, -0.993047, +2.525877},
	{+30, +0.070626519, +0.935606208, -1.485939, +3.297393},
	{+40, +0.092421144, +0.919376742, -1.976393, +3.749977},
	{+50, +0.113586122, +0.874596109, -2.464389, +3.888251},
	{+60, +0.134213492, +0.802052817, -2.949899, +3.715521},
}

func rillTravel(t *testing.T) []claim {
	in := solver.SweepInput{Instant: true}
	for _, row := range rillCurve {
		in.Travels = append(in.Travels, row[0])
	}
	ps := swept(t, rillGround(t), in)[solver.Left].Positions
	var cs []claim
	for i, row := range rillCurve {
		p := &ps[i]
		at := fmt.Sprintf(" at %+g mm", row[0])
		cs = append(cs,
			claim{"toe" + at, "deg", row[1], p.Toe.Degrees(), textbookAngle},
			claim{"camber" + at, "deg", row[2], projected(p), textbookAngle},
			claim{"wheel centre, x" + at, "mm", row[3], p.WheelCentre.X, textbookLength},
			claim{"wheel centre, y" + at, "mm", row[4], p.WheelCentre.Y - 768, textbookLength})
	}
	now := &ps[len(ps)/2].Instant
	return append(cs,
		claim{"toe slope at 0", "deg/m", 2.525704797, 1000 * solver.Angle(now.ToeRate).Degrees(), textbookAngle},
		claim{"camber slope at 0", "deg/m", 9.495070674, 1000 * solver.Angle(now.CamberRate).Degrees(), textbookAngle})
}

// rillTurns are wheel travel, toe and camber by the rotation of the lower arm.
var rillTurns = [][4]float64{
	{-10, -70.198596, -0.238563122, -0.998916570},
	{-6, -42.566893, -0.125160698, +0.027910529},
	{-2, -14.310941, -0.037736595, +0.626275889},
	{+2, +14.406200, +0.035073133, +0.901187744},
	{+6, +43.425631, +0.099737097, +0.907205542},
	{+10, +72.591766, +0.159517754, +0.671969119},
}

func rillArm(t *testing.T) []claim {
	x := rillGround(t)
	var cs []claim
	for _, row := range rillTurns {
		p := heldArm(t, x, solver.Deg(row[0]), 0)
		w := &p.Wheel[solver.Left]
		at := fmt.Sprintf(" at %+g deg", row[0])
		cs = append(cs,
			claim{"travel" + at, "mm", row[1], w.WheelCentre.Z, textbookLength},
			claim{"toe" + at, "deg", row[2], w.Toe.Degrees(), textbookAngle},
			claim{"camber" + at, "deg", row[3], projected(w), textbookAngle})
	}
	return cs
}

func rillRack(t *testing.T) []claim {
	x := rillGround(t)
	var cs []claim
	for _, row := range [][2]float64{
		{-74.5, 39.936201}, {-42.571428571, 19.082106}, {-10.642857143, 4.467475},
		{10.642857143, -4.370392}, {42.571428571, -17.249414}, {74.5, -30.306066},
	} {
		p := heldArm(t, x, 0, row[0])
		cs = append(cs, claim{fmt.Sprintf("steer at %+.4f mm", row[0]), "deg", row[1], -p.Wheel[solver.Left].Toe.Degrees(), 1e-6})
	}
	return cs
}

// heldArm returns the textbook car with its left lower arm turned from the static
// position by angle, bump positive: the travel at which it is, by the secant rule.
func heldArm(t *testing.T, x *solver.Axle, angle solver.Angle, steer float64) *solver.Placed {
	t.Helper()
	var p solver.Placed
	ws := solver.NewWorkspace()
	miss := func(travel float64) float64 {
		if err := x.Place(ws, [2]float64{travel, travel}, steer, &p); err != nil {
			t.Fatal(err)
		}
		return float64(armTurn(x, &p) - angle)
	}
	a, b := 0.0, 400*float64(angle)+1
	fa, fb := miss(a), miss(b)
	for range 20 {
		if math.Abs(fb) <= 1e-14 || fa == fb {
			break
		}
		a, b, fa = b, b-fb*(b-a)/(fb-fa), fb
		fb = miss(b)
	}
	near(t, "turn of the lower arm", fb, 0, 1e-12)
	return &p
}

// armTurn returns the turn of the left lower arm from the static position, bump
// positive.
func armTurn(x *solver.Axle, p *solver.Placed) solver.Angle {
	front, rear, ball := x.StaticPoint(solver.Left, 0), x.StaticPoint(solver.Left, 1), x.StaticPoint(solver.Left, 2)
	k := r3.Unit(r3.Sub(front, rear))
	arm := func(v solver.Vec) solver.Vec {
		d := r3.Sub(v, rear)
		return r3.Sub(d, r3.Scale(r3.Dot(d, k), k))
	}
	a, b := arm(ball), arm(p.Side[solver.Left][2])
	return solver.Angle(math.Atan2(r3.Dot(k, r3.Cross(a, b)), r3.Dot(a, b)))
}

func rillScrew(t *testing.T) []claim {
	omega, v := solver.Movement(rillGround(t), solver.Left)
	omega = r3.Scale(1000, omega)
	return []claim{
		{"angular velocity, x", "rad/m", -0.1657202460, omega.X, 1e-9},
		{"angular velocity, y", "rad/m", -0.5968459690, omega.Y, 1e-9},
		{"angular velocity, z", "rad/m", -0.0357483228, omega.Z, 1e-9},
		{"velocity of the wheel centre, x", "1", -0.0498942456, v.X, 1e-9},
		{"velocity of the wheel centre, y", "1", 0.1598793978, v.Y, 1e-9},
		{"pitch of the screw", "m", -0.319257102, r3.Dot(omega, v) / r3.Norm2(omega), 1e-8},
	}
}
