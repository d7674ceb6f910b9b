//go:build unix

package main

import (
	"cmp"
	"encoding/binary"
	"hash/fnv"
	"slices"
)

// draw puts statements, and the mutants of each, in an order that looks random and
// follows from the seed and their own text alone: a change elsewhere moves none.
func draw(seed uint64, statements []statement) [][]mutant {
	byRank(statements, func(s statement) uint64 { return rank(seed, s.key) })
	order := make([][]mutant, 0, len(statements))
	for _, s := range statements {
		byRank(s.mutants, func(m mutant) uint64 { return rank(seed, m.id()) })
		// The kind first, so that one with many places in a statement does not crowd out others.
		slices.SortStableFunc(s.mutants, func(a, b mutant) int {
			return cmp.Compare(kindRank(seed, &s, a.kind), kindRank(seed, &s, b.kind))
		})
		order = append(order, s.mutants)
	}
	return order
}

// kindRank puts the kinds of change of a statement in order. An early return, which fits
// almost everywhere and is easy to see, is the last resort.
func kindRank(seed uint64, s *statement, kind string) uint64 {
	const last = 1 << 63
	r := rank(seed, s.key+kind) / 2
	if kind == earlyKind {
		r += last
	}
	return r
}

// byRank sorts by rank.
func byRank[T any](all []T, rank func(T) uint64) {
	slices.SortStableFunc(all, func(a, b T) int { return cmp.Compare(rank(a), rank(b)) })
}

// rank returns a number that a text has for a seed.
func rank(seed uint64, text string) uint64 {
	h := fnv.New64a()
	_ = binary.Write(h, binary.LittleEndian, seed)
	_, _ = h.Write([]byte(text))
	return mixed(h.Sum64())
}

// mixed spreads a change of any bit over all of them, which FNV does badly for the last
// letters of a text. This is the finaliser of SplitMix64.
func mixed(x uint64) uint64 {
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
