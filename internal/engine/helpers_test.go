package engine

import (
	"errors"
	"strings"
	"testing"

	"toewright/internal/study"
)

// saloon is an invented car: double wishbone with the rack behind the axle. The
// place of MORE takes further keys.
const saloon = `{
  "format": "toewright/1",
  "units": "mm",
  "vehicle": {"wheelbase": 2500, "tyreRadius": 310},
  "suspension": {
    "type": "double-wishbone",
    "left": {
      "lowerFrontPivot": [150, 350, 195], "lowerRearPivot": [-150, 355, 185], "lowerBallJoint": [5, 690, 185],
      "upperFrontPivot": [100, 430, 480], "upperRearPivot": [-130, 435, 462], "upperBallJoint": [-15, 650, 468],
      "tieRodInner": [-140, 335, 235], "tieRodOuter": [-125, 680, 240],
      "wheelCentre": [0, 750, 310], "toe": 0.1, "camber": -0.7
    }
  },
  "steering": {"type": "rack", "perTurn": 50, "lock": 60},
  "candidates": [
    {"name": "low ball", "changes": {"tieRodOuterHeight": -8}},
    {"name": "caster 6", "changes": {"caster": 6}}
  ],
  MORE
  "travel": {"bump": 50, "droop": 40, "step": 10}
}`

// car returns the invented car with more keys, each followed by a comma.
func document(t *testing.T, more string) *study.Document {
	t.Helper()
	d, err := study.Decode([]byte(strings.Replace(saloon, "MORE", more, 1)))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// wantError checks that err is an [*Error] with a fault, a key and a part of its
// line.
func wantError(t *testing.T, err error, fault Fault, key, part string) {
	t.Helper()
	var e *Error
	if !errors.As(err, &e) {
		t.Fatalf("error %v (%T), want an *Error with %q", err, err, part)
	}
	if e.Fault != fault || e.Key != key || !strings.Contains(e.Error(), part) || strings.Contains(e.Error(), "\n") {
		t.Errorf("error %q, fault %d, key %q; want fault %d, key %q and one line with %q", e, e.Fault, e.Key, fault, key, part)
	}
}

// replaceLimit returns a search with its limit.
func replaceLimit(search, limit string) string { return strings.Replace(search, "LIMIT", limit, 1) }
