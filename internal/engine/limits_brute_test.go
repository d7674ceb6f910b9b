package engine

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/study"
	"toewright/solver"
)

// bruteTravels is how many positions along the window the recount below takes: some twenty
// times those of the study's own grid.
const bruteTravels = 150

// bruteLimits are limits of every result, each once by its least and once by its largest.
func bruteLimits(d *study.Document) (list []study.Limit) {
	u := d.Units.FromMillimetres
	low, high := -1e9, 1e9
	add := func(l study.Limit) {
		for _, at := range []string{"", study.AtLock} {
			if k, _ := study.KindOfLimit(l.Result); at != "" && !(k.Travels && geared(d)) {
				continue
			}
			for _, bound := range []study.Limit{{Min: &low}, {Max: &high}} {
				bounded := l
				bounded.At, bounded.Min, bounded.Max = at, bound.Min, bound.Max
				list = append(list, bounded)
			}
		}
	}
	for _, k := range study.LimitKinds {
		faced := !k.Face || d.Suspension.Left.ArmFace != nil
		if d.Has(&k) && faced && k.Key != study.Clearance && (geared(d) || !asksSteering[k.Key]) {
			add(study.Limit{Result: k.Key})
		}
	}
	points := d.Suspension.Left.Points
	from, to := "lowerRearPivot", "lowerBallJoint"
	for name := range points {
		if points["lowerBallJoint"] == (study.Vec3{}) && (from == "lowerRearPivot" || name < from) {
			from = name // of a multi-link or an axle: any link will do
		}
	}
	if from != "lowerRearPivot" {
		to = "wheelCentre"
		if d.HasDragLink() {
			from, to = "links.0.inner", "links.0.outer"
		}
	}
	for _, p := range study.ClearParts {
		if p.SolidAxle && !d.HasDragLink() {
			continue
		}
		part := study.Limit{Result: study.Clearance, Of: p.Key, Radius: u(9)}
		plane, rim, link := part, part, part
		plane.Plane = &study.Plane{Point: study.Vec3{0, u(300), u(90)}, Normal: study.Vec3{0.1, 0.3, 1}}
		rim.Rim = &study.Rim{Radius: u(170), Offset: u(30)}
		link.Link = &study.Link{From: from, To: to, Radius: u(12)}
		add(plane)
		add(link)
		if strings.HasSuffix(string(p.Key), "ball") { // of a rod it takes a hundred times as long
			add(rim)
		}
	}
	return list
}

// geared reports whether the axle is steered.
func geared(d *study.Document) bool { return d.Steering != nil && d.Steering.Type != study.NoGear }

// asksSteering are the results of a steered axle alone.
var asksSteering = map[study.LimitKey]bool{"steeringRatio": true, "turningCircle": true, "ackermann": true, "toeOutOnTurns": true}

// bruteStudy is a template with an odd window, all that limits ask for, and set-ups with
// attitudes of their own; written writes its right side out, unlike moves points of it.
func bruteStudy(t *testing.T, tpl study.Template, written, unlike bool) *study.Document {
	t.Helper()
	d := loaded(t, tpl)
	u := d.Units.FromMillimetres
	d.Travel = &study.Travel{Bump: u(47), Droop: u(38.5), Step: u(17)}
	d.TieRod = &study.TieRod{Engagement: u(20), MinEngagement: u(8), MaxEngagement: u(33), OuterBall: d.TieRod.OuterBall}
	if d.HasDragLink() {
		d.DragLink = &study.TieRod{Engagement: u(25), MinEngagement: u(8), OuterBall: &study.BallJoint{Axis: &study.Vec3{0.1, 0.2, 1}, Cone: 20}}
	}
	steer := 0.0
	if g := d.Steering; geared(d) {
		g.Lock *= 0.6
		steer = g.Lock / 4
	}
	d.Search = &study.Search{
		Variables: []study.Variable{{Parameter: "tieRodOuterHeight", Min: u(-5), Max: u(5)}},
		Scenarios: []study.Scenario{
			{Name: "at rest"},
			{Name: "dives and rolls", Changes: study.Changes{"caster": 7}, Attitude: &study.Attitude{Heave: u(9), Roll: 1.2, Steer: steer}},
		},
	}
	d.Search.Limits = bruteLimits(d)
	if (written || unlike) && d.Suspension.Right == nil {
		right := d.Suspension.Left.Mirrored()
		d.Suspension.Right = &right
	}
	if unlike {
		for name, by := range map[string]study.Vec3{"tieRodOuter": {u(3), u(-2), u(6)}, "steeringArmBalls": {u(2), u(3), u(5)}, "wheelCentre": {0, u(-3), 0}} {
			if p, ok := d.Suspension.Right.Points[name]; ok {
				d.Suspension.Right.Points[name] = study.Vec3{p[0] + by[0], p[1] + by[1], p[2] + by[2]}
			}
		}
	}
	return d
}

