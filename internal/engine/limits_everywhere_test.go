package engine

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/study"
	"toewright/solver"
)

// everyLimit has each result that can be limited, with a bound that cuts off the
// part of the range in which the answer without limits lies: the search below ends
// at an outer ball some 9 mm lower, or a rod and an arm of another length.
var everyLimit = []struct{ name, limit string }{
	{"inner ball against its cone", `{"result": "innerBallAngle", "max": %g}`},
	{"outer ball against its cone", `{"result": "outerBallAngle", "max": %g}`},
	{"thread", `{"result": "threadEngagement", "min": %g}`},
	{"adjuster", `{"result": "adjusterRange", "min": %g}`},
	{"rod", `{"result": "tieRodLength", "max": %g}`},
	{"arm", `{"result": "steeringArmLength", "max": %g}`},
	{"arm offset", `{"result": "steeringArmOffset", "min": %g}`},
	{"ratio", `{"result": "steeringRatio", "max": %g}`},
	{"turning circle", `{"result": "turningCircle", "max": %g}`},
	{"Ackermann", `{"result": "ackermann", "max": %g}`},
	{"toe-out on turns", `{"result": "toeOutOnTurns", "max": %g}`},
	{"ball in the rim", `{"result": "clearance", "of": "outer-ball", "radius": 12, "rim": {"radius": 190, "offset": 40}, "min": %g}`},
	{"rod in the rim", `{"result": "clearance", "of": "tie-rod", "radius": 9, "rim": {"radius": 190, "offset": 40}, "min": %g}`},
	{"ball over a plane", `{"result": "clearance", "of": "outer-ball", "radius": 12, "plane": {"point": [0, 0, 100], "normal": [0, 0, 1]}, "min": %g}`},
	{"rod beside the lower arm", `{"result": "clearance", "of": "tie-rod", "radius": 9, "link": {"from": "lowerRearPivot", "to": "lowerBallJoint", "radius": 14}, "min": %g}`},
	{"inner ball at lock", `{"result": "innerBallAngle", "at": "lock", "max": %g}`},
	{"rod beside the lower arm at lock", `{"result": "clearance", "of": "tie-rod", "radius": 9, "link": {"from": "lowerRearPivot", "to": "lowerBallJoint", "radius": 14}, "at": "lock", "min": %g}`},
	{"rod under load", `{"result": "tieRodLoad", "max": %g}`},
	{"twist", `{"result": "armTwist", "max": %g}`},
	{"bend", `{"result": "armBend", "max": %g}`},
	{"stud", `{"result": "studBending", "max": %g}`},
	{"ball beside the upper arm", `{"result": "clearance", "of": "outer-ball", "radius": 15, "link": {"from": "upperRearPivot", "to": "upperBallJoint"}, "max": %g}`},
}

// limitedStudy is the saloon with a search for the lowest toe change by outer ball
// and arm, a catalogue, tolerances, and one limit.
func limitedStudy(t *testing.T, limit string) *study.Document {
	t.Helper()
	if limit != "" {
		limit = `, "limits": [` + limit + `]`
	}
	d := document(t, `"tieRod": {"engagement": 20, "minEngagement": 5, "maxEngagement": 40, "outerBall": {"cone": 28, "stud": {"diameter": 14, "height": 22}}},
	"loads": [{"name": "kerb", "travel": 10, "left": {"force": [-7000, -1100, 6000], "at": "wheel-centre"}},
		{"name": "brake and turn", "travel": 20, "steer": 8, "left": {"force": [-2400, -2900, 4100]}, "right": {"force": [-1100, -1300, 1700]}}],
	"search": {"window": {"bump": 40, "droop": 40, "step": 20}, "variables": [
		{"parameter": "tieRodOuterHeight", "min": -25, "max": 25, "grid": 0.5},
		{"parameter": "steeringArmLength", "min": -20, "max": 20, "sizes": [-20, -12, -4, 0, 4, 12, 20]},
		{"parameter": "steeringArmOffset", "min": -10, "max": 10}]`+limit+`},
	"tolerances": [{"parameter": "tieRodOuter.z", "plusMinus": 1}],
	"catalogue": [
		{"slot": "spacer", "name": "8 mm", "price": 5, "changes": {"tieRodOuterHeight": -8}},
		{"slot": "spacer", "name": "12 mm", "price": 6, "changes": {"tieRodOuterHeight": -12}},
		{"slot": "spacer", "name": "8 mm above", "price": 5, "changes": {"tieRodOuterHeight": 8}},
		{"slot": "arm", "name": "long", "price": 90, "changes": {"steeringArmLength": 12}},
		{"slot": "arm", "name": "short", "price": 90, "changes": {"steeringArmLength": -12}},
		{"slot": "arm", "name": "out", "price": 90, "changes": {"steeringArmOffset": 6}},
		{"slot": "arm", "name": "in", "price": 90, "changes": {"steeringArmOffset": -6}}],`)
	addSprings(t, d)
	d.Suspension.Left.ArmFace = &study.ArmFace{Point: study.Vec3{-35, 672, 255}, Normal: study.Vec3{-1, 0.05, 0.04}}
	return d
}

