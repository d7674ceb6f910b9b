package engine

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/study"
	"toewright/solver"
)

// standingTo returns how the base car stands to one limit.
func standingTo(t *testing.T, d *study.Document) LimitResult {
	t.Helper()
	got, err := Standing(t.Context(), d, StandingOptions{})
	if err != nil || len(got.Limits) != 1 {
		t.Fatalf("%+v, %v, want how the car stands to one limit", got, err)
	}
	return got.Limits[0]
}

// besideInner keeps the inner ball of the saloon, 335 mm from the middle and 9 mm thick,
// off a plane: the rack moves it 60 mm either way and the travel not at all.
const besideInner = `{"result": "clearance", "of": "inner-ball", "radius": 9, "plane": {"point": [0, %d, 0], "normal": [0, %d, 0]}, "min": %g%s}`

// TestLimitAtLockByHand: the clearance at lock is that straight ahead less the rack's
// travel, towards the middle at one lock, away from it at the other.
func TestLimitAtLockByHand(t *testing.T) {
	const lock = `, "at": "lock"`
	const rounding = 1e-9 // mm
	for _, tt := range []struct {
		name         string
		from, normal int
		min          float64
		at           string
		want         float64
		held         bool
		steer        float64
	}{
		{"held straight ahead", 250, 1, 20, "", 335 - 250 - 9, true, 0},
		{"broken at lock", 250, 1, 20, lock, 335 - 250 - 9 - 60, false, -60},
		{"held at lock too", 250, 1, 10, lock, 335 - 250 - 9 - 60, true, -60},
		{"the other lock", 400, -1, 20, lock, 400 - 335 - 9 - 60, false, 60},
		{"broken straight ahead already", 330, 1, 20, "", 335 - 330 - 9, false, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			limit := fmt.Sprintf(besideInner, tt.from, tt.normal, tt.min, `, "side": "left"`+tt.at)
			l := standingTo(t, limitedStudy(t, limit))
			near(t, "clearance", float64(l.Value), tt.want, rounding)
			if l.Held != tt.held {
				t.Errorf("held %t, want %t: %+v", l.Held, tt.held, l)
			}
			if (l.At != nil) != (tt.at != "") {
				t.Fatalf("position %+v of a limit with %q", l.At, tt.at)
			}
			if l.At != nil && (l.At.Steer != tt.steer || l.At.Side != "left") {
				t.Errorf("at %+v, want the left wheel at %g mm", l.At, tt.steer)
			}
		})
	}
}

// TestLimitAtLockStraightBinds: the ball and the rim are both fixed to the knuckle, so that
// no lock brings them nearer: broken straight ahead is broken at lock, and named there.
func TestLimitAtLockStraightBinds(t *testing.T) {
	const limit = `{"result": "clearance", "of": "outer-ball", "radius": 12, "rim": {"radius": 190, "offset": 40}, "min": 60%s}`
	straight := standingTo(t, limitedStudy(t, fmt.Sprintf(limit, "")))
	lock := standingTo(t, limitedStudy(t, fmt.Sprintf(limit, `, "at": "lock"`)))
	near(t, "clearance also at lock", float64(lock.Value), float64(straight.Value), 1e-9)
	if straight.Held || lock.Held || lock.At == nil || lock.At.Lock != "" || lock.At.Steer != 0 {
		t.Errorf("straight ahead %+v, also at lock %+v at %+v; want both broken, straight ahead", straight, lock, lock.At)
	}
}

// triad returns the directions of a frame that three points of a body make.
func triad(a, b, c solver.Vec) [3]solver.Vec {
	x := r3.Unit(r3.Sub(b, a))
	z := r3.Unit(r3.Cross(x, r3.Sub(c, a)))
	return [3]solver.Vec{x, r3.Cross(z, x), z}
}

// carried returns a direction of a body that has gone from one frame to another.
func carried(dir solver.Vec, from, to [3]solver.Vec) solver.Vec {
	var out solver.Vec
	for i := range from {
		out = r3.Add(out, r3.Scale(r3.Dot(dir, from[i]), to[i]))
	}
	return out
}

