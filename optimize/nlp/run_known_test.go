package nlp

import (
	"context"
	"encoding/json"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// TestKnownSearchesAreTaken: a run of which others have made the local searches, told as JSON,
// answers what it answers by itself, and evaluates nothing again; also where some of them are
// not known.
func TestKnownSearchesAreTaken(t *testing.T) {
	for name, p := range map[string]Problem{
		"six-hump camel": {Model: withLimits(sixHumpCamel(), 1, disc(0.4)), Variables: []Variable{{"x", -3, 3}, {"y", -2, 2}}},
		"few agree":      {Model: rastrigin(2), Variables: square(2, -5, 5), Start: []float64{1, 4}},
		"start beyond":   {Model: halfLine(), Variables: []Variable{{"x", -100, 100}}, Start: []float64{-50}},
	} {
		t.Run(name, func(t *testing.T) {
			s := &Settings{Seed: 5, Restarts: 11}
			want, err := Run(t.Context(), p, s)
			if err != nil {
				t.Fatal(err)
			}
			const n = 3
			var known []Polished
			for i := range n {
				list, err := Polish(t.Context(), p, s, i, n)
				if err != nil {
					t.Fatal(err)
				}
				text, err := json.Marshal(list)
				if err != nil {
					t.Fatal(err)
				}
				var read []Polished
				if err := json.Unmarshal(text, &read); err != nil {
					t.Fatal(err)
				}
				known = append(known, read...)
			}
			if len(known) != s.Restarts {
				t.Fatalf("%d searches, want %d", len(known), s.Restarts)
			}
			for _, k := range [][]Polished{known, known[2:], known[:5]} {
				s.Known = k
				got, err := Run(t.Context(), p, s)
				if err != nil {
					t.Fatal(err)
				}
				if diff := cmp.Diff(want, got, cmpopts.EquateNaNs()); diff != "" {
					t.Errorf("%d known (-want +got):\n%s", len(k), diff)
				}
			}
			cancelled, cancel := context.WithCancel(t.Context())
			cancel()
			s.Known = known[1:]
			got, err := Run(cancelled, p, s)
			if err != nil || got.Status != Cancelled || got.Searches == 0 || len(got.X) == 0 {
				t.Errorf("cancelled: %+v, %v", got, err)
			}
		})
	}
}