// TestLimitsByBruteForce holds what every limit measures, on every suspension and gear, at
// rest and in an attitude, on like and unlike sides, against a recount with the solver
// alone at positions twenty times as near together; and a car whose right side is
// written out against the same car mirrored.
func TestLimitsByBruteForce(t *testing.T) {
	for _, tpl := range study.Templates() {
		for _, unlike := range []bool{false, true} {
			t.Run(fmt.Sprintf("%s/unlike %t", tpl.Key, unlike), func(t *testing.T) {
				d := bruteStudy(t, tpl, false, unlike)
				if unlike {
					wantCounted(t, d, limitsOf(t, d), recount(t, d))
					return
				}
				written := bruteStudy(t, tpl, true, false)
				for _, d := range []*study.Document{d, written} {
					d.Search.Scenarios = d.Search.Scenarios[1:] // the attitude
				}
				got := limitsOf(t, d)
				for i, w := range limitsOf(t, written) {
					if !(math.Abs(float64(got[i].Value-w.Value)) <= 1e-6) || !got[i].Held || !w.Held {
						t.Errorf("%s, %s: %.9f mirrored, %.9f written out", w.Name, w.Scenario, got[i].Value, w.Value)
					}
				}
			})
		}
	}
}

// kink is how far a count may miss the least angle of a joint below sharp, degrees: that
// goes to about 0 and up again at once, between two positions of the count.
const kink, sharp = 0.08, 1.0

// wantCounted holds what limits measure against a count of the same.
func wantCounted(t *testing.T, d *study.Document, got []LimitResult, want []float64) {
	t.Helper()
	for i := range got {
		l := &d.Search.Limits[i%len(d.Search.Limits)]
		k, _ := study.KindOfLimit(l.Result)
		more, less := 1e-3, 1e-3
		if l.Result == "turningCircle" {
			more, less = 1e-2, 1e-2 // of metres
		}
		if l.Min != nil && k.Unit == study.LimitAngle && want[i] < sharp {
			less = kink
		}
		v := float64(got[i].Value)
		if !(v-want[i] <= more && want[i]-v <= less) || !got[i].Held {
			t.Errorf("%s, %s, min %t: %.6f, want %.6f (%s)", got[i].Name, got[i].Scenario, l.Min != nil, v, want[i], got[i].Problem)
		}
	}
}

// limitsOf returns how the base car stands to each limit in each set-up.
func limitsOf(t *testing.T, d *study.Document) []LimitResult {
	t.Helper()
	c, err := Compare(t.Context(), d, CompareOptions{Candidate: study.BaseName})
	if err != nil {
		t.Fatal(err)
	}
	return c.Served[0].Limits
}

// recount returns what each limit of each set-up measures, counted with the solver alone.
func recount(t *testing.T, d *study.Document) (out []float64) {
	t.Helper()
	design, err := d.Design()
	if err != nil {
		t.Fatal(err)
	}
	a, err := solver.NewAssembler(design)
	if err != nil {
		t.Fatal(err)
	}
	base, err := a.Assemble(nil, solver.HoldAll)
	if err != nil {
		t.Fatal(err)
	}
	for _, up := range d.Search.Scenarios {
		changes, err := d.SolverChanges(design, up.Changes)
		if err != nil {
			t.Fatal(err)
		}
		car, err := a.Assemble(changes, solver.HoldAll)
		if err != nil {
			t.Fatal(err)
		}
		c := &counter{t: t, d: d, base: base, car: car, ws: solver.NewWorkspace()}
		if a := up.Attitude; a != nil {
			heave := d.Units.Millimetres(a.Heave)
			if c.from, err = base.Attitude(solver.BodyPosition{Heave: heave, Roll: solver.Deg(a.Roll), Steer: c.input(a.Steer)}); err != nil {
				t.Fatal(err)
			}
		}
		for i := range d.Search.Limits {
			c.ranges = append(c.ranges, [2]float64{math.Inf(1), math.Inf(-1)})
			c.once(i)
		}
		c.count()
		for i, r := range c.ranges {
			if d.Search.Limits[i].Min != nil {
				out = append(out, r[0])
			} else {
				out = append(out, r[1])
			}
		}
	}
	return out
}

