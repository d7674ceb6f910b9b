package study

import "testing"

func TestReady(t *testing.T) {
	job := map[string]func(*Document) error{
		"sweep":     (*Document).ReadyToSweep,
		"search":    (*Document).ReadyToSearch,
		"fit":       (*Document).ReadyToFit,
		"tolerance": (*Document).ReadyForTolerance,
		"series":    (*Document).ReadyForSeries,
	}
	const (
		variables = `{"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}]}`
		tolerance = `[{"parameter": "tieRodOuterHeight", "plusMinus": 0.5}]`
		series    = `[{"car": "no. 1", "readings": [{"side": "right", "base": 400, "values": [[0, 0], [20, 0.1]]}]}]`
		travel    = `{"bump": 50, "droop": 50, "step": 5}`
	)
	with := func(more string) string { return variables[:len(variables)-1] + ", " + more + "}" }
	tests := []struct{ job, name, old, new, want string }{
		{"sweep", "no travel", travel, `{"bump": 0, "droop": 0}`, "travel: bump and droop are both 0; give the travel to look at"},
		{"sweep", "too fine", travel, `{"bump": 50, "droop": 50, "step": 0.01}`, "travel.step: 0.01 makes 10001 positions, want at most 2000; use a larger step"},
		{"sweep", "not at all fine", travel, `{"bump": 1e9, "droop": 0, "step": 1e-300}`, "travel.step: 1e-300 makes +Inf positions, want at most 2000; use a larger step"},
		{"search", "no search", `"search": ` + variables + `,`, ``, "search: missing; state variables with their bounds"},
		{"search", "no window", variables, with(`"window": {"bump": 0, "droop": 0}`), "search.window: bump and droop are both 0; give the travel to look at"},
		{"search", "no variables", variables, `{"variables": []}`, "search.variables: none given; free at least one parameter"},
		{
			"search", "variable twice", variables,
			`{"variables": [{"parameter": "toe", "min": 0, "max": 1}, {"parameter": "toe", "min": 0, "max": 1}]}`,
			"search.variables.1.parameter: toe is a variable already",
		},
		{"search", "no room", `"min": -20, "max": 20`, `"min": 20, "max": 20`, "search.variables.0.max: want more than min 20, got 20"},
		{"search", "target out of order", variables, with(`"target": [[10, 0], [0, 0]]`), "search.target.1: travel 0 does not follow 10; list the points by growing travel"},
		{"search", "target of the right out of order", variables, with(`"targetRight": [[10, 0], [10, 1]]`), "search.targetRight.1: travel 10 does not follow 10; list the points by growing travel"},
		{"search", "negative weight", variables, with(`"weights": [[0, 1], [10, -1]]`), "search.weights.1.1: want a weight of 0 or more, got -1"},
		{"search", "no weight", variables, with(`"weights": [[0, 0]]`), "search.weights: all are 0; give at least one travel a weight"},
		{"search", "no weight where there is travel", variables, with(`"weights": [[-10, 0], [10, 0]]`), "search.weights: all are 0; give at least one travel a weight"},
		{"search", "weights out of order", variables, with(`"weights": [[10, 1], [0, 1]]`), "search.weights.1: travel 0 does not follow 10; list the points by growing travel"},
		{"search", "no scenario counts", variables, with(`"scenarios": [{"weight": 0}]`), "search.scenarios: all weights are 0; give at least one a weight"},
		{"search", "no percentage", variables, with(`"percentile": 100`), "search.percentile: want less than 100, got 100"},
		{"search", "limit without a bound", variables, with(`"limits": [{"result": "ackermann"}]`), "search.limits.0: want min, max or both"},
		{"search", "limit that takes its bound from the tie rod", variables, with(`"limits": [{"result": "outerBallAngle"}]`), "search.limits.0: want min, max or both; tieRod.outerBall.cone would stand for max"},
		{"search", "limit without room", variables, with(`"limits": [{"result": "ackermann", "min": 5, "max": 4}]`), "search.limits.0.max: want more than min 5, got 4"},
		{"search", "clearance from nothing", variables, with(`"limits": [{"result": "clearance", "min": 5, "of": "tie-rod"}]`), `search.limits.0: a clearance states "of" and either "plane", "rim" or "link"`},
		{"search", "clearance of nothing", variables, with(`"limits": [{"result": "clearance", "min": 5, "rim": {"radius": 170}}]`), `search.limits.0: a clearance states "of" and either "plane", "rim" or "link"`},
		{"search", "rim of another result", variables, with(`"limits": [{"result": "ackermann", "min": 5, "rim": {"radius": 170}}]`), `search.limits.0: "of", "plane", "rim" and "link" belong to the result "clearance", not to "ackermann"`},
		{
			"search", "plane without a direction", variables,
			with(`"limits": [{"result": "clearance", "min": 5, "of": "tie-rod", "plane": {"point": [0, 0, 0], "normal": [0, 0, 0]}}]`),
			"search.limits.0.plane.normal: has no direction",
		},
		{
			"search", "full lock where none is stated", variables, with(`"limits": [{"result": "ackermann", "min": 5}, {"result": "outerBallAngle", "max": 20, "at": "lock"}]`),
			"search.limits.1.at: asks for full lock, which the study does not state; state steering.lock, the most steering input to either side",
		},
		{
			"search", "full lock of what is at lock", variables, with(`"limits": [{"result": "turningCircle", "max": 20, "at": "lock"}]`),
			"search.limits.0.at: is not for turningCircle, which is taken at full lock as it is; leave it out",
		},
		{
			"search", "full lock of what is at rest", variables, with(`"limits": [{"result": "tieRodLength", "max": 20, "at": "straight"}]`),
			"search.limits.0.at: is for outerBallAngle, innerBallAngle, dragLinkOuterBallAngle and clearance, which are looked at through the travel, not for tieRodLength; leave it out",
		},
		{"fit", "no readings", `[[0, 0], [10, 0.1]]`, `[]`, "readings: none to fit; enter travel and gauge readings first"},
		{"fit", "prior twice", `[{"parameter": "tieRodOuter.z", "sd": 2}]`, `[{"parameter": "toe", "sd": 2}, {"parameter": "toe", "sd": 1}]`, "priors.1.parameter: toe has a prior already"},
		{"fit", "no room for advice", `"min": -10, "max": 10`, `"min": 10, "max": -10`, "advise.max: want more than min 10, got -10"},
		{"series", "no cars", series, `[]`, "series: no car of it was read; enter each car with its readings first"},
		{"series", "no readings", series, `[{"car": "1", "readings": [{"side": "left", "base": 300, "values": []}]}]`, "series: no car of it was read; enter each car with its readings first"},
		{
			"series", "a reading longer than its plate", series, `[{"car": "1", "readings": []}, {"car": "2", "readings": [{"side": "left", "gauge": "plate", "base": 300, "values": [[0, 301]]}]}]`,
			"series.1.readings.0.values.0: 301 mm is longer than the plate's base of 300 mm, which no toe reads; correct the reading or the base",
		},
		{"tolerance", "none", tolerance, `[]`, "tolerances: none given; state by how much parts and places may be off"},
		{"tolerance", "two widths", `"plusMinus": 0.5`, `"plusMinus": 0.5, "sd": 1`, "tolerances.0: want either plusMinus or sd"},
		{"tolerance", "no width", `, "plusMinus": 0.5`, ``, "tolerances.0: want either plusMinus or sd"},
		{"tolerance", "no such candidate", `{"limit": 0.1}`, `{"limit": 0.1, "candidate": "gone"}`, `yield.candidate: no candidate is called "gone"`},
	}
	for _, tt := range tests {
		t.Run(tt.job+"/"+tt.name, func(t *testing.T) {
			err := job[tt.job](decode(t, edited(t, tt.old, tt.new)))
			if err == nil || err.Error() != tt.want {
				t.Errorf("got  %v\nwant %s", err, tt.want)
			}
		})
	}
	for name, ready := range job {
		if err := ready(decode(t, []byte(smallText))); err != nil {
			t.Errorf("%s: %v, want the small study ready", name, err)
		}
	}
}

