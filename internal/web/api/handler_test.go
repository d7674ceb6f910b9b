package api

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"toewright/internal/engine"
)

func TestSweepAnswer(t *testing.T) {
	r := post(t, New(Config{}), "sweep?candidate=low+ball&steer=12&motion=left", saloon)
	var got engine.SweepResult
	if err := json.NewDecoder(r.Body).Decode(&got); err != nil || r.StatusCode != http.StatusOK {
		t.Fatalf("sweep: %d, %v", r.StatusCode, err)
	}
	if len(got.Sweeps) != 2 || len(got.Sweeps[0].Positions) != 11 {
		t.Fatalf("sweep: %+v, want two sides of 11 positions", got)
	}
	if s := got.Sweeps[0]; s.Candidate != "low ball" || s.Steer != 12 || s.Motion != "left" {
		t.Errorf("sweep of %q, steer %g, motion %s; want the options of the query", s.Candidate, s.Steer, s.Motion)
	}
	if got := r.Header.Get("Content-Type"); got != "application/json; charset=utf-8" {
		t.Errorf("content type %q", got)
	}
}

func TestSearchAnswer(t *testing.T) {
	r := post(t, New(Config{}), "search?minimise=peak&seed=3", saloon)
	var got engine.SearchResult
	if err := json.NewDecoder(r.Body).Decode(&got); err != nil || r.StatusCode != http.StatusOK {
		t.Fatalf("search: %d, %v", r.StatusCode, err)
	}
	if !got.Converged || !(got.Best.Peak < got.Start.Peak) || got.Minimise != "peak" {
		t.Errorf("search: %+v, want a smaller peak than at the start", got)
	}
}

// atLock is the saloon with a limit at lock that no car holds, where lock is stated.
func atLock(lock string) string {
	return strings.NewReplacer(`{"type": "rack"}`, `{"type": "rack"`+lock+`}`,
		`"max": 20}]}`, `"max": 20}], "limits": [{"result": "innerBallAngle", "max": 3, "at": "lock"}]}`).Replace(saloon)
}

// TestSearchSaysWhereALimitIsBroken: at which travel and steer of which wheel.
func TestSearchSaysWhereALimitIsBroken(t *testing.T) {
	r := post(t, New(Config{}), "search", atLock(`, "lock": 60`))
	var got engine.SearchResult
	if err := json.NewDecoder(r.Body).Decode(&got); err != nil || r.StatusCode != http.StatusOK {
		t.Fatalf("search: %d, %v", r.StatusCode, err)
	}
	if len(got.Limits) != 1 || got.Limits[0].Held || got.Limits[0].At == nil {
		t.Fatalf("limits %+v, want one broken at a position", got.Limits)
	}
	if at := got.Limits[0].At; at.Lock == "" || at.Steer*at.Steer != 60*60 || at.Travel*at.Travel != 50*50 {
		t.Errorf("at %+v, want an end of the travel and a lock of 60 mm", at)
	}
}

func TestRefusals(t *testing.T) {
	tests := []struct {
		name, path, body string
		want             int
		key, message     string // message: a part of it
	}{
		{"no JSON", "sweep", "hello", 400, "", "JSON"},
		{"empty", "sweep", "", 400, "", ""},
		{"key of the study", "sweep", strings.Replace(saloon, "tyreRadius", "tireRadius", 1), 400, "vehicle.tireRadius", "tyreRadius"},
		{"unknown option", "sweep?stear=3", saloon, 400, "stear", "not an option"},
		{"option twice", "sweep?steer=3&steer=4", saloon, 400, "steer", "2 times"},
		{"options joined by a semicolon", "sweep?steer=3;motion=left", saloon, 400, "", "semicolon"},
		{"option badly escaped", "sweep?steer=%zz", saloon, 400, "", "%zz"},
		{"options without end", "sweep?" + strings.Repeat("steer=3&", 20_000), saloon, 400, "", "options"},
		{"option no number", "sweep?steer=left", saloon, 400, "steer", "left"},
		{"option none of the words", "sweep?motion=up", saloon, 400, "motion", "both"},
		{"seed no whole number", "search?seed=1.5", saloon, 400, "seed", "whole"},
		{"unknown candidate", "compare?candidate=none", saloon, 400, "candidate", "low ball"},
		{"nothing to search", "search", strings.Replace(saloon, `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 20}]}`, `"name": "x"`, 1), 400, "search", "variables"},
		{"lock that is not stated", "search", atLock(""), 400, "search.limits.0.at", "steering.lock"},
		{"steering out of reach", "sweep?steer=900", saloon, 422, "", "tie rod"},
		{"static position out of reach", "sweep", strings.Replace(saloon, `"tieRodOuterHeight": -8`, `"lowerBallJointHeight": 900`, 1), 422, "", "travel 0"},
		{"unknown call", "swep", saloon, 404, "", "openapi.json"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := post(t, New(Config{}), tt.path, tt.body)
			f := readFault(t, r)
			if r.StatusCode != tt.want || f.Key != tt.key || !strings.Contains(f.Message, tt.message) {
				t.Errorf("%s = %d %q %q, want %d %q and %q", tt.path, r.StatusCode, f.Key, f.Message, tt.want, tt.key, tt.message)
			}
			if strings.Contains(f.Message, "\n") {
				t.Errorf("message %q is more than one line", f.Message)
			}
		})
	}
}

