package batch

import (
	"context"
	"encoding/json"
	"strings"
	"testing"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// saloon is an invented car with two slots of parts, the cheaper spacer of which
// does not go with the pins.
const saloon = `{
  "format": "toewright/1",
  "name": "Saloon (invented)",
  "units": "in",
  "suspension": {
    "type": "double-wishbone",
    "left": {
      "lowerFrontPivot": [6, 14, 7.7], "lowerRearPivot": [-6, 14, 7.3], "lowerBallJoint": [0.2, 27.2, 7.3],
      "upperFrontPivot": [4, 17, 18.9], "upperRearPivot": [-5, 17.1, 18.2], "upperBallJoint": [-0.6, 25.6, 18.4],
      "tieRodInner": [-5.5, 13.2, 9.25], "tieRodOuter": [-4.9, 26.8, 9.45],
      "wheelCentre": [0, 29.5, 12.2], "toe": 0.1, "camber": -0.7
    }
  },
  "steering": {"type": "rack"},
  "search": {
    "variables": [{"parameter": "tieRodOuterHeight", "min": -0.7, "max": 0.1}, {"parameter": "tieRodInnerHeight", "min": -0.1, "max": 0.3}],
    "window": {"bump": 2, "droop": 2, "step": 1},
    "scenarios": [{"name": "as it stands"}, {"name": "nose down", "changes": {"rideHeight": -0.6}}]
  },
  "tolerances": [{"parameter": "tieRodOuter.z", "plusMinus": 0.04}, {"parameter": "caster", "plusMinus": 0.3}],
  "yield": {"limit": 0.3, "cars": 60, "seed": 4},
  "catalogue": [
    {"slot": "spacers", "name": "1/4", "price": 10, "changes": {"tieRodOuterHeight": -0.25}},
    {"slot": "spacers", "name": "3/8", "price": 12, "changes": {"tieRodOuterHeight": -0.375}},
    {"slot": "pins", "name": "tall", "price": 80, "changes": {"upperBallJointHeight": 0.4}, "excludes": ["1/4"]},
    {"slot": "pins", "name": "taller", "price": 90, "changes": {"upperBallJointHeight": 0.5}}
  ]
}`

// document returns the invented car.
func document(t testing.TB) *study.Document {
	t.Helper()
	d, err := study.Decode([]byte(saloon))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// small are the options with which the commands are run here.
var small = map[string]any{
	"tolerance": engine.ToleranceOptions{},
	"choose":    engine.ChooseOptions{Effect: "parts"},
	"map":       engine.MapOptions{Columns: new(3), Rows: new(5)},
}

// newWork returns the work of a command on the invented car.
func newWork(t testing.TB, command string) *Work {
	t.Helper()
	w, err := New(command, document(t), small[command])
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// partOf returns what came of a shard of a command, and the part in it.
func partOf(t testing.TB, command, shard string) ([]byte, *Part) {
	t.Helper()
	s, err := ParseShard(shard)
	if err != nil {
		t.Fatal(err)
	}
	data, err := newWork(t, command).Run(context.Background(), s)
	if err != nil {
		t.Fatal(err)
	}
	p, err := decode(data)
	if err != nil {
		t.Fatal(err)
	}
	return data, p
}

// newMerge returns a merge of no parts of the invented car.
func newMerge(t testing.TB) *Merge {
	t.Helper()
	m, err := NewMerge(document(t))
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// sealed returns a part with a checksum that holds.
func sealed(t testing.TB, p *Part) []byte {
	t.Helper()
	data, err := encode(p)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// changed returns a result with its keys replaced by others.
func changed(t testing.TB, result json.RawMessage, with string) json.RawMessage {
	t.Helper()
	keys := map[string]json.RawMessage{}
	for _, text := range []json.RawMessage{result, json.RawMessage(with)} {
		if err := json.Unmarshal(text, &keys); err != nil {
			t.Fatal(err)
		}
	}
	out, err := json.Marshal(keys)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// wantError checks that an error is one line with a part.
func wantError(t *testing.T, name string, err error, part string) {
	t.Helper()
	if err == nil || !strings.Contains(err.Error(), part) || strings.Contains(err.Error(), "\n") {
		t.Errorf("%s: error %v, want one line with %q", name, err, part)
	}
}
