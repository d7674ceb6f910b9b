package api

import (
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
)

// saloon is an invented car: double wishbone with the rack behind the axle.
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
  "steering": {"type": "rack"},
  "travel": {"bump": 50, "droop": 50, "step": 10},
  "candidates": [{"name": "low ball", "changes": {"tieRodOuterHeight": -8}}],
  "search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}]}
}`

// post returns the answer to a study.
func post(t *testing.T, h http.Handler, path, body string) *http.Response {
	t.Helper()
	w := httptest.NewRecorder()
	r := httptest.NewRequest(http.MethodPost, base+path, strings.NewReader(body))
	r.Header.Set("Content-Type", "application/json")
	h.ServeHTTP(w, r)
	return w.Result()
}

func get(t *testing.T, h http.Handler, path string) (status int, body string) {
	t.Helper()
	w := httptest.NewRecorder()
	h.ServeHTTP(w, httptest.NewRequest(http.MethodGet, path, nil))
	return w.Code, w.Body.String()
}

// readFault returns the error of an answer.
func readFault(t *testing.T, r *http.Response) fault {
	t.Helper()
	var answer struct{ Error *fault }
	body, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(body, &answer); err != nil || answer.Error == nil {
		t.Fatalf("%d %s is no error of ours (%v)", r.StatusCode, body, err)
	}
	return *answer.Error
}