// TestRefusesWhatIsNotSentAsJSON: any other type can be sent by a page of another site
// that asks nobody.
func TestRefusesWhatIsNotSentAsJSON(t *testing.T) {
	for kind, want := range map[string]int{
		"application/json": 200, "Application/JSON; charset=utf-8": 200,
		"": 415, "text/plain": 415, "application/x-www-form-urlencoded": 415, "application/jsonp": 415, "text/plain, application/json": 415, "application/json, text/plain": 415,
	} {
		r := httptest.NewRequest(http.MethodPost, base+"sweep", strings.NewReader(saloon))
		r.Header.Set("Content-Type", kind)
		w := httptest.NewRecorder()
		New(Config{}).ServeHTTP(w, r)
		if w.Code != want {
			t.Errorf("a study sent as %q = %d, want %d", kind, w.Code, want)
		}
	}
}

func TestRefusesALargeStudy(t *testing.T) {
	r := post(t, New(Config{MaxBody: 100}), "sweep", saloon)
	if f := readFault(t, r); r.StatusCode != http.StatusRequestEntityTooLarge || !strings.Contains(f.Message, "100 bytes") {
		t.Errorf("large study: %d %q, want 413 and the limit", r.StatusCode, f.Message)
	}
}

func TestRefusesOtherMethods(t *testing.T) {
	tests := []struct{ method, path, allow string }{
		{http.MethodGet, base + "sweep", http.MethodPost},
		{http.MethodDelete, base + "search", http.MethodPost},
		{http.MethodPost, base + "schema", http.MethodGet},
		{http.MethodPost, "/healthz", http.MethodGet},
	}
	for _, tt := range tests {
		w := httptest.NewRecorder()
		New(Config{}).ServeHTTP(w, httptest.NewRequest(tt.method, tt.path, nil))
		if w.Code != http.StatusMethodNotAllowed || w.Header().Get("Allow") != tt.allow {
			t.Errorf("%s %s = %d, allow %q; want 405 and %s", tt.method, tt.path, w.Code, w.Header().Get("Allow"), tt.allow)
		}
	}
}

func TestHealth(t *testing.T) {
	stopping := make(chan struct{})
	h := New(Config{Stopping: stopping})
	if status, body := get(t, h, "/healthz"); status != http.StatusOK || body != "ok\n" {
		t.Errorf("health = %d %q, want 200 ok", status, body)
	}
	close(stopping)
	if status, body := get(t, h, "/healthz"); status != http.StatusServiceUnavailable || body != "stopping\n" {
		t.Errorf("health while stopping = %d %q, want 503 stopping", status, body)
	}
	r := post(t, h, "sweep", saloon)
	if f := readFault(t, r); r.StatusCode != http.StatusServiceUnavailable || r.Header.Get("Retry-After") == "" {
		t.Errorf("sweep while stopping = %d %q, want 503 and Retry-After", r.StatusCode, f.Message)
	}
}

func TestSchemaIsTheStudys(t *testing.T) {
	status, body := get(t, New(Config{}), base+"schema")
	if status != http.StatusOK || !strings.Contains(body, "toewright/1") {
		t.Errorf("schema = %d %.80q", status, body)
	}
}

// TestForgingOptions asks what a forging's designer asks, by query parameters.
func TestForgingOptions(t *testing.T) {
	study := strings.Replace(saloon, `"max": 20}]}`, `"max": 20}], "scenarios": [{"name": "as it is"}, {"name": "low", "changes": {"rideHeight": -20}}]},
		"tolerances": [{"parameter": "tieRodLength", "plusMinus": 0.5}], "yield": {"limit": 0.5, "cars": 200}`, 1)
	var series engine.ToleranceResult
	answered(t, "tolerance?toe=as-built", study, &series)
	if series.StaticToe != engine.ToeAsBuilt || len(series.Scenarios) != 2 || !series.ScenarioYield.Valid() {
		t.Errorf("tolerance: toe %q, %d set-ups, yield over them %v", series.StaticToe, len(series.Scenarios), series.ScenarioYield)
	}
	var found engine.SearchResult
	answered(t, "search?target-of=low+ball", study, &found)
	if found.Target == nil || len(found.Scenarios) != 2 || len(found.Scenarios[1].Curves) != 2 {
		t.Errorf("search: target %v, set-ups %+v", found.Target, found.Scenarios)
	}
	var picture engine.MapResult
	answered(t, "map?scenario=all&y=tieRodInnerHeight&columns=3&rows=3", study, &picture)
	if picture.Scenario != "all" || !picture.Best.Figure.Valid() {
		t.Errorf("map: scenario %q, best %+v", picture.Scenario, picture.Best)
	}
}

// answered decodes the answer to a call that must succeed.
func answered(t *testing.T, path, study string, answer any) {
	t.Helper()
	r := post(t, New(Config{}), path, study)
	if r.StatusCode != http.StatusOK {
		t.Fatalf("%s: %d, %s", path, r.StatusCode, readFault(t, r).Message)
	}
	if err := json.NewDecoder(r.Body).Decode(answer); err != nil {
		t.Fatalf("%s: %v", path, err)
	}
}
