package strictjson

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// car is a value with a field of every kind that binds.
type car struct {
	Name    string             `json:"name" rule:"required"`
	Kind    string             `json:"kind,omitzero" rule:"oneof=road|race|rally"`
	Wheel   *wheel             `json:"wheel,omitzero"`
	Point   [3]float64         `json:"point"`
	Parts   []wheel            `json:"parts,omitzero"`
	Changes map[string]float64 `json:"changes,omitzero"`
	Count   int                `json:"count,omitzero" rule:"notnegative"`
	Hidden  bool               `json:"hidden,omitzero"`
	Code    code               `json:"code,omitzero"`
	Kept    int                // no key: not read, not written
}

type wheel struct {
	Radius float64  `json:"radius" rule:"required,positive"`
	Toe    float64  `json:"toe,omitzero"`
	Play   *float64 `json:"play,omitzero" rule:"notnegative"`
}

// code is a number whose JSON form is a text of as many letters.
type code int

func (c *code) BindNode(s Scope, n *Node) error {
	if n.Kind != String {
		return s.Want(n, "a code")
	}
	*c = code(len(n.Text))
	return nil
}

func (c code) UnbindNode(path string) (*Node, error) {
	if c < 0 {
		return nil, &Error{Path: path, Message: "negative code"}
	}
	return &Node{Kind: String, Text: "xxxxxxxxxx"[:c]}, nil
}

func number(x float64) *float64 { return &x }

// fullText and fullCar are the same car.
const fullText = `{
  "name": "Demo",
  "kind": "race",
  "wheel": {"radius": 305, "play": 0},
  "point": [1, -2.5, 0.001],
  "parts": [{"radius": 1}, {"radius": 2, "toe": -0.25}],
  "changes": {"a": 1, "b": -2},
  "count": 7,
  "hidden": true,
  "code": "xxx"
}
`

var fullCar = car{
	Name: "Demo", Kind: "race", Wheel: &wheel{Radius: 305, Play: number(0)}, Point: [3]float64{1, -2.5, 0.001},
	Parts: []wheel{{Radius: 1}, {Radius: 2, Toe: -0.25}}, Changes: map[string]float64{"a": 1, "b": -2},
	Count: 7, Hidden: true, Code: 3,
}

// bindCar parses and binds a text.
func bindCar(text string) (car, error) {
	var c car
	tree, err := Parse([]byte(text), Limits{})
	if err != nil {
		return c, err
	}
	return c, tree.Bind(&c)
}

func TestBind(t *testing.T) {
	tests := []struct {
		name, text string
		want       car
	}{
		{"all fields", fullText, fullCar},
		{"required only", `{"name": "x"}`, car{Name: "x"}},
		{
			"empty is not absent", `{"name": "x", "parts": [], "changes": {}}`,
			car{Name: "x", Parts: []wheel{}, Changes: map[string]float64{}},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := bindCar(tt.text)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(tt.want, got); diff != "" {
				t.Errorf("Bind (-want +got):\n%s", diff)
			}
		})
	}
}

func TestBindErrors(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"not an object", `[]`, "1:1: want an object, got a list of 0"},
		{"missing key", `{"count": 1}`, "1:1: name: missing"},
		{"missing key below", `{"name": "x", "wheel": {}}`, "1:24: wheel.radius: missing"},
		{"unknown key", "{\"name\": \"x\",\n\"wheel\": {\"raduis\": 3}}", "2:11: wheel.raduis: unknown key; did you mean radius?"},
		{"unknown key, none near", `{"name": "x", "zzzzzz": 3}`, "1:15: zzzzzz: unknown key"},
		{"unknown key in a list", `{"name": "x", "parts": [{"radius": 1, "to": 3}]}`, "1:39: parts.0.to: unknown key; did you mean toe?"},
		{"text for number", `{"name": "x", "wheel": {"radius": "305"}}`, `1:35: wheel.radius: want a number, got the text "305"`},
		{"number for text", `{"name": 5}`, "1:10: name: want a text, got the number 5"},
		{"fraction for whole", `{"name": "x", "count": 1.5}`, "1:24: count: want a whole number, got the number 1.5"},
		{"text for flag", `{"name": "x", "hidden": "yes"}`, `1:25: hidden: want true or false, got the text "yes"`},
		{"object for list", `{"name": "x", "parts": {}}`, "1:24: parts: want a list, got an object"},
		{"list for map", `{"name": "x", "changes": [1]}`, "1:26: changes: want an object, got a list of 1"},
		{"flag in a map", `{"name": "x", "changes": {"a": true}}`, "1:32: changes.a: want a number, got true"},
		{"two of three numbers", `{"name": "x", "point": [1, 2]}`, "1:24: point: want a list of 3 numbers, got a list of 2"},
		{"null", `{"name": null}`, "1:10: name: want a text, got null"},
		{"not positive", `{"name": "x", "wheel": {"radius": 0}}`, "1:35: wheel.radius: want more than 0, got 0"},
		{"negative", `{"name": "x", "wheel": {"radius": 1, "play": -1}}`, "1:46: wheel.play: want 0 or more, got -1"},
		{"negative count", `{"name": "x", "count": -2}`, "1:24: count: want 0 or more, got -2"},
		{"none of the words", `{"name": "x", "kind": "rase"}`, `1:23: kind: want "road", "race" or "rally", got "rase"; did you mean "race"?`},
		{"own form", `{"name": "x", "code": 1}`, "1:23: code: want a code, got the number 1"},
		{
			"long text is clipped", `{"name": "x", "count": "0123456789012345678901234567890123456789+"}`,
			`1:24: count: want a whole number, got the text "0123456789012345678901234567890123456789..."`,
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := bindCar(tt.text)
			if err == nil || err.Error() != tt.want {
				t.Errorf("Bind(%s)\n got %v\nwant %s", tt.text, err, tt.want)
			}
		})
	}
}

func TestUnknownRulePanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("parseRules accepted a rule that does not exist")
		}
	}()
	parseRules("required,possitive")
}