// between returns the angle of two directions, degrees.
func between(a, b solver.Vec) float64 {
	return math.Acos(r3.Dot(a, b)/r3.Norm(a)/r3.Norm(b)) * 180 / math.Pi
}

// TestBallAnglesAtLockByHand measures the angles between the rod, from ball to ball, and
// the axes of its joints with the points of the car alone: the stud turns with the knuckle,
// which three of its points show; the rack's joint stays in line with the rack.
func TestBallAnglesAtLockByHand(t *testing.T) {
	const tolerance = 1e-6 // degrees; an arc cosine of small angles rounds to no better
	stud := solver.Vec{X: 0.3, Y: 0.1, Z: 0.9}
	d := document(t, `"tieRod": {"outerBall": {"cone": 20, "axis": [0.3, 0.1, 0.9]}},
		"search": {"window": {"bump": 40, "droop": 40, "step": 20}, "variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}],
		"limits": [{"result": "innerBallAngle", "max": 15, "side": "left", "at": "lock"}, {"result": "outerBallAngle", "side": "left", "at": "lock"}]},`)
	got, err := Standing(t.Context(), d, StandingOptions{})
	if err != nil {
		t.Fatal(err)
	}
	s, err := newJudge(d, "")
	if err != nil {
		t.Fatal(err)
	}
	base, err := s.byName(study.BaseName)
	if err != nil {
		t.Fatal(err)
	}
	var static, at solver.Placed
	place := func(travel, steer float64, out *solver.Placed) (knuckle [3]solver.Vec, rod solver.Vec) {
		if err := base.axle.Place(s.ws, [2]float64{travel, travel}, steer, out); err != nil {
			t.Fatal(err)
		}
		p, kind := out.Side[solver.Left], s.design.Kind
		point := func(role solver.Role) solver.Vec { return p[roleIndex(kind, role)] }
		outer := point(solver.TieRodOuterRole)
		return triad(point(solver.LowerBallRole), p[pointIndex(kind, "upperBallJoint")], outer), r3.Sub(outer, point(solver.TieRodInnerRole))
	}
	home, _ := place(0, 0, &static)
	inner, outer := 0.0, 0.0
	for _, steer := range []float64{-60, 0, 60} {
		for _, travel := range []float64{-40, -20, 0, 20, 40} {
			knuckle, rod := place(travel, steer, &at)
			inner = max(inner, between(rod, solver.Vec{Y: 1}))
			outer = max(outer, math.Abs(90-between(rod, carried(stud, home, knuckle))))
		}
	}
	near(t, "inner ball", float64(got.Limits[0].Value), inner, tolerance)
	near(t, "outer ball", float64(got.Limits[1].Value), outer, tolerance)
	for _, l := range got.Limits {
		if l.At == nil || l.At.Lock == "" {
			t.Errorf("%s at %+v, want it at full lock", l.Name, l.At)
		}
	}
}

// pointIndex returns the place of a hardpoint by its name.
func pointIndex(k *solver.Kind, name string) int {
	for i, h := range k.SidePoints {
		if h.Name == name {
			return i
		}
	}
	return -1
}

