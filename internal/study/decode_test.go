package study

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"toewright/internal/strictjson"
)

func TestDecodeErrors(t *testing.T) {
	tests := []struct{ name, old, new, at, want string }{
		{
			"newer version", `"toewright/1"`, `"toewright/2"`,
			`"toewright/2"`, `format: "toewright/2" was written by a newer version; this one reads "toewright/1": update it, nothing was changed`,
		},
		{"other format", `"toewright/1"`, `"toewrite/1"`, `"toewrite/1"`, `format: "toewrite/1" is not a format of a study, want "toewright/1"`},
		{"format 0", `"toewright/1"`, `"toewright/0"`, `"toewright/0"`, `format: "toewright/0" is not a format of a study, want "toewright/1"`},
		{"format is a number", `"toewright/1"`, `1`, `1`, `format: want the text "toewright/1"`},
		{"no format", `"format": "toewright/1",`, ``, `{`, `format: missing; a study states "format": "toewright/1"`},
		{"no units", `"units": "mm",`, ``, `{`, `units: missing`},
		{"unknown units", `"mm"`, `"cm"`, `"cm"`, `units: want "mm" or "in", got "cm"`},
		{"unknown key", `"travel"`, `"travle"`, `"travle"`, `travle: unknown key; did you mean travel?`},
		{
			"misspelt point", `"lowerBallJoint"`, `"lowerBallJont"`,
			`"lowerBallJont"`, `suspension.left.lowerBallJont: unknown key; did you mean lowerBallJoint?`,
		},
		{
			"missing point", `"strutTop": [-30, 590, 850],`, ``,
			`{`, `suspension.left.strutTop: missing`,
		},
		{"missing left", `"left": {`, `"right": {`, `{`, `suspension.left: missing`},
		{"two of three coordinates", `[5, 710, 180]`, `[5, 710]`, `[5, 710]`, `suspension.left.lowerBallJoint: want a list of 3 numbers, got a list of 2`},
		{"text for a coordinate", `[5, 710, 180]`, `[5, "710", 180]`, `"710"`, `suspension.left.lowerBallJoint.1: want a number, got the text "710"`},
		{"no type", `"type": "strut",`, ``, `{`, `suspension.type: missing`},
		{"type is a number", `"type": "strut"`, `"type": 1`, `1,`, `suspension.type: want a text, got the number 1`},
		{"suspension is a list", `"suspension": {`, `"suspension": [], "x": {`, `[], "x"`, `suspension: want an object, got a list of 0`},
		{"unknown gear", `"rack"`, `"rak"`, `"rak"`, `steering.type: want "rack", "centre-link" or "none", got "rak"; did you mean "rack"?`},
		{
			"pitman on a rack", `"rack"`, `"rack", "pitmanBall": [0, 0, 0]`,
			`[0, 0, 0]}`, `steering.pitmanBall: used only by type "centre-link"; leave it out or change steering.type`,
		},
		{
			"axis without a gear", `"rack"`, `"none", "axis": [0, 1, 0]`,
			`[0, 1, 0]}`, `steering.axis: not used by type "none"; leave it out or use type "rack"`,
		},
		{
			"axis of a centre link", `"rack"`, `"centre-link", "axis": [0, 1, 0]`,
			`[0, 1, 0]}`, `steering.axis: not used by a centre link; leave it out or use type "rack"`,
		},
		{
			"centre link without its arms", `"rack"`, `"centre-link", "pitmanPivot": [0, 0, 0]`,
			`{"type": "centre-link"`, `steering.pitmanAxis: missing; a centre link needs pivot, axis and ball of its arms`,
		},
		{
			"centre link without an idler", `"rack"`,
			`"centre-link", "pitmanPivot": [0, 0, 0], "pitmanAxis": [0, 0, 1], "pitmanBall": [9, 0, 0]`,
			`{"type": "centre-link"`, `steering.idlerPivot: missing; a centre link needs pivot, axis and ball of its arms`,
		},
		{
			"adjuster of another suspension", `"type": "strut",`, `"type": "strut", "adjuster": "upper-legs",`,
			`"upper-legs"`, `suspension.adjuster: "upper-legs" is none of a strut, want one of top-mount, lower-legs, lower-pivots`,
		},
		{
			"unknown source", `"units": "mm",`, `"units": "mm", "sources": {"left.strutTop": "guess"},`,
			`"guess"`, `sources.left.strutTop: "guess" is not a source of a number, want "typed", "file", "tape", "fitted" or "template"`,
		},
		{
			"source of no number", `"units": "mm",`, `"units": "mm", "sources": {"left.strutTpo": "tape"},`,
			`"tape"`, `sources.left.strutTpo: is the path of no number of this study, such as "left.lowerBallJoint" or "vehicle.wheelbase"; did you mean left.strutTop?`,
		},
		{"negative travel", `"droop": 50`, `"droop": -50`, `-50`, `travel.droop: want 0 or more, got -50`},
		{"no step", `"step": 5`, `"step": 0`, `0}`, `travel.step: want more than 0, got 0`},
		{
			"unknown parameter", `"changes": {"tieRodOuterHeight"`, `"changes": {"tieRodOuterHieght"`,
			`-4}`, `candidates.0.changes.tieRodOuterHieght: is not a parameter of a strut; the nearest is tieRodOuterHeight`,
		},
		{
			"unknown side of a parameter", `"changes": {"tieRodOuterHeight"`, `"changes": {"tieRodOuterHeight@middle"`,
			`-4}`, `candidates.0.changes.tieRodOuterHeight@middle: must end in @left or @right, or in neither`,
		},
		{"unknown setpoint", `["toe"]`, `["toe", "tow"]`, `"tow"`, `candidates.0.hold.1: "tow" is not a setpoint, want "toe", "camber" or "caster"`},
		{
			"variable of another suspension", `{"parameter": "tieRodOuterHeight", "min": -20`, `{"parameter": "upperFrontPivot.z", "min": -20`,
			`"upperFrontPivot.z"`, `search.variables.0.parameter: is not a parameter of a strut; the nearest is lowerFrontPivot.z`,
		},
		{
			"scenario that cannot be", `{"variables": [`, `{"scenarios": [{"changes": {"rods.0.inner.z": 1}}], "variables": [`,
			`1}}], "variables"`, `search.scenarios.0.changes.rods.0.inner.z: is not a parameter of a strut; the nearest is tieRodInner.z`,
		},
		{
			"unknown tolerance", `{"parameter": "tieRodOuterHeight", "plusMinus"`, `{"parameter": "tieRodOutHeight", "plusMinus"`,
			`"tieRodOutHeight"`, `tolerances.0.parameter: is not a parameter of a strut; the nearest is tieRodOuterHeight`,
		},
		{
			"set-up of readings that cannot be", `"base": 300,`, `"base": 300, "changes": {"casterr": 4},`,
			`4}`, `readings.0.changes.casterr: is not a parameter of a strut; the nearest is caster`,
		},
		{
			"unknown advice", `"advise": {"parameter": "tieRodOuterHeight"`, `"advise": {"parameter": "tieRodOuter"`,
			`"tieRodOuter"`, `advise.parameter: is not a parameter of a strut; the nearest is tieRodOuter.x`,
		},
		{
			"part that cannot be fitted", `{"steeringArmLength": 5}`, `{"steeringArmLenght": 5}`,
			`5}`, `catalogue.0.changes.steeringArmLenght: is not a parameter of a strut; the nearest is steeringArmLength`,
		},
		{
			"unknown prior", `"tieRodOuter.z"`, `"tieRodOuter.w"`,
			`"tieRodOuter.w"`, `priors.0.parameter: is not a parameter of a strut; the nearest is tieRodOuter.x`,
		},
		{
			"set-up of a car of the series that cannot be", `"side": "right",`, `"side": "right", "changes": {"casterr": 4},`,
			`4}`, `series.0.readings.0.changes.casterr: is not a parameter of a strut; the nearest is caster`,
		},
		{"car of the series without a name", `"car": "no. 1"`, `"car": ""`, `""`, `series.0.car: "" is no name of its own; call each car of the series by another`},
		{"unknown gauge", `"side": "left",`, `"side": "left", "gauge": "ruler",`, `"ruler"`, `readings.0.gauge: want "indicators", "plate", "dial" or "tape", got "ruler"`},
		{"three numbers in a reading", `[10, 0.1]`, `[10, 0.1, 2]`, `[10, 0.1, 2]`, `readings.0.values.1: want a list of 2 numbers, got a list of 3`},
		{"key twice", `"wheelbase": 2500`, `"wheelbase": 2500, "wheelbase": 2400`, `"wheelbase": 2400`, `vehicle.wheelbase: key stands twice; remove one`},
		{"huge number", `"wheelbase": 2500`, `"wheelbase": 1e300`, `1e300`, `vehicle.wheelbase: the number 1e300 is too large, want at most 1e+09 either way`},
		{"not a number", `"wheelbase": 2500`, `"wheelbase": NaN`, `NaN`, `wrong JSON: invalid character 'N' looking for beginning of value`},
		{"text behind", "\"changes\": {\"steeringArmLength\": 5}}]\n}\n", "\"changes\": {\"steeringArmLength\": 5}}]\n}}\n", "}\n", `wrong JSON: invalid character '}' after top-level value`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			data := edited(t, tt.old, tt.new)
			_, err := Decode(data)
			var e *strictjson.Error
			if !errors.As(err, &e) {
				t.Fatalf("Decode = %v, want a *strictjson.Error", err)
			}
			if got := strings.TrimPrefix(e.Error(), fmt.Sprintf("%d:%d: ", e.Line, e.Column)); got != tt.want {
				t.Errorf("Decode\n got %s\nwant %s", got, tt.want)
			}
			if got := textAt(data, e); !strings.HasPrefix(got, tt.at) {
				t.Errorf("Decode points at %q, want %q", got, tt.at)
			}
		})
	}
}