// measured returns what a limit measures on the car with changes.
func measured(t *testing.T, d *study.Document, changes study.Changes) float64 {
	t.Helper()
	s, err := newJudge(d, "")
	if err != nil {
		t.Fatal(err)
	}
	limit, err := s.limit(0)
	if err != nil {
		t.Fatal(err)
	}
	list, err := d.SolverChanges(s.design, changes)
	if err != nil {
		t.Fatal(err)
	}
	car, err := s.base.Assemble(list, solver.HoldAll)
	if err != nil {
		t.Fatal(err)
	}
	return float64(limit.State(car, solver.Attitude{}, solver.NewWorkspace()).Value)
}

// binding returns a bound half way between what a limit measures on the base car
// and on the answer without it, so that the base car holds it and that answer does
// not; false where there is none, above or below.
func binding(t *testing.T, limit string, free study.Changes) (string, bool) {
	t.Helper()
	for range 2 {
		d := limitedStudy(t, fmt.Sprintf(limit, 0.0))
		base, best := measured(t, d, nil), measured(t, d, free)
		if base != best && strings.Contains(limit, `"max"`) == (base < best) {
			return fmt.Sprintf(limit, (base+best)/2), true
		}
		limit = strings.NewReplacer(`"min": %g`, `"max": %g`, `"max": %g`, `"min": %g`).Replace(limit)
	}
	return limit, false
}

// TestEveryLimitInEverySearch sets each limit so that the answer without it breaks
// it, and holds every answer that a call gives then against the limit, measured on
// its own.
func TestEveryLimitInEverySearch(t *testing.T) {
	free := searchOf(t, limitedStudy(t, ""), SearchOptions{}).Best.Values
	for i, tt := range everyLimit {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			limit, differs := binding(t, tt.limit, free)
			if !differs {
				t.Fatalf("no bound of the limit parts the base car from the best")
			}
			d := limitedStudy(t, limit)
			if car := d.Bounded(&d.Search.Limits[0]); within(&car, measured(t, d, free)) {
				t.Fatalf("%s does not bind", limit)
			}
			for call, answers := range limitedAnswers(t, d, i%robustEvery == 0, i%tradeOffEvery == 0) {
				if len(answers) == 0 {
					t.Errorf("%s gives no answer", call)
				}
				for _, a := range answers {
					if v := measured(t, d, a); !within(&d.Search.Limits[0], v) {
						t.Errorf("%s: %v has %.6g, breaks %s", call, a, v, limit)
					}
				}
			}
		})
	}
}

// within reports whether a value holds a limit but for what no shop can measure.
func within(l *study.Limit, v float64) bool {
	const slack = 1e-3
	return (l.Min == nil || v >= *l.Min-slack) && (l.Max == nil || v <= *l.Max+slack)
}

// tradeOffEvery is how many limits share one trade-off, which takes ten times as
// long as a search and is one with a further limit.
const tradeOffEvery = 5

// robustEvery is the same of the robust search, half of all the time.
const robustEvery = 3