// counter counts the least and the largest value of every limit of a car.
type counter struct {
	t         *testing.T
	d         *study.Document
	base, car *solver.Axle
	ws        *solver.Workspace
	from      solver.Attitude
	ranges    [][2]float64
}

// input returns a steering input in mm or radians.
func (c *counter) input(x float64) float64 {
	if c.base.Gear().Quantity() == solver.AngleQuantity {
		return x * math.Pi / 180
	}
	return c.d.Units.Millimetres(x)
}

func (c *counter) see(i int, v float64) {
	r := &c.ranges[i]
	r[0], r[1] = math.Min(r[0], v), math.Max(r[1], v)
}

// once counts a result that does not go with travel.
func (c *counter) once(i int) {
	l := &c.d.Search.Limits[i]
	u := c.d.Units.FromMillimetres
	room := func(rod *study.TieRod, engaged float64) float64 {
		left := engaged - rod.MinEngagement
		if rod.MaxEngagement > 0 {
			left = math.Min(left, rod.MaxEngagement-engaged)
		}
		return left
	}
	dragged := u(c.car.Rods().Drag - c.base.Rods().Drag)
	if k, _ := study.KindOfLimit(l.Result); k.Loaded {
		c.forces(i)
	}
	for _, s := range solver.Sides {
		grown := u(c.car.Rods().Tie[s] - c.base.Rods().Tie[s])
		switch l.Result {
		case "tieRodLength":
			c.see(i, u(c.car.Rods().Tie[s]))
		case "threadEngagement":
			c.see(i, c.d.TieRod.Engagement-grown)
		case "adjusterRange":
			c.see(i, room(c.d.TieRod, c.d.TieRod.Engagement-grown))
		case "dragLinkLength":
			c.see(i, u(c.car.Rods().Drag))
		case "dragLinkThreadEngagement":
			c.see(i, c.d.DragLink.Engagement-dragged)
		case "dragLinkAdjusterRange":
			c.see(i, room(c.d.DragLink, c.d.DragLink.Engagement-dragged))
		case "steeringArmLength":
			c.see(i, u(c.car.SteeringArm(s)))
		case "steeringArmOffset":
			c.see(i, 0)
		case "ackermann", "toeOutOnTurns":
			c.turn(i, s)
		case "turningCircle", "steeringRatio":
			c.steered(i, s)
		}
	}
}

// forces counts what is found under the load cases, about the attitude.
func (c *counter) forces(i int) {
	s, err := newCars(c.d)
	if err != nil {
		c.t.Fatal(err)
	}
	k, err := c.car.Statics(s.loadParts())
	if err != nil {
		c.t.Fatal(err)
	}
	for j := range c.d.Loads {
		in := s.loadCase(&c.d.Loads[j])
		in.Attitude = solver.Attitude{Heave: in.Heave + c.from.Heave, Roll: c.from.Roll, Steer: in.Steer + c.from.Steer}
		var out [2]solver.Forces
		if err := k.Forces(c.ws, &in, &out); err != nil {
			c.t.Fatal(err)
		}
		for _, s := range solver.Sides {
			f := &out[s]
			if f.Spring == 0 {
				continue // nothing acts on the wheel
			}
			c.see(i, math.Abs(map[study.LimitKey]float64{
				"tieRodLoad": f.TieRod, "armTwist": f.Arm.Twist / 1000, "armBend": f.Arm.Bend / 1000, "studBending": f.StudBending,
			}[c.d.Search.Limits[i].Result]))
		}
	}
}