// textAt returns the rest of the line, with its end, that an error points at. The
// text before must be ASCII.
func textAt(data []byte, e *strictjson.Error) string {
	return strings.SplitAfter(string(data), "\n")[e.Line-1][e.Column-1:]
}

func TestDecodeRefusesOtherInput(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"empty", "", "input is empty"},
		{"a list", "[]", `1:1: want a study, an object that starts with {"format": "toewright/1"`},
		{"too deep", strings.Repeat("[", 40) + strings.Repeat("]", 40), strings.Repeat("0.", 15) + "0: nested deeper than 16 levels"},
		{"too long", strings.Repeat(" ", 5<<20), "input of 5242880 bytes is too long, want at most 4194304"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Decode([]byte(tt.text))
			if err == nil || !strings.HasSuffix(err.Error(), tt.want) {
				t.Errorf("Decode = %v, want %s", err, tt.want)
			}
		})
	}
}

// TestDecodeSolidAxle checks what only an axle's points have: sides and lists
// inside, and angles of one number or two.
func TestDecodeSolidAxle(t *testing.T) {
	template := Template{Key: "solid-axle-rack"}
	text := string(template.Text())
	tests := []struct{ name, old, new, want string }{
		{"three points of a kingpin", `"left": [[-16, 606, 486],`, `"left": [[-16, 606, 486], [0, 0, 0],`, "suspension.kingpins.left: want a list of 2, got a list of 3"},
		{"links are no list", `"links": [`, `"links": {}, "x": [`, "suspension.links: want a list of 4, got an object"},
		{"kingpins are no object", `"kingpins": {`, `"kingpins": [], "x": {`, "suspension.kingpins: want an object, got a list of 0"},
		{"unknown side", `"side": "right"`, `"side": "middle"`, `suspension.dragLink.side: want "left" or "right", got the text "middle"`},
		{"no side", `, "side": "right"`, ``, "suspension.dragLink.side: missing"},
		{"unknown key of a link", `"inner": [140`, `"iner": [140`, "suspension.links.3.iner: unknown key; did you mean inner?"},
		{"toe of one side", `"toe": 0.1`, `"toe": {"left": 0.1}`, "suspension.toe.right: missing"},
		{"toe is a text", `"toe": 0.1`, `"toe": "0.1"`, `suspension.toe: want a number, or an object of left and right, got the text "0.1"`},
		{"camber change", `"changes": {`, `"changes": {"camber": -1, `, "candidates.0.changes.camber: cannot be changed on a solid axle: it is the beam's own"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Decode([]byte(strings.Replace(text, tt.old, tt.new, 1)))
			if err == nil || !strings.HasSuffix(err.Error(), ": "+tt.want) {
				t.Errorf("Decode\n got %v\nwant %s", err, tt.want)
			}
		})
	}
}