// TestLockOfEachGear: the lock is of the gear's own quantity, on axles of every kind of
// gear, and its hand is that to which the wheels turn.
func TestLockOfEachGear(t *testing.T) {
	for _, key := range []string{"double-wishbone-rack-front-steer", "double-wishbone-centre-link", "solid-axle-pitman", "strut-rack"} {
		t.Run(key, func(t *testing.T) {
			d := study.Template{Key: key}.Document()
			// The drag link of the invented field car ends at some 35 deg, before the
			// 38 that it states.
			if d.Steering.Type == study.CentreLink {
				d.Steering.Lock = 30
			}
			most := 1.0
			d.Search.Scenarios = nil // the car as it stands is what is swept again below
			d.Search.Limits = []study.Limit{{Result: "innerBallAngle", Max: &most, At: study.AtLock, Side: study.Left}}
			l := standingTo(t, d)
			if !l.Value.Valid() || l.At == nil || l.At.Lock == "" {
				t.Fatalf("%+v, want a value at full lock", l)
			}
			s, err := newJudge(d, "")
			if err != nil {
				t.Fatal(err)
			}
			base, err := s.byName(study.BaseName)
			if err != nil {
				t.Fatal(err)
			}
			steer := s.steer(l.At.Steer)
			var out [2]solver.Curve
			in := solver.SweepInput{Travels: []float64{d.Units.Millimetres(l.At.Travel)}, From: solver.Attitude{Steer: steer}, Joints: s.joints(base.axle)}
			if err := base.axle.Sweep(s.ws, &in, &out); err != nil {
				t.Fatal(err)
			}
			near(t, "angle where it is said to be", out[solver.Left].Positions[0].Joints.Inner.Degrees(), float64(l.Value), 1e-9)
			p, err := steered(base.axle, s.ws, steer, solver.Attitude{})
			if left := float64(p.Wheel[solver.Left]+p.Wheel[solver.Right]) > 0; err != nil || left != (l.At.Lock == "left") {
				t.Errorf("full %s lock, but the wheels turn by %.3g and %.3g deg", l.At.Lock, p.Wheel[0].Degrees(), p.Wheel[1].Degrees())
			}
			if math.Abs(l.At.Steer) != d.Steering.Lock {
				t.Errorf("lock %g, want %g as the study states it", l.At.Steer, d.Steering.Lock)
			}
		})
	}
}

// TestLimitAtLockOutOfReach: a lock that the linkage does not reach breaks the limit, and
// the link in the way is named.
func TestLimitAtLockOutOfReach(t *testing.T) {
	for _, limit := range []string{
		`{"result": "outerBallAngle", "max": 40, "at": "lock"}`,
		`{"result": "clearance", "of": "tie-rod", "radius": 9, "link": {"from": "lowerRearPivot", "to": "lowerBallJoint"}, "min": 1, "at": "lock"}`,
	} {
		d := limitedStudy(t, limit)
		d.Steering.Lock = 250
		l := standingTo(t, d)
		if l.Value.Valid() || l.Held || l.At == nil || l.At.Link != "tie rod" || !strings.HasPrefix(l.Problem, "tie rod stands in the way at ") || !strings.Contains(l.Problem, "lock") {
			t.Errorf("%s: %+v at %+v, want it broken by the tie rod", l.Name, l, l.At)
		}
		_, err := Search(t.Context(), d, SearchOptions{})
		wantError(t, err, Unsolvable, "search", "steering.lock")
		room, err := MapRoom(t.Context(), d, MapOptions{Columns: new(2), Rows: new(2)})
		if err != nil {
			t.Fatal(err)
		}
		for i, r := range room {
			if !(r < 0) {
				t.Errorf("%s: room %g in cell %d, want less than none", l.Name, r, i)
			}
		}
	}
}

// TestDragLinkEndsBeforeLock states more lock for the invented field car than its drag link
// lets it take.
func TestDragLinkEndsBeforeLock(t *testing.T) {
	template := study.Template{Key: "solid-axle-pitman"}
	d, most := template.Document(), 40.0
	if held := standingTo(t, limitedAtLock(d, most)); !held.Held {
		t.Errorf("%+v, want the template's own lock in reach", held)
	}
	d.Steering.Lock = 38
	if l := standingTo(t, limitedAtLock(d, most)); l.Held || l.Value.Valid() || !strings.HasPrefix(l.Problem, "drag link stands in the way at static height and full left lock") {
		t.Errorf("%+v, want the drag link in the way", l)
	}
}

// limitedAtLock limits the outer ball's angle, in degrees, at lock too and nothing else.
func limitedAtLock(d *study.Document, most float64) *study.Document {
	d.Search.Limits = []study.Limit{{Result: "outerBallAngle", Max: &most, At: study.AtLock}}
	return d
}

