package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"sync"
	"testing"
)

// shardStudy has tolerances, a search and a catalogue; it is invented.
const shardStudy = "../../testdata/studies/double-wishbone-rack.json"

// output runs the command as a process of its own and returns what it prints.
func output(t *testing.T, args ...string) []byte {
	t.Helper()
	var stderr bytes.Buffer
	cmd := exec.Command("toewright", args...)
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil {
		t.Errorf("toewright %v: %v: %s", args, err, &stderr)
	}
	return out
}

// runShards runs a command in n processes at once, shards counted from base, and
// returns the files of their parts.
func runShards(t *testing.T, n, base int, args ...string) []string {
	t.Helper()
	folder := t.TempDir()
	files := make([]string, n)
	var wg sync.WaitGroup
	for i := range files {
		files[i] = filepath.Join(folder, fmt.Sprintf("part-%d.json", i))
		wg.Go(func() {
			part := output(t, append(slices.Clone(args), "--shard", fmt.Sprintf("%d/%d", i+base, n))...)
			if err := os.WriteFile(files[i], part, 0o600); err != nil {
				t.Error(err)
			}
		})
	}
	wg.Wait()
	return files
}

// TestShardsMergeToTheSameBytes runs each command whole, and in n processes whose
// parts are merged in reverse: what is printed is the same to the byte.
func TestShardsMergeToTheSameBytes(t *testing.T) {
	for _, tt := range []struct {
		name string
		args []string
	}{
		{"tolerance", []string{"tolerance", shardStudy, "--cars", "500"}},
		{"tolerance of another seed and figure", []string{"tolerance", shardStudy, "--cars", "100", "--seed", "7", "--figure", "rms", "--limit", "0.2"}},
		{"tolerance of toe as built", []string{"tolerance", shardStudy, "--cars", "90", "--toe", "as-built"}},
		{"choose", []string{"choose", shardStudy}},
		{"choose with an effect", []string{"choose", shardStudy, "--effect", "parts", "--most", "3", "--figure", "peak"}},
		{"map", []string{"map", shardStudy, "--columns", "5", "--rows", "9"}},
		{"map over all set-ups", []string{"map", "../../testdata/studies/double-wishbone-centre-link.json", "--columns", "3", "--rows", "5", "--scenario", "all"}},
		{"map of other axes", []string{"map", shardStudy, "--columns", "3", "--rows", "4", "--x", "caster", "--y", "steeringArmLength", "--y-min", "-3", "--y-max", "3.1"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			for _, n := range []int{1, 2, 3, 7} {
				parts := runShards(t, n, n%2, tt.args...)
				slices.Reverse(parts)
				for _, form := range [][]string{{"--json"}, {"--inches"}} {
					want := output(t, append(slices.Clone(tt.args), form...)...)
					got := output(t, append(append([]string{"merge", tt.args[1]}, parts...), form...)...)
					if len(want) == 0 || !bytes.Equal(got, want) {
						t.Errorf("%d shards merged print with %s\n%.400s\nwant\n%.400s", n, form[0], got, want)
					}
				}
			}
		})
	}
}