func TestDecodeAxleAngles(t *testing.T) {
	template := Template{Key: "solid-axle-rack"}
	text := strings.Replace(string(template.Text()), `"toe": 0.1`, `"toe": {"left": 0.1, "right": -0.2}, "studAxes": {"right": [0, -0.1, 1]}`, 1)
	d := decode(t, []byte(text))
	if left, right := d.Suspension.Left.Toe, d.Suspension.Right.Toe; left != 0.1 || right != -0.2 {
		t.Errorf("toe = %v, %v, want 0.1, -0.2", left, right)
	}
	if left, right := d.Suspension.Left.StudAxis, d.Suspension.Right.StudAxis; left != nil || right == nil || *right != (Vec3{0, -0.1, 1}) {
		t.Errorf("stud axes = %v, %v, want none and [0 -0.1 1]", left, right)
	}
	encoded, err := Encode(d)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(d, decode(t, encoded)); diff != "" {
		t.Errorf("round trip (-first +second):\n%s", diff)
	}
}

// TestDecodeRefusesUnmodelled checks that a suspension of the trade that is not
// solved is refused by its name, with what to use instead.
func TestDecodeRefusesUnmodelled(t *testing.T) {
	_, err := Decode(edited(t, `"strut"`, `"leaf-spring"`))
	if err == nil || !strings.Contains(err.Error(), `suspension.type: suspension type "leaf-spring" is not modelled: `) {
		t.Errorf("Decode = %v, want a refusal of leaf-spring", err)
	}
}