func TestReadyToFitCountsReadings(t *testing.T) {
	d := decode(t, []byte(smallText))
	d.Readings[0].Values = make([][2]float64, maxReadings)
	if err := d.ReadyToFit(); err != nil {
		t.Errorf("ReadyToFit with %d readings = %v, want nil", maxReadings, err)
	}
	d.Readings = append(d.Readings, Reading{Side: Right, Base: 300, Values: [][2]float64{{0, 0}}})
	const want = "readings.1.values: more than 20000 readings"
	if err := d.ReadyToFit(); err == nil || err.Error() != want {
		t.Errorf("ReadyToFit = %v, want %s", err, want)
	}
}

// TestLimitsAtLock takes full lock of a gear that states it, and not of an axle without one.
func TestLimitsAtLock(t *testing.T) {
	d := decode(t, edited(t, `{"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}]}`,
		`{"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}], "limits": [{"result": "outerBallAngle", "max": 20, "at": "lock"}]}`))
	d.Steering.Lock = 60
	if err := d.ReadyToSearch(); err != nil {
		t.Errorf("with a lock of 60 mm: %v", err)
	}
	d.Steering = nil
	const want = "search.limits.0.at: asks for full lock of an axle without a steering gear; leave it out"
	if err := d.LimitAtLock(0); err == nil || err.Error() != want {
		t.Errorf("without a gear: %v, want %s", err, want)
	}
}