// TestTravelEndsAtLock: an axle that reaches full lock at its static height, but there
// not all of its travel, breaks a limit at lock.
func TestTravelEndsAtLock(t *testing.T) {
	d := limitedStudy(t, `{"result": "outerBallAngle", "max": 89, "at": "lock"}`)
	d.Search.Window = &study.Travel{Bump: 120, Droop: 120, Step: 20}
	reached, ended := 0, 0
	for lock := 90.0; lock <= 103; lock++ {
		d.Steering.Lock = lock
		l := standingTo(t, d)
		switch {
		case l.Value.Valid():
			reached++
		case l.At.Travel != 0:
			ended++
			if l.Held || l.At.Link == "" || !(math.Abs(l.At.Travel) < 120) {
				t.Errorf("lock %g mm: %+v at %+v, want it broken where the travel ends", lock, l, l.At)
			}
		}
	}
	if reached == 0 || ended == 0 {
		t.Errorf("%d locks are reached over the whole window, %d not over all of it; want some of both", reached, ended)
	}
}

// TestLimitAtLockIsRefused: where no lock is stated, or the result has none.
func TestLimitAtLockIsRefused(t *testing.T) {
	d := limitedStudy(t, `{"result": "steeringArmLength", "max": 150}, {"result": "outerBallAngle", "max": 20, "at": "lock"}`)
	d.Steering.Lock = 0
	calls := map[string]func() error{
		"search": func() error { _, err := Search(t.Context(), d, SearchOptions{}); return err },
		"choose": func() error { _, err := Choose(t.Context(), d, ChooseOptions{}); return err },
		"room":   func() error { _, err := MapRoom(t.Context(), d, MapOptions{Columns: new(2), Rows: new(2)}); return err },
	}
	for name, call := range calls {
		t.Run(name, func(t *testing.T) { wantError(t, call(), Wrong, "search.limits.1.at", "state steering.lock") })
	}
	m, err := Map(t.Context(), d, MapOptions{Columns: new(2), Rows: new(2)})
	if err != nil || !strings.Contains(m.Limits[1].Problem, "steering.lock") {
		t.Errorf("map: %+v, %v, want why the limit cannot be measured", m.Limits, err)
	}
	c, err := Compare(t.Context(), d, CompareOptions{Candidate: "base"})
	if err != nil || !strings.Contains(c.Served[0].Limits[1].Problem, "steering.lock") {
		t.Errorf("compare: %+v, %v, want why the limit cannot be measured", c.Served, err)
	}
	standing := func() []LimitResult {
		s, err := Standing(t.Context(), d, StandingOptions{})
		if err != nil {
			t.Fatal(err)
		}
		return s.Limits
	}
	if l := standing(); !l[0].Held || l[0].Problem != "" || !l[1].Unmeasured() || !strings.Contains(l[1].Problem, "steering.lock") {
		t.Errorf("standing %+v, want the first held and why the second cannot be measured", l)
	}
	d.Steering.Lock = 60
	d.Search.Limits[0].At = study.AtLock
	if l := standing(); !strings.HasPrefix(l[0].Problem, "search.limits.0.at: ") || !strings.Contains(l[0].Problem, "steeringArmLength") || !l[1].Held {
		t.Errorf("standing %+v, want why the first cannot be measured and the second held", l)
	}
}

