//go:build unix

package main

import (
	"slices"
	"strconv"
	"testing"
)

// many returns statements with mutants of two kinds each.
func many(n int) []statement {
	all := make([]statement, n)
	for i := range all {
		key := strconv.Itoa(i)
		all[i] = statement{key: key, mutants: []mutant{
			{kind: earlyKind, old: key, new: "return"}, {kind: "sign", old: key}, {kind: "sign", old: key, new: "-"}, {kind: "drop", old: key},
		}}
	}
	return all
}

// drawn returns the first mutants of a draw.
func drawn(seed uint64, from []statement) (ids []string) {
	for _, mutants := range draw(seed, from) {
		ids = append(ids, mutants[0].id()+mutants[0].kind)
	}
	return ids
}

func TestDrawFollowsFromTheSeed(t *testing.T) {
	first, again, other := drawn(1, many(50)), drawn(1, many(50)), drawn(2, many(50))
	if !slices.Equal(first, again) {
		t.Errorf("the same seed drew %q, then %q", first, again)
	}
	if slices.Equal(first, other) {
		t.Errorf("another seed drew the same: %q", first)
	}
}

func TestDrawIsNotMovedByOthers(t *testing.T) {
	all, fewer := drawn(1, many(50)), drawn(1, many(49))
	all = slices.DeleteFunc(all, func(id string) bool { return !slices.Contains(fewer, id) })
	if !slices.Equal(all, fewer) {
		t.Errorf("without one statement, the others are drawn as %q, want %q", fewer, all)
	}
}

func TestDrawIsEven(t *testing.T) {
	const n = 2000
	kinds := map[string]int{}
	firsts := 0 // statements of the first half of the source among the first half of the draw
	for i, mutants := range draw(1, many(n)) {
		kinds[mutants[0].kind]++
		if at, _ := strconv.Atoi(mutants[0].old); at < n/2 && i < n/2 {
			firsts++
		}
	}
	// Five standard deviations of a draw of 2000 with even chances are 112, of the half drawn twice 56.
	if kinds["sign"] < n/2-112 || kinds["drop"] < n/2-112 || kinds[earlyKind] != 0 {
		t.Errorf("kinds drawn first: %v, want half of each, and no early return", kinds)
	}
	if firsts < n/4-56 || firsts > n/4+56 {
		t.Errorf("%d of the first half are drawn in the first half, want about %d", firsts, n/4)
	}
}