// TestReadyToLimitLoads: a limit on what load cases make names what the study lacks.
func TestReadyToLimitLoads(t *testing.T) {
	load := LoadCase{Name: "kerb", Left: &WheelLoad{Force: Vec3{-5000, 0, 4000}}}
	for _, tt := range []struct {
		template string
		result   LimitKey
		loads    []LoadCase
		want     string
	}{
		{"double-wishbone-rack", "tieRodLoad", nil, "loads: none given; state by name what acts on the wheels"},
		{"double-wishbone-rack", "tieRodLoad", []LoadCase{load, load}, `loads.1.name: "kerb" is taken; give each case a name of its own`},
		{"double-wishbone-rack", "tieRodLoad", []LoadCase{load}, "suspension.left.spring: is missing: " + SpringNeeded},
		{"solid-axle-rack", "tieRodLoad", []LoadCase{load}, "suspension.springs.left: is missing: " + SpringNeeded},
		{"strut-rack", "tieRodLoad", []LoadCase{load}, ""},
		{"strut-rack", "armTwist", []LoadCase{load}, "armFace: is missing: the limit on armTwist needs the face to which the steering arm is bolted, on both sides"},
		{"solid-axle-rack", "armBend", []LoadCase{load}, "search.limits.0.result: armBend is of the bolted steering arm, which a solid-axle does not have"},
		{"strut-rack", "studBending", []LoadCase{load}, "tieRod.outerBall.stud: is missing: the limit on studBending needs the diameter and height of the outer ball's stud"},
	} {
		d := Template{Key: tt.template}.Document()
		for _, c := range []*Corner{&d.Suspension.Left, d.Suspension.Right} {
			if c != nil {
				c.Spring, c.Damper, c.ArmFace = nil, nil, nil
			}
		}
		if d.TieRod != nil && d.TieRod.OuterBall != nil {
			d.TieRod.OuterBall.Stud = nil
		}
		d.Loads = tt.loads
		d.Search = &Search{Variables: []Variable{{Parameter: "tieRodOuterHeight", Min: -5, Max: 5}}, Limits: []Limit{{Result: tt.result, Max: new(100.0)}}}
		got := ""
		if err := d.ReadyToLimit(0); err != nil {
			got = err.Error()
		}
		if got != tt.want {
			t.Errorf("%s, %s:\ngot  %s\nwant %s", tt.template, tt.result, got, tt.want)
		}
	}
}