// turn counts what is judged with one wheel at 20 degrees into the turn, found between
// two of many steering inputs.
func (c *counter) turn(i int, s solver.Side) {
	hand := 1.0
	if s == solver.Right {
		hand = -1
	}
	most := c.input(c.d.Steering.Lock) * 2.5
	var in solver.SteerInput
	const n = 4000
	for k := -n; k <= n; k++ {
		in.Inputs = append(in.Inputs, most*float64(k)/n)
	}
	in.At = c.from
	var curve solver.SteerCurve
	if err := c.car.Steer(c.ws, &in, &curve); err != nil {
		c.t.Fatal(err)
	}
	for k := 1; k < len(curve.Points); k++ {
		p, q := &curve.Points[k-1], &curve.Points[k]
		a, b := hand*p.Wheel[s].Degrees()-20, hand*q.Wheel[s].Degrees()-20
		if (a < 0) == (b < 0) {
			continue
		}
		outer := (hand*p.Wheel[1-s].Degrees()*b - hand*q.Wheel[1-s].Degrees()*a) / (b - a)
		v := 20 - outer
		if c.d.Search.Limits[i].Result == "ackermann" {
			cot := 1/math.Tan(20*math.Pi/180) + c.car.KingpinTrack()/c.car.Design().Wheelbase
			v = 100 * v / (20 - math.Atan(1/cot)*180/math.Pi)
		}
		c.see(i, v)
		return
	}
	c.t.Fatalf("%s: the %s wheel does not reach 20 deg", c.d.Search.Limits[i].Result, s)
}

// steered counts what is judged at a lock, or at the attitude's own steering input.
func (c *counter) steered(i int, s solver.Side) {
	lock, h := c.input(c.d.Steering.Lock), 1e-4
	in := solver.SteerInput{Inputs: []float64{-lock, c.from.Steer - h, c.from.Steer + h, lock}, At: c.from}
	var curve solver.SteerCurve
	if err := c.car.Steer(c.ws, &in, &curve); err != nil || len(curve.Points) != 4 {
		c.t.Fatalf("steering: %d points, %v", len(curve.Points), err)
	}
	mean := func(p *solver.SteerPoint) float64 {
		return (p.Wheel[solver.Left].Radians() + p.Wheel[solver.Right].Radians()) / 2
	}
	if c.d.Search.Limits[i].Result == "steeringRatio" {
		rate := (mean(&curve.Points[2]) - mean(&curve.Points[1])) / (2 * h)
		c.see(i, math.Abs(2*math.Pi/(rate*c.input(c.d.Steering.PerTurn))))
		return
	}
	for _, k := range [2]int{0, 3} {
		if p := &curve.Points[k]; (mean(p) > 0) == (s == solver.Left) {
			outer := math.Abs(p.Wheel[1-s].Radians())
			d := 2*c.car.Design().Wheelbase/math.Sin(outer) + c.car.HalfTrack(solver.Left) + c.car.HalfTrack(solver.Right) - c.car.KingpinTrack()
			c.see(i, c.d.Units.FromMillimetres(d))
		}
	}
}

// count moves the car through the window, straight as its attitude has it and at both
// locks, and counts all that goes with travel.
func (c *counter) count() {
	mm := c.d.Units.Millimetres
	lo, hi := -mm(c.d.Travel.Droop), mm(c.d.Travel.Bump)
	steers := []float64{c.from.Steer}
	if geared(c.d) {
		lock := c.input(c.d.Steering.Lock)
		steers = append(steers, lock, -lock)
	}
	var at solver.Placed
	var gaps [2]float64
	for k, steer := range steers {
		for n := range bruteTravels + 1 {
			z := lo + (hi-lo)*float64(n)/bruteTravels
			z += c.from.Heave
			if err := c.car.Place(c.ws, [2]float64{z - c.from.Roll, z + c.from.Roll}, steer, &at); err != nil {
				c.t.Fatal(err)
			}
			last := -1
			for i := range c.d.Search.Limits {
				l := &c.d.Search.Limits[i]
				if l.Result != study.Clearance || k > 0 && l.At != study.AtLock {
					continue
				}
				if last < 0 || !sameGap(l, &c.d.Search.Limits[last]) {
					last = i
					for _, s := range solver.Sides {
						gaps[s] = c.d.Units.FromMillimetres(c.gap(l, &at, s)) - l.Radius
					}
				}
				c.see(i, gaps[solver.Left])
				c.see(i, gaps[solver.Right])
			}
		}
		c.angles(k, steer, lo, hi)
	}
}

