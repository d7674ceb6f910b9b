package solver_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/solver"
)

// keptLength is the limit within which a part keeps its size, mm; movedLength is
// the least change that counts as one.
const (
	keptLength  = 1e-9
	movedLength = 1e-2
	setAngle    = 1e-9 // deg, of a setpoint
)

// at returns the static place of a point of the left side, or of neither side.
func at(t *testing.T, x *solver.Axle, name string) solver.Vec {
	t.Helper()
	k := x.Design().Kind
	named := func(h solver.Hardpoint) bool { return h.Name == name }
	if i := slices.IndexFunc(k.SidePoints, named); i >= 0 {
		return x.StaticPoint(solver.Left, i)
	}
	if i := slices.IndexFunc(k.CommonPoints, named); i >= 0 {
		return x.StaticCommonPoint(i)
	}
	t.Fatalf("no point %s", name)
	return solver.Vec{}
}

// rodLength returns the static length of a rod, "inner-outer".
func rodLength(t *testing.T, x *solver.Axle, rod string) float64 {
	t.Helper()
	inner, outer, _ := strings.Cut(rod, "-")
	return r3.Norm(r3.Sub(at(t, x, outer), at(t, x, inner)))
}

// Rods of each kind but the tie rod.
var (
	wishboneRods = []string{"lowerFrontPivot-lowerBallJoint", "lowerRearPivot-lowerBallJoint", "upperFrontPivot-upperBallJoint", "upperRearPivot-upperBallJoint"}
	strutRods    = wishboneRods[:2]
	swingArmRods = []string{"frontPivot-kingpinLower", "rearPivot-kingpinLower", "frontPivot-kingpinUpper", "rearPivot-kingpinUpper"}
	fourRods     = []string{"rods.0.inner-rods.0.outer", "rods.1.inner-rods.1.outer", "rods.2.inner-rods.2.outer", "rods.3.inner-rods.3.outer"}
)

// An adjusterCase says what an adjuster changes: rods that change length and body
// points that move. All else stays as it is.
type adjusterCase struct {
	specimen  int
	adjuster  string
	rods      []string
	lengthens []string
	moves     []string
}

var adjusterCases = []adjusterCase{
	{0, "upper-legs", wishboneRods, wishboneRods[2:], nil},
	{0, "upper-pivots", wishboneRods, nil, []string{"upperFrontPivot", "upperRearPivot"}},
	{0, "lower-legs", wishboneRods, wishboneRods[:2], nil},
	{0, "lower-pivots", wishboneRods, nil, []string{"lowerFrontPivot", "lowerRearPivot"}},
	{2, "top-mount", strutRods, nil, []string{"strutTop"}},
	{2, "lower-legs", strutRods, strutRods, nil},
	{2, "lower-pivots", strutRods, nil, []string{"lowerFrontPivot", "lowerRearPivot"}},
	{6, "kingpin", swingArmRods, swingArmRods[2:], nil},
	{7, "kingpin", swingArmRods, swingArmRods[2:], nil},
	{3, "upper-legs", fourRods, fourRods[:2], nil},
	{3, "upper-pivots", fourRods, nil, []string{"rods.0.inner", "rods.1.inner"}},
	{3, "lower-legs", fourRods, fourRods[2:], nil},
	{3, "lower-pivots", fourRods, nil, []string{"rods.2.inner", "rods.3.inner"}},
}

