package options

import (
	"strings"
	"testing"

	"github.com/spf13/pflag"

	"toewright/internal/engine"
)

// parsed sets options as a command line does.
func parsed(t *testing.T, add func(*pflag.FlagSet), args ...string) error {
	t.Helper()
	fs := pflag.NewFlagSet("test", pflag.ContinueOnError)
	add(fs)
	return fs.Parse(args)
}

func TestSweepOptions(t *testing.T) {
	var got engine.SweepOptions
	err := parsed(t, func(fs *pflag.FlagSet) { Sweep(fs, &got) },
		"--candidate", "low ball", "--motion", "roll", "--steer", "-3.5", "--heave", "10", "--roll", "1")
	want := engine.SweepOptions{Candidate: "low ball", Motion: "roll", Attitude: engine.Attitude{Steer: -3.5, Heave: 10, Roll: 1}}
	if err != nil || got != want {
		t.Errorf("sweep options = %+v, %v, want %+v", got, err, want)
	}
}

func TestSearchOptions(t *testing.T) {
	var got engine.SearchOptions
	err := parsed(t, func(fs *pflag.FlagSet) { Search(fs, &got) }, "--minimise", "peak", "--side", "both", "--seed", "0")
	if err != nil || got.Minimise != "peak" || got.Side != "both" || got.Seed == nil || *got.Seed != 0 {
		t.Errorf("search options = %+v, %v", got, err)
	}
	var plain engine.SearchOptions
	if err := parsed(t, func(fs *pflag.FlagSet) { Search(fs, &plain) }); err != nil || plain.Seed != nil || plain.Minimise != "" {
		t.Errorf("no options = %+v, %v, want the zero value", plain, err)
	}
}

func TestOptionsRefuse(t *testing.T) {
	tests := []struct {
		name string
		args []string
		part string // of the error
	}{
		{"a word that is none", []string{"--minimise", "mean"}, "rms, peak"},
		{"a seed that is no whole number", []string{"--seed", "1.5"}, "whole number"},
		{"an option that is none", []string{"--steer", "1"}, "steer"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var o engine.SearchOptions
			err := parsed(t, func(fs *pflag.FlagSet) { Search(fs, &o) }, tt.args...)
			if err == nil || !strings.Contains(err.Error(), tt.part) {
				t.Errorf("%q: error %v, want one with %q", tt.args, err, tt.part)
			}
		})
	}
}

func TestWords(t *testing.T) {
	fs := pflag.NewFlagSet("test", pflag.ContinueOnError)
	Sweep(fs, new(engine.SweepOptions))
	if got := strings.Join(Words(fs.Lookup("motion")), " "); got != "both left right roll" {
		t.Errorf("words of motion = %q", got)
	}
	if got := Words(fs.Lookup("steer")); got != nil {
		t.Errorf("words of steer = %q, want none", got)
	}
}

func TestOptionalNumber(t *testing.T) {
	var x *float64
	add := func(fs *pflag.FlagSet) { optional(fs, &x, "x-min", "least") }
	if err := parsed(t, add); err != nil || x != nil {
		t.Errorf("not given: %v, %v, want nil", x, err)
	}
	if err := parsed(t, add, "--x-min", "0"); err != nil || x == nil || *x != 0 {
		t.Errorf("given 0: %v, %v, want a pointer to 0", x, err)
	}
}
