package main

import "slices"

// What of a function only a printed stack, or a goroutine that is stopped from outside, asks
// for, by number; a program in a browser has one thread, which nothing stops. See
// src/internal/abi/symtab.go in Go's source.
var (
	traceCounters = []int{0, 2, 3}    // PCDATA_UnsafePoint, PCDATA_InlTreeIndex, PCDATA_ArgLiveIndex
	traceFacts    = []int{3, 5, 6, 7} // FUNCDATA_InlTree, FUNCDATA_ArgInfo, FUNCDATA_ArgLiveInfo, FUNCDATA_WrapInfo
)

// noFact stands where a function has no fact of a number.
const noFact = 1<<32 - 1

// dropTraces clears what only a printed stack is made of: names of functions, files, lines,
// arguments, and which calls were inlined. The runtime then says where it was by the program counter alone, of which describe
// makes names and lines again. What it needs to unwind a stack and to collect garbage stays.
func dropTraces(memory []byte) error {
	t, err := findTable(memory)
	if err != nil {
		return err
	}
	names, counters, facts := newNames(), make([]bool, len(t.counters)), factList{}
	for i := range t.number {
		f, err := t.function(i)
		if err != nil {
			return err
		}
		name, err := t.name(f)
		if err != nil {
			return err
		}
		setField(f, nameField, names.at(name))
		clear(f[fileField:countersField])
		clear(f[startLineField : startLineField+4])
		facts.add(f)
		for _, c := range dropFacts(f) {
			if err := t.keep(counters, c); err != nil {
				return err
			}
		}
	}
	if err := facts.clearDropped(t.facts); err != nil {
		return err
	}
	clear(t.names)
	if copy(t.names, names.text) < len(names.text) {
		return errTable
	}
	clearUnless(t.counters, counters)
	clear(t.units)
	clear(t.files)
	return nil
}

// dropFacts takes from a function what only traces ask for, and returns where the counters that
// are left to it begin.
func dropFacts(f []byte) []uint32 {
	left := []uint32{field(f, stackField)}
	number := int(field(f, countersField))
	for j := range number {
		at := functionSize + 4*j
		if slices.Contains(traceCounters, j) {
			setField(f, at, 0)
		}
		left = append(left, field(f, at))
	}
	for _, j := range traceFacts {
		if j < int(f[factsField]) {
			setField(f, functionSize+4*(number+j), noFact)
		}
	}
	return left
}

// keep marks the bytes of a counter. Where one begins at zero there is none.
func (t table) keep(kept []bool, from uint32) error {
	if from == 0 {
		return nil
	}
	at := int(from)
	for first := true; ; first = false {
		_, instructions, end, err := t.step(at, first)
		if err != nil {
			return err
		}
		for ; at < end; at++ {
			kept[at] = true
		}
		if instructions == 0 {
			return nil
		}
	}
}

// clearUnless clears all bytes that are not kept.
func clearUnless(b []byte, kept []bool) {
	for i := range b {
		if !kept[i] {
			b[i] = 0
		}
	}
}