// TestSearchAtLock: a bound that the answer without a limit holds straight ahead and
// breaks at lock turns the search, and the limit says where it binds.
func TestSearchAtLock(t *testing.T) {
	const limit = `{"result": "innerBallAngle", "max": %.6f%s}`
	free := searchOf(t, limitedStudy(t, ""), SearchOptions{}).Best
	straight := measured(t, limitedStudy(t, fmt.Sprintf(limit, 90.0, "")), free.Values)
	lock := measured(t, limitedStudy(t, fmt.Sprintf(limit, 90.0, `, "at": "lock"`)), free.Values)
	if !(lock > straight+0.5) {
		t.Fatalf("inner ball %.4f deg straight ahead, %.4f deg at lock: want them apart", straight, lock)
	}
	bound := (lock + straight) / 2
	ahead := searchOf(t, limitedStudy(t, fmt.Sprintf(limit, bound, "")), SearchOptions{})
	near(t, "rms with the limit straight ahead", float64(ahead.Best.RMS), float64(free.RMS), 1e-6)
	r := searchOf(t, limitedStudy(t, fmt.Sprintf(limit, bound, `, "at": "lock"`)), SearchOptions{})
	if l := r.Limits[0]; !l.Held || l.At == nil || l.At.Lock == "" || l.Name != "innerBallAngle at lock" || !r.Converged {
		t.Errorf("%+v at %+v, %s; want it held, and where it binds", l, l.At, r.Status)
	}
	near(t, "angle on its bound", float64(r.Limits[0].Value), bound, 1e-3)
	if !(r.Best.RMS > free.RMS) {
		t.Errorf("rms %g with the limit, %g without; want more", float64(r.Best.RMS), float64(free.RMS))
	}
}

// TestConflictAtLock: a limit that no car within the bounds holds says at which steer and
// travel it is broken.
func TestConflictAtLock(t *testing.T) {
	r := searchOf(t, limitedStudy(t, `{"result": "innerBallAngle", "max": 3, "at": "lock"}`), SearchOptions{})
	if len(r.Conflict) != 1 || r.Conflict[0] != "innerBallAngle at lock" {
		t.Errorf("conflict %q, want the limit", r.Conflict)
	}
	l := r.Limits[0]
	where := l.Where(func(x float64) string { return fmt.Sprintf("%g mm", x) })
	if l.Held || !strings.HasPrefix(where, "at 40 mm ") || !strings.Contains(where, " lock (") {
		t.Errorf("%+v, %q; want it broken at an end of the travel and a lock", l, where)
	}
}

// TestLimitAtLockDerivative holds the difference by which the search takes the derivative
// of a limit, over a millionth of a variable's range, against Richardson's of wide steps.
func TestLimitAtLockDerivative(t *testing.T) {
	const share, wide, agree = 1e-6, 0.2, 1e-5
	for _, limit := range []string{
		`{"result": "innerBallAngle", "max": 20, "side": "left", "at": "lock"}`,
		`{"result": "outerBallAngle", "max": 20, "side": "left", "at": "lock"}`,
		`{"result": "clearance", "of": "tie-rod", "side": "left", "radius": 9, "link": {"from": "lowerRearPivot", "to": "lowerBallJoint"}, "min": 1, "at": "lock"}`,
	} {
		d := limitedStudy(t, limit)
		for _, v := range d.Search.Variables {
			at := func(h float64) float64 {
				return measured(t, d, study.Changes{"tieRodOuterHeight": -6, v.Parameter: d.Search.Variables[0].Max/5 + h})
			}
			central := func(h float64) float64 { return (at(h) - at(-h)) / (2 * h) }
			want := (4*central(wide/2) - central(wide)) / 3
			got := central(share * (v.Max - v.Min))
			if !(math.Abs(got-want) <= agree*(1+math.Abs(want))) {
				t.Errorf("%s by %s: %.8f, want %.8f", limit, v.Parameter, got, want)
			}
		}
	}
}

// TestStraightIsAsBefore: a limit that says "straight" gives the bytes of one that says
// nothing.
func TestStraightIsAsBefore(t *testing.T) {
	var answers []string
	for _, at := range []string{"", `, "at": "straight"`} {
		d := limitedStudy(t, `{"result": "outerBallAngle", "max": 6.5`+at+`}, {"result": "clearance", "of": "tie-rod", "rim": {"radius": 190, "offset": 40}, "min": 6`+at+`}`)
		text, err := json.Marshal(searchOf(t, d, SearchOptions{}))
		if err != nil {
			t.Fatal(err)
		}
		answers = append(answers, string(text))
	}
	if answers[0] != answers[1] || strings.Contains(answers[0], `"at":`) {
		t.Errorf("without the key:\n%s\nwith it:\n%s", answers[0], answers[1])
	}
}