// TestAdjusters sets toe, camber, caster and ride height on every kind, with every
// part that may take them up.
func TestAdjusters(t *testing.T) {
	for _, tt := range adjusterCases {
		p := &specimens[tt.specimen]
		t.Run(p.kind+", "+tt.adjuster, func(t *testing.T) {
			d := p.design(t)
			d.Adjuster = tt.adjuster
			base := assembled(t, d, nil)
			caster := home(t, base).Caster.Degrees() + 1.5
			x := assembled(t, d, map[string]float64{"toe": 0.3, "camber": -1.2, "caster": caster, "rideHeight": -12})
			now := home(t, x)
			near(t, "toe", now.Toe.Degrees(), 0.3, setAngle)
			near(t, "camber", now.Camber.Degrees(), -1.2, setAngle)
			near(t, "caster", now.Caster.Degrees(), caster, setAngle)
			near(t, "height of the wheel centre", now.WheelCentre.Z-home(t, base).WheelCentre.Z, 12, keptLength)
			tt.checkRods(t, base, x)
			tt.checkBody(t, base, x)
			checkKnuckle(t, base, x)
		})
	}
}

// TestEveryAdjusterIsChecked keeps the table above whole.
func TestEveryAdjusterIsChecked(t *testing.T) {
	for _, k := range solver.Kinds() {
		if k.Name == "solid-axle" {
			continue // its one adjuster: TestHoldAxle
		}
		for _, a := range k.Adjusters() {
			if !slices.ContainsFunc(adjusterCases, func(c adjusterCase) bool {
				return specimens[c.specimen].kind == k.Name && c.adjuster == a.Key
			}) {
				t.Errorf("adjuster %s of a %s is not checked", a.Key, k.Name)
			}
		}
	}
}

// home returns the left wheel in the static position.
func home(t *testing.T, x *solver.Axle) *solver.Position {
	t.Helper()
	return &swept(t, x, solver.SweepInput{Travels: []float64{0}})[solver.Left].Positions[0]
}

func (c *adjusterCase) checkRods(t *testing.T, base, x *solver.Axle) {
	t.Helper()
	for _, rod := range c.rods {
		by := rodLength(t, x, rod) - rodLength(t, base, rod)
		if slices.Contains(c.lengthens, rod) {
			if !(math.Abs(by) > movedLength) {
				t.Errorf("%s changes its length by %g mm, want a change", rod, by)
			}
			continue
		}
		near(t, "change of length of "+rod, by, 0, keptLength)
	}
}

// checkBody holds every body point where it was but for those that move, which
// keep their height.
func (c *adjusterCase) checkBody(t *testing.T, base, x *solver.Axle) {
	t.Helper()
	for _, h := range x.Design().Kind.SidePoints {
		if h.Body == solver.Knuckle {
			continue
		}
		by := r3.Sub(at(t, x, h.Name), at(t, base, h.Name))
		near(t, "height of "+h.Name, by.Z, 0, keptLength)
		if slices.Contains(c.moves, h.Name) {
			if !(r3.Norm(by) > movedLength) {
				t.Errorf("%s moves by %g mm, want a movement", h.Name, r3.Norm(by))
			}
			continue
		}
		near(t, "movement of "+h.Name, r3.Norm(by), 0, keptLength)
	}
}

// checkKnuckle holds the distances between all points of the knuckle.
func checkKnuckle(t *testing.T, base, x *solver.Axle) {
	t.Helper()
	var names []string
	for _, h := range x.Design().Kind.SidePoints {
		if h.Body == solver.Knuckle {
			names = append(names, h.Name)
		}
	}
	for i, a := range names {
		for _, b := range names[:i] {
			pair := a + "-" + b
			near(t, "distance "+pair, rodLength(t, x, pair), rodLength(t, base, pair), keptLength)
		}
	}
}

// holds are all sets of setpoints that may be held.
func holds() []solver.Hold {
	var hs []solver.Hold
	for h := solver.HoldNone; h <= solver.HoldAll; h++ {
		hs = append(hs, h)
	}
	return hs
}

