package main

import (
	"bytes"
	"slices"
)

// What of a function only a printed stack, or a goroutine that is stopped from outside, asks
// for, by number; a program in a browser has one thread, which nothing stops. See
// src/internal/abi/symtab.go in Go's source.
var (
	traceCounters = []int{0, 3}    // PCDATA_UnsafePoint, PCDATA_ArgLiveIndex
	traceFacts    = []int{5, 6, 7} // FUNCDATA_ArgInfo, FUNCDATA_ArgLiveInfo, FUNCDATA_WrapInfo
)

// noFact stands where a function has no fact of a number.
const noFact = 1<<32 - 1

// dropTraces clears what only a printed stack is made of: names of functions, files, lines and
// arguments. The runtime then says where it was by the program counter alone, of which describe
// makes names and lines again. What it needs to unwind a stack and to collect garbage stays.
func dropTraces(memory []byte) error {
	t, err := findTable(memory)
	if err != nil {
		return err
	}
	names, counters := make([]bool, len(t.names)), make([]bool, len(t.counters))
	for i := range t.number {
		f, err := t.function(i)
		if err != nil {
			return err
		}
		if err := t.dropName(f, names); err != nil {
			return err
		}
		clear(f[fileField:countersField])
		clear(f[startLineField : startLineField+4])
		for _, c := range dropFacts(f) {
			if err := t.keep(counters, c); err != nil {
				return err
			}
		}
	}
	clearUnless(t.names, names)
	clearUnless(t.counters, counters)
	clear(t.units)
	clear(t.files)
	return nil
}

// dropName takes the name from a function, unless the runtime knows functions by it: its own
// ones, and two of package reflect (getArgInfo in src/runtime/stkframe.go).
func (t table) dropName(f []byte, kept []bool) error {
	name, err := t.name(f)
	if err != nil {
		return err
	}
	if own := bytes.HasPrefix(name, []byte("runtime.")); !own && string(name) != "reflect.makeFuncStub" && string(name) != "reflect.methodValueCall" {
		setField(f, nameField, 0)
		return nil
	}
	for i := range name {
		kept[int(field(f, nameField))+i] = true
	}
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