// sameGap reports whether two limits are on one clearance.
func sameGap(a, b *study.Limit) bool {
	return a.Of == b.Of && a.Plane == b.Plane && a.Rim == b.Rim && a.Link == b.Link
}

// angles counts the angles of joints at one steering input.
func (c *counter) angles(k int, steer, lo, hi float64) {
	joints := c.car.Joints()
	joints.DragOuter.Axis = solver.Vec{X: 0.1, Y: 0.2, Z: 1}
	in := solver.SweepInput{Joints: joints, From: c.from}
	in.From.Steer = steer
	for n := range bruteTravels + 1 {
		in.Travels = append(in.Travels, lo+(hi-lo)*float64(n)/bruteTravels)
	}
	var out [2]solver.Curve
	if err := c.car.Sweep(c.ws, &in, &out); err != nil {
		c.t.Fatal(err)
	}
	for i := range c.d.Search.Limits {
		l := &c.d.Search.Limits[i]
		if k > 0 && l.At != study.AtLock {
			continue
		}
		for _, s := range solver.Sides {
			for n := range out[s].Positions {
				switch j := &out[s].Positions[n].Joints; l.Result {
				case "innerBallAngle":
					c.see(i, j.Inner.Degrees())
				case "outerBallAngle":
					c.see(i, j.Outer.Degrees())
				case "dragLinkOuterBallAngle":
					c.see(i, j.DragOuter.Degrees())
				}
			}
		}
	}
}

// gap returns the distance of a clearance's part on a side, mm.
func (c *counter) gap(l *study.Limit, at *solver.Placed, s solver.Side) float64 {
	mm := c.d.Units.Millimetres
	part := c.part(l.Of, at, s)
	switch {
	case l.Plane != nil:
		p, n := l.Plane.Point, l.Plane.Normal
		if s == solver.Right {
			p, n = p.Mirrored(), n.Mirrored()
		}
		normal := r3.Unit(solver.Vec{X: n[0], Y: n[1], Z: n[2]})
		point := solver.Vec{X: mm(p[0]), Y: mm(p[1]), Z: mm(p[2])}
		return math.Min(r3.Dot(normal, r3.Sub(part.A, point)), r3.Dot(normal, r3.Sub(part.B, point)))
	case l.Rim != nil:
		return solver.Rim{Radius: mm(l.Rim.Radius), Offset: mm(l.Rim.Offset)}.Clearance(at.Wheel[s].WheelCentre, at.Spin[s], part)
	}
	return solver.Segment{A: c.point(l.Link.From, at, s), B: c.point(l.Link.To, at, s)}.Distance(part) - mm(l.Link.Radius)
}

func (c *counter) part(of study.ClearKey, at *solver.Placed, s solver.Side) solver.Segment {
	inner, outer := "tieRodInner", "tieRodOuter"
	if c.d.HasDragLink() {
		outer = "steeringArmBalls"
	}
	a, b := c.point(inner, at, s), c.point(outer, at, s)
	drag := solver.Segment{A: c.point("dragLink.inner", at, s), B: c.point("dragLink.outer", at, s)}
	switch {
	case of == "drag-link":
		return drag
	case of == "drag-link-outer-ball":
		return solver.Segment{A: drag.B, B: drag.B}
	case of == "inner-ball" && c.d.HasDragLink():
		return solver.Segment{A: drag.A, B: drag.A}
	case of == "inner-ball":
		return solver.Segment{A: a, B: a}
	case of == "outer-ball":
		return solver.Segment{A: b, B: b}
	case c.d.HasDragLink():
		return solver.Segment{A: b, B: c.point(outer, at, 1-s)}
	}
	return solver.Segment{A: a, B: b}
}

// point returns the place of a hardpoint by name, nowhere where the car has none.
func (c *counter) point(name string, at *solver.Placed, s solver.Side) solver.Vec {
	k := c.car.Design().Kind
	for i, h := range k.SidePoints {
		if h.Name == name {
			return at.Side[s][i]
		}
	}
	for i, h := range k.CommonPoints {
		if h.Name == name {
			return at.Common[i]
		}
	}
	return solver.Vec{}
}
