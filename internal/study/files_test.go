package study

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// studyFiles returns every study under testdata: the whole files of studies/, and
// the "study" member of each of cases/.
func studyFiles(t testing.TB) map[string][]byte {
	t.Helper()
	files := map[string][]byte{}
	for _, dir := range []string{"cases", "studies"} {
		paths, err := filepath.Glob(filepath.Join("../../testdata", dir, "*.json"))
		if err != nil || len(paths) == 0 {
			t.Fatalf("no files in testdata/%s: %v", dir, err)
		}
		for _, path := range paths {
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if dir == "cases" {
				data = studyOf(t, data)
			}
			files[dir+"/"+strings.TrimSuffix(filepath.Base(path), ".json")] = data
		}
	}
	return files
}

// studyOf returns the "study" member of a case.
func studyOf(t testing.TB, data []byte) []byte {
	t.Helper()
	var c struct{ Study json.RawMessage }
	if err := json.Unmarshal(data, &c); err != nil {
		t.Fatal(err)
	}
	return c.Study
}

// decode reads a study that a test relies on.
func decode(t testing.TB, data []byte) *Document {
	t.Helper()
	d, err := Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// smallText is the least study of each section, for tests that change a piece of it.
const smallText = `{
  "format": "toewright/1",
  "units": "mm",
  "vehicle": {"wheelbase": 2500, "tyreRadius": 300},
  "suspension": {
    "type": "strut",
    "left": {
      "lowerFrontPivot": [20, 350, 190],
      "lowerRearPivot": [-300, 355, 195],
      "lowerBallJoint": [5, 710, 180],
      "strutTop": [-30, 590, 850],
      "strutLower": [-5, 665, 330],
      "tieRodOuter": [-130, 700, 250],
      "tieRodInner": [-150, 340, 260],
      "wheelCentre": [0, 750, 300],
      "toe": 0.1,
      "camber": -0.5
    }
  },
  "steering": {"type": "rack"},
  "travel": {"bump": 50, "droop": 50, "step": 5},
  "candidates": [{"name": "lower", "changes": {"tieRodOuterHeight": -4}, "hold": ["toe"]}],
  "search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}]},
  "tolerances": [{"parameter": "tieRodOuterHeight", "plusMinus": 0.5}],
  "yield": {"limit": 0.1},
  "readings": [{"side": "left", "base": 300, "values": [[0, 0], [10, 0.1]]}],
  "series": [{"car": "no. 1", "readings": [{"side": "right", "base": 400, "values": [[0, 0], [20, 0.1]]}]}],
  "priors": [{"parameter": "tieRodOuter.z", "sd": 2}],
  "advise": {"parameter": "tieRodOuterHeight", "min": -10, "max": 10},
  "catalogue": [{"slot": "arm", "name": "long", "price": 80, "changes": {"steeringArmLength": 5}}]
}
`

// edited returns smallText with one piece replaced, which must stand in it once.
func edited(t testing.TB, old, new string) []byte {
	t.Helper()
	if strings.Count(smallText, old) != 1 {
		t.Fatalf("%q stands %d times in smallText, want once", old, strings.Count(smallText, old))
	}
	return []byte(strings.Replace(smallText, old, new, 1))
}
