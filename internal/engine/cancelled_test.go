package engine

import (
	"context"
	"errors"
	"testing"

	"toewright/internal/study"
)

// TestCallsStopWhenCancelled: what nobody waits for any more is not computed, of one car
// or of all.
func TestCallsStopWhenCancelled(t *testing.T) {
	gone, cancel := context.WithCancel(context.Background())
	cancel()
	calls := map[string]func(d *study.Document, candidate string) error{
		"sweep": func(d *study.Document, c string) error {
			_, err := Sweep(gone, d, SweepOptions{Candidate: c})
			return err
		},
		"steer": func(d *study.Document, c string) error {
			_, err := Steer(gone, d, SteerOptions{Candidate: c})
			return err
		},
		"axle": func(d *study.Document, c string) error {
			_, err := Axle(gone, d, AxleOptions{Candidate: c})
			return err
		},
		"compare": func(d *study.Document, c string) error {
			_, err := Compare(gone, d, CompareOptions{Candidate: c})
			return err
		},
		"diagnose": func(d *study.Document, c string) error {
			_, err := Diagnose(gone, d, DiagnoseOptions{Candidate: c})
			return err
		},
		"arm": func(d *study.Document, c string) error { _, err := Arm(gone, d, ArmOptions{Candidate: c}); return err },
	}
	for name, call := range calls {
		for _, candidate := range []string{study.BaseName, ""} {
			if err := call(document(t, ""), candidate); !errors.Is(err, context.Canceled) {
				t.Errorf("%s of %q after it was cancelled: %v, want %v", name, candidate, err, context.Canceled)
			}
		}
	}
}