// TestDecodeKeepsUnfinishedWork checks that what only keeps one job from running
// does not keep a study from being opened.
func TestDecodeKeepsUnfinishedWork(t *testing.T) {
	tests := []struct{ name, old, new string }{
		{"no travel", `"bump": 50, "droop": 50`, `"bump": 0, "droop": 0`},
		{"no variables", `[{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}]`, `[]`},
		{"bounds the wrong way round", `"min": -20, "max": 20`, `"min": 20, "max": -20`},
		{"no width", `, "plusMinus": 0.5`, ``},
		{"no readings", `[[0, 0], [10, 0.1]]`, `[]`},
		{"candidate that is gone", `"limit": 0.1`, `"limit": 0.1, "candidate": "gone"`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if _, err := Decode(edited(t, tt.old, tt.new)); err != nil {
				t.Errorf("Decode = %v, want no error", err)
			}
		})
	}
}

func TestDecodeRightSide(t *testing.T) {
	mirrored := decode(t, []byte(smallText)).Suspension.Corner(Right)
	want := Vec3{5, -710, 180}
	if got := mirrored.Points["lowerBallJoint"]; got != want {
		t.Errorf("mirrored lowerBallJoint = %v, want %v", got, want)
	}
	if mirrored.Toe != 0.1 || mirrored.Camber != -0.5 {
		t.Errorf("mirrored toe, camber = %v, %v, want 0.1, -0.5: the signs are those of each wheel", mirrored.Toe, mirrored.Camber)
	}

	left := smallText[strings.Index(smallText, `"left": {`):strings.Index(smallText, "\n  },\n  \"steering\"")]
	right := strings.NewReplacer(`"left"`, `"right"`, "[5, 710, 180]", "[5, -705, 181]", `"toe": 0.1`, `"toe": 0.2`).Replace(left)
	stated := decode(t, edited(t, left, left+",\n"+right)).Suspension.Corner(Right)
	if got, want := stated.Points["lowerBallJoint"], (Vec3{5, -705, 181}); got != want || stated.Toe != 0.2 {
		t.Errorf("stated lowerBallJoint, toe = %v, %v, want %v, 0.2", got, stated.Toe, want)
	}
}

func TestDocumentInsideJSON(t *testing.T) {
	type message struct {
		ID    int       `json:"id"`
		Study *Document `json:"study"`
	}
	want := message{ID: 7, Study: decode(t, []byte(smallText))}
	data, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	var got message
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("message (-want +got):\n%s", diff)
	}
}

// FuzzDecode checks that no input makes Decode panic, and that what it takes in
// is written and read back to the same document and the same bytes.
func FuzzDecode(f *testing.F) {
	for _, data := range studyFiles(f) {
		f.Add(data)
	}
	f.Add([]byte(smallText))
	f.Add([]byte(`{"format": "toewright/1", "units": "in", "suspension": {"type": "solid-axle", "toe": {"left": 0, "right": -0}}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := Decode(data)
		if err != nil {
			return
		}
		text, err := Encode(d)
		if err != nil {
			t.Fatalf("Encode of a decoded study: %v", err)
		}
		again, err := Decode(text)
		if err != nil {
			t.Fatalf("Decode of an encoded study: %v\n%s", err, text)
		}
		if diff := cmp.Diff(d, again); diff != "" {
			t.Fatalf("round trip (-first +second):\n%s", diff)
		}
	})
}
