package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// loadTolerance is how far a force may be from that of the independent statics of
// testdata/cases, as a share of it; they agree among themselves to 1e-10.
const loadTolerance = 1e-9

// TestCasesByLoads compares every figure of every load case with those of
// testdata/cases: every key that they have, and no more but a solid axle's drag link.
func TestCasesByLoads(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/cases/ld*.json")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no cases of loads: %v", err)
	}
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		var c struct {
			Study    json.RawMessage
			Expected []map[string]any
		}
		if err := json.Unmarshal(data, &c); err != nil {
			t.Fatal(err)
		}
		var got struct{ Loads []map[string]any }
		ask(t, &got, "loads", writeFile(t, c.Study))
		if len(got.Loads) != len(c.Expected) {
			t.Fatalf("%s: %d figures, want %d", path, len(got.Loads), len(c.Expected))
		}
		for i, want := range c.Expected {
			delete(got.Loads[i], "dragLink")
			sameValue(t, fmt.Sprintf("%s: %v, %v, %v", filepath.Base(path), want["candidate"], want["case"], want["side"]), got.Loads[i], want)
		}
		one, _ := c.Expected[len(c.Expected)-1]["candidate"].(string)
		var alone struct{ Loads []map[string]any }
		ask(t, &alone, "loads", writeFile(t, c.Study), "--candidate", one)
		want := c.Expected[len(c.Expected)-len(alone.Loads):]
		for i := range alone.Loads {
			delete(alone.Loads[i], "dragLink")
			sameValue(t, "alone", alone.Loads[i], want[i])
		}
	}
}

// sameValue compares what JSON has of an answer with what it is to be.
func sameValue(t *testing.T, where string, got, want any) {
	t.Helper()
	switch w := want.(type) {
	case map[string]any:
		g, _ := got.(map[string]any)
		if len(g) != len(w) {
			t.Errorf("%s: keys %v, want %v", where, keys(g), keys(w))
		}
		for key, value := range w {
			sameValue(t, where+", "+key, g[key], value)
		}
	case []any:
		g, _ := got.([]any)
		if len(g) != len(w) {
			t.Fatalf("%s: %d of them, want %d", where, len(g), len(w))
		}
		for i := range w {
			sameValue(t, fmt.Sprintf("%s %d", where, i), g[i], w[i])
		}
	case float64:
		g, ok := got.(float64)
		if !ok || !(math.Abs(g-w) <= loadTolerance*math.Max(1, math.Abs(w))) {
			t.Errorf("%s = %v, want %v", where, got, w)
		}
	default:
		if got != want {
			t.Errorf("%s = %v, want %v", where, got, want)
		}
	}
}

func keys(m map[string]any) []string {
	var names []string
	for k := range m {
		names = append(names, k)
	}
	slices.Sort(names)
	return names
}
