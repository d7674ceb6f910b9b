package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// caseFile is a study with the answers of independent general-purpose solvers.
type caseFile struct {
	Study    json.RawMessage
	Expected []expectedSweep
	Search   *struct {
		Variables []study.Variable
		Window    *study.Travel
		Start     engine.ToeFigures
		Best      struct {
			RMS, Peak struct {
				Value  float64
				Values study.Changes
			}
		}
	}
}

type expectedSweep struct {
	Candidate, Side, Motion string
	Case                    string // of a load case: TestCasesByLoads
	Steer                   float64
	Reach                   *engine.Reach
	Positions               []struct {
		Travel, Toe, Camber        float64
		Caster, KingpinInclination *float64
		WheelCentre                [3]float64
	}
}

// otherCases are jobs by tape, intervals and parts, which have tests of their own:
// TestCasesByLocate, TestCasesByCovers, TestCasesByDrawing.
var otherCases = regexp.MustCompile("^(tp|cv|dr)")

// eachCase runs a test for every case with the study in a file of its own.
func eachCase(t *testing.T, test func(t *testing.T, c *caseFile, path string)) {
	eachFile(t, func(name string) bool { return !otherCases.MatchString(name) }, test)
}

// called returns what picks the cases whose names begin so.
func called(prefix string) func(name string) bool {
	return func(name string) bool { return strings.HasPrefix(name, prefix) }
}

// eachFile runs a test for every file of testdata/cases with a name that is wanted, with
// what is read of it and its study in a file of its own.
func eachFile[C any](t *testing.T, wanted func(name string) bool, test func(t *testing.T, c *C, path string)) {
	t.Helper()
	paths, err := filepath.Glob("../../testdata/cases/*.json")
	paths = slices.DeleteFunc(paths, func(path string) bool { return !wanted(filepath.Base(path)) })
	if err != nil || len(paths) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	for _, path := range paths {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".json"), func(t *testing.T) {
			data, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			var c C
			var s struct{ Study json.RawMessage }
			if err := errors.Join(json.Unmarshal(data, &c), json.Unmarshal(data, &s)); err != nil {
				t.Fatal(err)
			}
			test(t, &c, writeFile(t, s.Study))
		})
	}
}

func writeFile(t *testing.T, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "study.json")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// ask runs a command that must succeed and reads its JSON.
func ask(t *testing.T, answer any, args ...string) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	if code := run(append(args, "--json"), strings.NewReader(""), &stdout, &stderr); code != exitDone {
		t.Fatalf("toewright %q: exit %d, %s", args, code, stderr.String())
	}
	if err := json.Unmarshal(stdout.Bytes(), answer); err != nil {
		t.Fatalf("toewright %q: %v", args, err)
	}
}

// Tolerances of the cases, as their README states them.
const (
	angleTolerance = 1e-6 // degrees
	placeTolerance = 1e-5 // mm
)

func TestCasesBySweep(t *testing.T) {
	eachCase(t, func(t *testing.T, c *caseFile, path string) {
		for _, want := range c.Expected {
			if want.Case != "" {
				return
			}
			args := []string{"sweep", path, "--steer", strconv.FormatFloat(want.Steer, 'g', -1, 64), "--motion", want.Motion}
			if want.Candidate != "" {
				args = append(args, "--candidate", want.Candidate)
			}
			var got engine.SweepResult
			ask(t, &got, args...)
			compareSweep(t, findSweep(t, &got, &want), &want)
		}
	})
}

// findSweep returns the sweep of the side wanted; the first two are those of the
// base car or of the only candidate asked for.
func findSweep(t *testing.T, got *engine.SweepResult, want *expectedSweep) *engine.CarSweep {
	t.Helper()
	name := want.Candidate
	if name == "" {
		name = study.BaseName
	}
	for i := range got.Sweeps[:2] {
		if s := &got.Sweeps[i]; s.Side == want.Side && s.Candidate == name {
			return s
		}
	}
	t.Fatalf("no sweep of %q, %s side", name, want.Side)
	return nil
}

func compareSweep(t *testing.T, got *engine.CarSweep, want *expectedSweep) {
	t.Helper()
	where := fmt.Sprintf("%s, steer %g, motion %s", want.Side, want.Steer, want.Motion)
	if len(got.Positions) != len(want.Positions) {
		t.Fatalf("%s: %d positions, want %d", where, len(got.Positions), len(want.Positions))
	}
	if (got.Reach == nil) != (want.Reach == nil) {
		t.Errorf("%s: reach %v, want %v", where, got.Reach, want.Reach)
	}
	for i, w := range want.Positions {
		g := &got.Positions[i]
		check := func(what string, got, want, tolerance float64) {
			if !(math.Abs(got-want) <= tolerance) {
				t.Errorf("%s, travel %g: %s = %.9f, want %.9f", where, w.Travel, what, got, want)
			}
		}
		check("travel", g.Travel, w.Travel, 0)
		check("toe", g.Toe, w.Toe, angleTolerance)
		check("camber", g.Camber, w.Camber, angleTolerance)
		for k := range w.WheelCentre {
			check("wheel centre", g.WheelCentre[k], w.WheelCentre[k], placeTolerance)
		}
		if w.Caster != nil {
			check("caster", float64(g.Caster), *w.Caster, angleTolerance)
		}
		if w.KingpinInclination != nil {
			check("kingpin inclination", float64(g.KingpinInclination), *w.KingpinInclination, angleTolerance)
		}
	}
}

// searchTolerance is how far above the known optimum an answer may lie; what lies
// further below it than the optimum's own rounding claims more than is true.
const searchTolerance = 1e-3

func TestCasesBySearch(t *testing.T) {
	searched := 0
	eachCase(t, func(t *testing.T, c *caseFile, path string) {
		if c.Search == nil {
			return
		}
		searched++
		best := map[string]float64{"rms": c.Search.Best.RMS.Value, "peak": c.Search.Best.Peak.Value}
		for minimise, want := range best {
			var got engine.SearchResult
			ask(t, &got, "search", writeFile(t, withSearch(t, c, minimise)))
			checkSearch(t, &got, minimise, want)
			if d := float64(got.Start.RMS - c.Search.Start.RMS); math.Abs(d) > angleTolerance {
				t.Errorf("start rms = %.9f, want %.9f", float64(got.Start.RMS), float64(c.Search.Start.RMS))
			}
		}
	})
	if searched == 0 {
		t.Error("no case has a search")
	}
}

// withSearch returns the case's study with its search put into it.
func withSearch(t *testing.T, c *caseFile, minimise string) []byte {
	t.Helper()
	d, err := study.Decode(c.Study)
	if err != nil {
		t.Fatal(err)
	}
	d.Search = &study.Search{Variables: c.Search.Variables, Window: c.Search.Window, Minimise: minimise}
	data, err := study.Encode(d)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func checkSearch(t *testing.T, got *engine.SearchResult, minimise string, want float64) {
	t.Helper()
	value := float64(got.Best.RMS)
	if minimise == "peak" {
		value = float64(got.Best.Peak)
	}
	if !(math.Abs(value/want-1) <= searchTolerance) {
		t.Errorf("best %s = %.9f, want %.9f", minimise, value, want)
	}
	if !got.Converged {
		t.Errorf("%s: not converged: %s", minimise, got.Status)
	}
}
