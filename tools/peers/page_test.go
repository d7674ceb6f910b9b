//go:build unix

package main

import (
	"os"
	"path/filepath"
	"testing"
)

func TestDigits(t *testing.T) {
	for _, tt := range []struct {
		x    float64
		want string
	}{{0.456, "0.46"}, {9.87, "9.87"}, {12.34, "12.3"}, {1234.5, "1234"}} {
		if got := digits(tt.x); got != tt.want {
			t.Errorf("digits(%g) = %s, want %s", tt.x, got, tt.want)
		}
	}
}

func TestSpreadOf(t *testing.T) {
	if got, want := spreadOf([]float64{3, 1, 2}), (spread{1, 2}); got != want {
		t.Errorf("spread %v, want %v", got, want)
	}
}

// TestOthersAreKept writes the page over one with sections of other commands, which stay.
func TestOthersAreKept(t *testing.T) {
	file := filepath.Join(t.TempDir(), "benchmarks.md")
	const theirs = "\n# Measured by other commands\n\n## What limits cost\n\n12 ms\n"
	if err := os.WriteFile(file, []byte("# Benchmarks\n\n## Old\n"+theirs), 0o644); err != nil {
		t.Fatal(err)
	}
	for range 2 {
		if err := write(file, "# Benchmarks\n\n## New\n"); err != nil {
			t.Fatal(err)
		}
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if got := string(text); got != "# Benchmarks\n\n## New\n"+theirs {
			t.Errorf("the page is %q, want ours anew and theirs behind it", got)
		}
	}
}