func holdName(h solver.Hold) string {
	var names []string
	for name, one := range map[string]solver.Hold{"toe": solver.HoldToe, "camber": solver.HoldCamber, "caster": solver.HoldCaster} {
		if h&one != 0 {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return fmt.Sprint(names)
}

// lowered returns the car 20 mm lower with some setpoints held.
func lowered(t *testing.T, d *solver.Design, h solver.Hold) *solver.Axle {
	t.Helper()
	x, err := solver.Assemble(d, []solver.Change{change(t, d, "rideHeight", -20)}, h)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// checkHeld holds an angle where it is held, and wants it changed where it floats.
func checkHeld(t *testing.T, what string, held bool, was, is solver.Angle) {
	t.Helper()
	if held {
		near(t, what, is.Degrees(), was.Degrees(), setAngle)
	} else if was == is {
		t.Errorf("%s stays at %g deg though it floats", what, is.Degrees())
	}
}

// TestHold lowers every independent suspension with every set of setpoints held.
// Those that float keep the parts' lengths: of the two rods that would take up
// camber and caster, both where both float, else their difference for camber
// alone and their sum for caster alone.
func TestHold(t *testing.T) {
	for _, tt := range []struct {
		specimen int
		pair     [2]string // none for a strut, whose mount moves
	}{
		{0, [2]string{wishboneRods[2], wishboneRods[3]}}, {2, [2]string{}}, {3, [2]string{fourRods[0], fourRods[1]}},
		{6, [2]string{swingArmRods[2], swingArmRods[3]}}, {7, [2]string{swingArmRods[2], swingArmRods[3]}},
	} {
		p := &specimens[tt.specimen]
		for _, h := range holds() {
			t.Run(p.kind+", "+holdName(h), func(t *testing.T) {
				d := p.design(t)
				base, x := assembled(t, d, nil), lowered(t, d, h)
				was, is := home(t, base), home(t, x)
				camber, caster := h&solver.HoldCamber != 0, h&solver.HoldCaster != 0
				checkHeld(t, "toe", h&solver.HoldToe != 0, was.Toe, is.Toe)
				checkHeld(t, "camber", camber, was.Camber, is.Camber)
				checkHeld(t, "caster", caster, was.Caster, is.Caster)
				if h&solver.HoldToe == 0 {
					near(t, "tie rod", rodLength(t, x, "tieRodInner-tieRodOuter"), rodLength(t, base, "tieRodInner-tieRodOuter"), keptLength)
				}
				if tt.pair[0] == "" {
					checkMount(t, base, x, camber, caster)
				} else {
					checkPair(t, base, x, tt.pair, camber, caster)
				}
				checkKnuckle(t, base, x)
			})
		}
	}
}

// checkPair holds the lengths of the two rods that take up camber and caster.
func checkPair(t *testing.T, base, x *solver.Axle, pair [2]string, camber, caster bool) {
	t.Helper()
	a := rodLength(t, x, pair[0]) - rodLength(t, base, pair[0])
	b := rodLength(t, x, pair[1]) - rodLength(t, base, pair[1])
	switch {
	case !camber && !caster:
		near(t, "first rod", a, 0, keptLength)
		near(t, "second rod", b, 0, keptLength)
	case !caster:
		near(t, "difference of the rods' changes", a-b, 0, keptLength)
	case !camber:
		near(t, "sum of the rods' changes", a+b, 0, keptLength)
	}
}

// checkMount holds the place of a strut's mount: sideways where camber floats, fore
// and aft where caster does.
func checkMount(t *testing.T, base, x *solver.Axle, camber, caster bool) {
	t.Helper()
	by := r3.Sub(at(t, x, "strutTop"), at(t, base, "strutTop"))
	near(t, "mount, up", by.Z, 0, keptLength)
	if !camber {
		near(t, "mount, sideways", by.Y, 0, keptLength)
	}
	if !caster {
		near(t, "mount, fore and aft", by.X, 0, keptLength)
	}
}

// TestHoldAxle lowers a solid axle and raises its caster: the upper link takes it
// up, tie rod and drag link the toe, and all else keeps its length.
func TestHoldAxle(t *testing.T) {
	const tie, drag, upper = "tie", "dragLink.inner-dragLink.outer", "links.2.inner-links.2.outer"
	rods := []string{"links.0.inner-links.0.outer", "links.1.inner-links.1.outer", "links.3.inner-links.3.outer"}
	d := specimens[4].design(t)
	base := assembled(t, d, nil)
	tieRod := func(x *solver.Axle) float64 {
		return r3.Norm(r3.Sub(x.StaticPoint(solver.Left, 2), x.StaticPoint(solver.Right, 2)))
	}
	for _, h := range []solver.Hold{solver.HoldNone, solver.HoldToe, solver.HoldCaster, solver.HoldToe | solver.HoldCaster} {
		t.Run(holdName(h), func(t *testing.T) {
			x := lowered(t, d, h)
			was, is := home(t, base), home(t, x)
			checkHeld(t, "toe", h&solver.HoldToe != 0, was.Toe, is.Toe)
			checkHeld(t, "mean caster", h&solver.HoldCaster != 0, meanCaster(t, base), meanCaster(t, x))
			near(t, "height of the wheel centre", is.WheelCentre.Z-was.WheelCentre.Z, 20, keptLength)
			for _, rod := range rods {
				near(t, rod, rodLength(t, x, rod), rodLength(t, base, rod), keptLength)
			}
			if h&solver.HoldCaster == 0 {
				near(t, upper, rodLength(t, x, upper), rodLength(t, base, upper), keptLength)
			}
			if h&solver.HoldToe == 0 {
				near(t, drag, rodLength(t, x, drag), rodLength(t, base, drag), keptLength)
				near(t, tie, tieRod(x), tieRod(base), keptLength)
			}
		})
	}
}

// meanCaster returns the mean of both casters in the static position.
func meanCaster(t *testing.T, x *solver.Axle) solver.Angle {
	t.Helper()
	c := swept(t, x, solver.SweepInput{Travels: []float64{0}})
	return (c[solver.Left].Positions[0].Caster + c[solver.Right].Positions[0].Caster) / 2
}

// TestCasterMovesArm: caster turns the knuckle, so the steering arm's ball rises or
// falls and the toe curve with it. Four degrees on a ball 125 mm behind the wheel
// centre are some 9 mm.
func TestCasterMovesArm(t *testing.T) {
	d := specimens[0].design(t)
	base := assembled(t, d, nil)
	x := assembled(t, d, map[string]float64{"caster": home(t, base).Caster.Degrees() + 4})
	rise := at(t, x, "tieRodOuter").Z - at(t, base, "tieRodOuter").Z
	arm := at(t, base, "wheelCentre").X - at(t, base, "tieRodOuter").X
	near(t, "rise of the ball", math.Abs(rise), arm*math.Sin(4*math.Pi/180), 3)
	slope := func(x *solver.Axle) float64 {
		ps := swept(t, x, solver.SweepInput{Travels: []float64{0}, Instant: true})[solver.Left].Positions
		return degPerMetre(ps[0].Instant.ToeRate)
	}
	if a, b := slope(base), slope(x); !(math.Abs(a-b) > 5) {
		t.Errorf("toe slope %g deg/m becomes %g, want a change of more than 5", a, b)
	}
}

// TestAdjusterRates compares the derivatives of the toe with differences for every
// adjuster: what takes up a setpoint moves with each parameter.
func TestAdjusterRates(t *testing.T) {
	for _, tt := range adjusterCases {
		p := &specimens[tt.specimen]
		t.Run(p.kind+", "+tt.adjuster, func(t *testing.T) {
			d := p.design(t)
			d.Adjuster = tt.adjuster
			caster := home(t, assembled(t, d, nil)).Caster.Degrees() + 1.5
			base := []solver.Change{change(t, d, "camber", -1.2), change(t, d, "caster", caster), change(t, d, "rideHeight", -12)}
			checkRates(t, d, base, solver.SweepInput{Travels: []float64{-30, 0, 25}})
		})
	}
}
