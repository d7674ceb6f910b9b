package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"toewright/internal/engine"
)

// TestShardsMergeToTheSameBytes: parts written by shards, in any order, make the page of one run.
func TestShardsMergeToTheSameBytes(t *testing.T) {
	kinds, err := kindsOfCar()
	if err != nil {
		t.Fatal(err)
	}
	t.Run("gauge", func(t *testing.T) { sameBytes(t, experiment{Cars: 1, Seed: 5}.simulation(kinds[:3])) })
	t.Run("tape", func(t *testing.T) { sameBytes(t, locatedCars{Cars: 1, Seed: 5}.simulation()) })
}

// partsOf writes the parts of n shards, the last one first.
func partsOf[R any](t *testing.T, s *simulation[R], n int) (files []string) {
	t.Helper()
	folder := t.TempDir()
	for i := n - 1; i >= 0; i-- {
		var b bytes.Buffer
		if err := s.writePart(t.Context(), engine.Shard{Index: i, Of: n}, &b); err != nil {
			t.Fatal(err)
		}
		files = append(files, filepath.Join(folder, strconv.Itoa(i)))
		if err := os.WriteFile(files[len(files)-1], b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return files
}

func sameBytes[R any](t *testing.T, s *simulation[R]) {
	t.Helper()
	var want bytes.Buffer
	kept, err := s.write(t.Context(), &want)
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range []int{1, 4} {
		var got bytes.Buffer
		if k, err := s.merge(partsOf(t, s, n), &got); err != nil || k != kept || got.String() != want.String() {
			t.Errorf("%d shards: kept %t, %v, want %t and the page of one run:\n%s\n%s", n, k, err, kept, got.String(), want.String())
		}
	}
}

// TestMergeRefuses parts that are not those of one experiment, each once.
func TestMergeRefuses(t *testing.T) {
	s := locatedCars{Cars: 1, Seed: 5}.simulation()
	s.size = 5
	files, other := partsOf(t, s, 2), partsOf(t, s, 3)
	cut := filepath.Join(t.TempDir(), "cut")
	data, err := os.ReadFile(files[0])
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		name  string
		sim   *simulation[tapeOutcome]
		files []string
		cut   int
		part  string // of the error
	}{
		{"none", s, nil, 0, "0 of 0"},
		{"one is missing", s, files[:1], 0, "1 of 2"},
		{"one twice", s, []string{files[0], files[0]}, 0, "twice"},
		{"of two divisions", s, []string{files[0], other[0]}, 0, "divides otherwise"},
		{"another seed", locatedCars{Cars: 1, Seed: 6}.simulation(), files, 0, "another experiment"},
		{"cut short", s, []string{cut, files[1]}, len(data) / 2, "cannot be read"},
		{"no such file", s, []string{cut + "x"}, 0, "no such file"},
	} {
		if err := os.WriteFile(cut, data[:tt.cut], 0o644); err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if _, err := tt.sim.merge(tt.files, &b); err == nil || !strings.Contains(err.Error(), tt.part) || b.Len() > 0 {
			t.Errorf("%s: error %v with a page of %d bytes, want %q", tt.name, err, b.Len(), tt.part)
		}
	}
}
