package main

import (
	"fmt"
	"math"
	"slices"
	"testing"
)

// loadTolerance is how far a force may be from that of the independent statics of
// testdata/cases, as a share of it; they agree among themselves to 1e-10.
const loadTolerance = 1e-9

// loadsCase is a case of testdata/cases, every figure of every load case.
type loadsCase struct{ Expected []map[string]any }

// TestCasesByLoads compares every figure of every load case with those of
// testdata/cases: every key that they have, and no more but a solid axle's drag link.
func TestCasesByLoads(t *testing.T) {
	eachFile(t, called("ld"), func(t *testing.T, c *loadsCase, file string) {
		got := loadsAnswered(t, file)
		if len(got) != len(c.Expected) {
			t.Fatalf("%d figures, want %d", len(got), len(c.Expected))
		}
		for i, want := range c.Expected {
			sameValue(t, fmt.Sprintf("%v, %v, %v", want["candidate"], want["case"], want["side"]), got[i], want)
		}
		one, _ := c.Expected[len(c.Expected)-1]["candidate"].(string)
		alone := loadsAnswered(t, file, "--candidate", one)
		want := c.Expected[len(c.Expected)-len(alone):]
		for i := range alone {
			sameValue(t, "alone", alone[i], want[i])
		}
	})
}

// loadsAnswered returns what the command says of a study, without drag links.
func loadsAnswered(t *testing.T, file string, options ...string) []map[string]any {
	t.Helper()
	var got struct{ Loads []map[string]any }
	ask(t, &got, append([]string{"loads", file}, options...)...)
	for _, l := range got.Loads {
		delete(l, "dragLink")
	}
	return got.Loads
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