// limitedAnswers returns what every call that looks for cars finds.
func limitedAnswers(t *testing.T, d *study.Document, percentile, tradeOff bool) map[string][]study.Changes {
	t.Helper()
	out := map[string][]study.Changes{}
	r := searchOf(t, d, SearchOptions{})
	if len(r.Limits) != 1 || !r.Limits[0].Held {
		t.Errorf("search: limits %+v, want one held", r.Limits)
	}
	out["search"] = []study.Changes{r.Best.Values}
	out["rounding"] = []study.Changes{r.Rounded.Values}
	if percentile {
		robust := d.Clone()
		robust.Search.Percentile = 95
		r = searchOf(t, robust, SearchOptions{})
		out["robust search"] = []study.Changes{r.Best.Values}
		out["robust rounding"] = []study.Changes{r.Rounded.Values}
	}
	if tradeOff {
		front, err := TradeOff(t.Context(), d, TradeOffOptions{Designs: new(2)})
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range front.Designs {
			out["trade-off"] = append(out["trade-off"], p.Values)
		}
	}
	m, err := Map(t.Context(), d, MapOptions{Columns: new(7), Rows: new(7)})
	if err != nil {
		t.Fatal(err)
	}
	out["map"] = []study.Changes{{m.X.Parameter: float64(m.Best.X), m.Y.Parameter: float64(m.Best.Y)}}
	shelf, err := Choose(t.Context(), d, ChooseOptions{})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range append(shelf.Best, shelf.Undominated...) {
		if len(c.Limits) != 1 || !c.Limits[0].Held {
			t.Errorf("shelf: %v shows limits %+v", c.Changes, c.Limits)
		}
		out["shelf"] = append(out["shelf"], c.Changes)
	}
	return out
}

// TestClearanceOfAnAxlesLinks measures how near the tie rod comes to a link of neither
// side, against the least distance of points set close along both.
func TestClearanceOfAnAxlesLinks(t *testing.T) {
	d := study.Template{Key: "solid-axle-rack"}.Document()
	d.Travel = &study.Travel{Bump: 20, Droop: 20, Step: 20}
	d.Search = &study.Search{Limits: []study.Limit{{
		Result: "clearance", Min: new(float64), Of: "tie-rod", Radius: 11, Link: &study.Link{From: "links.3.inner", To: "links.3.outer", Radius: 16},
	}}}
	got := measured(t, d, nil)
	s, err := newJudge(d, "")
	if err != nil {
		t.Fatal(err)
	}
	car, err := s.base.Assemble(nil, solver.HoldAll)
	if err != nil {
		t.Fatal(err)
	}
	least := math.Inf(1)
	for _, travel := range []float64{-20, 0, 20} {
		var at solver.Placed
		if err := car.Place(solver.NewWorkspace(), [2]float64{travel, travel}, 0, &at); err != nil {
			t.Fatal(err)
		}
		point := func(name string, side []solver.Vec, points []solver.Hardpoint) solver.Vec {
			return side[slices.IndexFunc(points, func(h solver.Hardpoint) bool { return h.Name == name })]
		}
		kind := car.Design().Kind
		from, to := point("links.3.inner", at.Common, kind.CommonPoints), point("links.3.outer", at.Common, kind.CommonPoints)
		left, right := point("steeringArmBalls", at.Side[0], kind.SidePoints), point("steeringArmBalls", at.Side[1], kind.SidePoints)
		const steps = 400
		along := func(a, b solver.Vec, k int) solver.Vec {
			return r3.Add(a, r3.Scale(float64(k)/steps, r3.Sub(b, a)))
		}
		for i := range steps + 1 {
			for k := range steps + 1 {
				least = min(least, r3.Norm(r3.Sub(along(from, to, i), along(left, right, k))))
			}
		}
	}
	const coarse = 0.2 // mm: points some 3 mm apart on bars far more than that from each other
	near(t, "clearance of the tie rod, mm", got, least-11-16, coarse)
}

// TestClearancePlaneIsMirrored: a wall beside the left wheel stands beside the right one
// too, so that a symmetric car is as far from it on either side.
func TestClearancePlaneIsMirrored(t *testing.T) {
	at := func(side study.Side) float64 {
		d := limitedStudy(t, `{"result": "clearance", "of": "outer-ball", "radius": 12, "plane": {"point": [0, 600, 0], "normal": [0, 1, 0]}, "min": 0}`)
		d.Search.Limits[0].Side = side
		return measured(t, d, nil)
	}
	left := at(study.Left)
	near(t, "clearance on the right, mm", at(study.Right), left, 1e-9)
	if !(left > 20 && left < 680-600) { // the ball stands at 680 and swings inward
		t.Errorf("clearance on the left %g mm, want less than the 80 mm from the ball's centre to the wall", left)
	}
}
