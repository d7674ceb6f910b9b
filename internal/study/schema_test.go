package study

import (
	"bytes"
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"toewright/solver"
)

// compiledSchema returns the schema ready to validate.
func compiledSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("study.json", doc); err != nil {
		t.Fatal(err)
	}
	compiled, err := c.Compile("study.json")
	if err != nil {
		t.Fatal(err)
	}
	return compiled
}

// validate returns what the schema has against a text that is valid JSON.
func validate(t *testing.T, s *jsonschema.Schema, text []byte) error {
	t.Helper()
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return s.Validate(value)
}

func TestSchemaTakesStudies(t *testing.T) {
	s := compiledSchema(t)
	files := studyFiles(t)
	files["small"] = []byte(smallText)
	files["sources"] = edited(t, `"units": "mm",`, `"units": "mm", "sources": {"*": "template", "left": "typed", "left.strutTop": "tape", "left.strutTop.z": "fitted"},`)
	files["limits at lock"] = edited(t, `"max": 20}]}`, `"max": 20}], "limits": [{"result": "outerBallAngle", "max": 20, "at": "lock"}, {"result": "innerBallAngle", "max": 20, "at": "straight"}]}`)
	for name, data := range files {
		t.Run(name, func(t *testing.T) {
			if err := validate(t, s, data); err != nil {
				t.Errorf("as it stands: %v", err)
			}
			text, err := Encode(decode(t, data))
			if err != nil {
				t.Fatal(err)
			}
			if err := validate(t, s, text); err != nil {
				t.Errorf("as Encode writes it: %v", err)
			}
		})
	}
}

// TestSchemaAndDecodeRefuse checks that what is wrong in form is wrong for both.
func TestSchemaAndDecodeRefuse(t *testing.T) {
	s := compiledSchema(t)
	tests := []struct{ name, old, new string }{
		{"other format", `"toewright/1"`, `"toewright/2"`},
		{"no format", `"format": "toewright/1",`, ``},
		{"no units", `"units": "mm",`, ``},
		{"unknown units", `"mm"`, `"cm"`},
		{"unknown key", `"travel"`, `"travle"`},
		{"unknown type", `"strut"`, `"unicycle"`},
		{"unknown key of a corner", `"toe": 0.1,`, `"tow": 0.1,`},
		{"point of another type", `"strutTop"`, `"upperBallJoint"`},
		{"missing point", `"strutTop": [-30, 590, 850],`, ``},
		{"two of three coordinates", `[5, 710, 180]`, `[5, 710]`},
		{"text for a coordinate", `[5, 710, 180]`, `[5, "710", 180]`},
		{"null for a point", `[5, 710, 180]`, `null`},
		{"pitman on a rack", `"rack"`, `"rack", "pitmanBall": [0, 0, 0]`},
		{"axis of a centre link", `"rack"`, `"centre-link", "axis": [0, 1, 0]`},
		{"no gear with an axis", `"rack"`, `"none", "axis": [0, 1, 0]`},
		{
			"centre link without an idler", `"rack"`,
			`"centre-link", "pitmanPivot": [0, 0, 0], "pitmanAxis": [0, 0, 1], "pitmanBall": [9, 0, 0]`,
		},
		{"unknown source", `"units": "mm",`, `"units": "mm", "sources": {"left.strutTop": "guess"},`},
		{"number for a source", `"units": "mm",`, `"units": "mm", "sources": {"left.strutTop": 1},`},
		{"negative travel", `"droop": 50`, `"droop": -50`},
		{"no step", `"step": 5`, `"step": 0`},
		{"candidate without a name", `"name": "lower", `, ``},
		{"text for a change", `{"tieRodOuterHeight": -4}`, `{"tieRodOuterHeight": "-4"}`},
		{"no key of a parameter", `{"tieRodOuterHeight": -4}`, `{"tieRodOuterHeight@up": -4}`},
		{"unknown setpoint", `["toe"]`, `["tow"]`},
		{"variable without bounds", `"min": -20, "max": 20`, `"min": -20`},
		{"unknown key of a tolerance", `"plusMinus": 0.5`, `"plusminus": 0.5`},
		{"unknown place of a limit", `"max": 20}]}`, `"max": 20}], "limits": [{"result": "outerBallAngle", "max": 20, "at": "bump"}]}`},
		{"no limit", `{"limit": 0.1}`, `{"limit": -0.1}`},
		{"no cars", `{"limit": 0.1}`, `{"limit": 0.1, "cars": 0}`},
		{"no side", `"side": "left", `, ``},
		{"no base", `"base": 300, `, ``},
		{"three numbers in a reading", `[10, 0.1]`, `[10, 0.1, 2]`},
		{"negative deviation", `"sd": 2`, `"sd": -2`},
		{"negative price", `"price": 80`, `"price": -80`},
		{"huge number", `"price": 80`, `"price": 1e10`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			data := edited(t, tt.old, tt.new)
			if validate(t, s, data) == nil {
				t.Error("the schema takes it")
			}
			if _, err := Decode(data); err == nil {
				t.Error("Decode takes it")
			}
		})
	}
}

