package main

import (
	"testing"
	"time"
)

func TestParseStat(t *testing.T) {
	const stat = "42 (a (name) 1 2) S 1 42 42 0 -1 4194560 4747 0 0 0 123 45 0 0 20 0 9 0 600"
	if got, err := parseStat(stat); err != nil || got != 1680*time.Millisecond {
		t.Errorf("parseStat(%q) = %s, %v, want 1.68s", stat, got, err)
	}
	for _, wrong := range []string{"", "42 (name) S 1 2", "42 (name) S 1 42 42 0 -1 1 1 0 0 0 x 45 0"} {
		if _, err := parseStat(wrong); err == nil {
			t.Errorf("parseStat(%q) finds no fault", wrong)
		}
	}
}
