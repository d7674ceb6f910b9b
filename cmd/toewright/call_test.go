package main

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"toewright/internal/batch"
	"toewright/internal/calls"
)

// TestEveryCallHasItsManual: the command says at length what each public call does, shows
// its answer to people unless that is a page, and knows of no others.
func TestEveryCallHasItsManual(t *testing.T) {
	left := maps.Clone(manuals)
	for _, c := range calls.Public() {
		m := manuals[c.Name]
		delete(left, c.Name)
		if !strings.Contains(m.long, "FILE") || (m.show == nil) != (c.Types != nil) {
			t.Errorf("%s: long help %q, shown to people %t", c.Name, m.long, m.show != nil)
		}
		cmd, _, err := newRootCommand().Find([]string{c.Name})
		if err != nil || cmd.Name() != c.Name {
			t.Fatalf("no command %s: %v", c.Name, err)
		}
		for _, o := range c.New().Options {
			if f := cmd.Flags().Lookup(o.Name); f == nil || f.Usage != o.Usage {
				t.Errorf("%s has no --%s as the table has it", c.Name, o.Name)
			}
		}
		if (cmd.Flags().Lookup("shard") != nil) != batch.Divides(c.Name) || strings.Contains(cmd.Long, "--shard") != batch.Divides(c.Name) {
			t.Errorf("%s: divided is %t, and its options and help say otherwise", c.Name, batch.Divides(c.Name))
		}
	}
	if len(left) > 0 {
		t.Errorf("manuals of no call: %q", slices.Sorted(maps.Keys(left)))
	}
}