// definition is what the schema says of an object.
type definition struct {
	Properties map[string]any
	Required   []string
}

// TestSchemaKnowsEveryKey checks that schema and Go agree on the keys of each
// object and on which must stand.
func TestSchemaKnowsEveryKey(t *testing.T) {
	var s struct {
		definition
		Defs map[string]definition `json:"$defs"`
	}
	if err := json.Unmarshal(Schema(), &s); err != nil {
		t.Fatal(err)
	}
	tests := []struct {
		name  string
		def   definition
		value any
	}{
		{"study", s.definition, Document{}},
		{"display", s.Defs["display"], Display{}},
		{"vehicle", s.Defs["vehicle"], Vehicle{}},
		{"damper", s.Defs["damper"], Damper{}},
		{"armFace", s.Defs["armFace"], ArmFace{}},
		{"steering", s.Defs["steering"], Steering{}},
		{"tieRod", s.Defs["tieRod"], TieRod{}},
		{"ballJoint", s.Defs["ballJoint"], BallJoint{}},
		{"stud", s.Defs["stud"], Stud{}},
		{"arm", s.Defs["arm"], Arm{}},
		{"armHole", s.Defs["armHole"], ArmHole{}},
		{"axleSpring", s.Defs["axleSpring"], axleSpring{}},
		{"loadCase", s.Defs["loadCase"], LoadCase{}},
		{"wheelLoad", s.Defs["wheelLoad"], WheelLoad{}},
		{"travel", s.Defs["travel"], Travel{}},
		{"candidate", s.Defs["candidate"], Candidate{}},
		{"search", s.Defs["search"], Search{}},
		{"variable", s.Defs["variable"], Variable{}},
		{"scenario", s.Defs["scenario"], Scenario{}},
		{"attitude", s.Defs["attitude"], Attitude{}},
		{"limit", s.Defs["limit"], Limit{}},
		{"tolerance", s.Defs["tolerance"], Tolerance{}},
		{"yield", s.Defs["yield"], Yield{}},
		{"reading", s.Defs["reading"], Reading{}},
		{"prior", s.Defs["prior"], Prior{}},
		{"advise", s.Defs["advise"], Advise{}},
		{"part", s.Defs["part"], Part{}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			keys, required := keysOf(reflect.TypeOf(tt.value))
			if diff := cmp.Diff(keys, sortedKeys(tt.def.Properties)); diff != "" {
				t.Errorf("keys (-Go +schema):\n%s", diff)
			}
			if diff := cmp.Diff(required, slices.Sorted(slices.Values(tt.def.Required))); diff != "" {
				t.Errorf("required (-Go +schema):\n%s", diff)
			}
		})
	}
}

// keysOf returns the keys of a struct and those that must stand, sorted.
func keysOf(t reflect.Type) (keys, required []string) {
	for i := range t.NumField() {
		key, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		keys = append(keys, key)
		if strings.Contains(t.Field(i).Tag.Get("rule"), "required") {
			required = append(required, key)
		}
	}
	slices.Sort(keys)
	slices.Sort(required)
	return keys, required
}

// sortedKeys returns the keys of a map.
func sortedKeys(m map[string]any) []string {
	var keys []string
	for key := range m {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	return keys
}

// TestSchemaTakesEveryParameter checks the schema's pattern against the registry
// of every kind of car.
func TestSchemaTakesEveryParameter(t *testing.T) {
	s := compiledSchema(t)
	for _, template := range Templates() {
		d := template.Document()
		design, err := d.Design()
		if err != nil {
			t.Fatal(err)
		}
		changes := Changes{}
		for _, p := range solver.Parameters(design) {
			changes[p.Key] = 0
			if p.Sided() {
				changes[p.Key+"@left"], changes[p.Key+"@right"] = 0, 0
			}
		}
		d.Candidates = []Candidate{{Name: "all", Changes: changes}}
		text, err := Encode(d)
		if err != nil {
			t.Fatal(err)
		}
		if err := validate(t, s, text); err != nil {
			t.Errorf("%s: %v", template.Key, err)
		}
		if _, err := Decode(text); err != nil {
			t.Errorf("%s: %v", template.Key, err)
		}
	}
}

func TestSchemaIsACopy(t *testing.T) {
	Schema()[0] = 'x'
	if !json.Valid(Schema()) {
		t.Error("a caller's change went into the schema")
	}
}
