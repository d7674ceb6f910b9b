package main

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
)

// The table by which a Go program knows its own functions, as go1.20 and later write it for
// 64 bits: src/runtime/symtab.go (pcHeader) and runtime2.go (_func) in Go's source.
const (
	headerSize   = 72
	functionSize = 44
)

// tableMagic begins the table: go1.20's number, two zeros, instructions of one byte and
// pointers of eight.
var tableMagic = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// Where a field stands in a function's record, in bytes.
const (
	stackField     = 16
	fileField      = 20
	lineField      = 24
	countField     = 28
	startLineField = 36
)

// errTable is the error for a table of another layout.
var errTable = errors.New("the table of functions is not laid out as by go1.20 to go1.26: see tools/shrink/lines.go")

// table is Go's table of functions, as it stands in memory.
type table struct {
	units, files, counters, functions []byte
	number                            int
}

// dropLines clears from which file and line each instruction came, in all functions: the
// runtime then says "?:0" in their place. What it needs to unwind a stack and to collect
// garbage stays.
func dropLines(memory []byte) error {
	t, err := findTable(memory)
	if err != nil {
		return err
	}
	kept := make([]bool, len(t.counters))
	for i := range t.number {
		f, err := t.function(i)
		if err != nil {
			return err
		}
		counters := []uint32{field(f, stackField)}
		for j := range int(field(f, countField)) {
			counters = append(counters, field(f, functionSize+4*j))
		}
		for _, c := range counters {
			if err := t.keep(kept, c); err != nil {
				return err
			}
		}
		clear(f[fileField:countField])
		clear(f[startLineField : startLineField+4])
	}
	for i, keep := range kept {
		if !keep {
			t.counters[i] = 0
		}
	}
	clear(t.units)
	clear(t.files)
	return nil
}

// findTable returns the one table of functions in memory.
func findTable(memory []byte) (table, error) {
	at := bytes.Index(memory, tableMagic)
	if at < 0 || at+headerSize > len(memory) || bytes.Contains(memory[at+1:], tableMagic) {
		return table{}, errTable
	}
	whole := memory[at:]
	word := func(i int) uint64 { return binary.LittleEndian.Uint64(whole[8*i:]) }
	number, units, files, counters, functions := word(1), word(5), word(6), word(7), word(8)
	if number == 0 || headerSize > units || units > files || files > counters || counters > functions ||
		functions > uint64(len(whole)) || number > (uint64(len(whole))-functions)/8 {
		return table{}, errTable
	}
	return table{whole[units:files], whole[files:counters], whole[counters:functions], whole[functions:], int(number)}, nil
}

// function returns the record of a function, with what counters it has.
func (t table) function(i int) ([]byte, error) {
	at := uint64(field(t.functions, 8*i+4))
	if at+functionSize > uint64(len(t.functions)) {
		return nil, fmt.Errorf("function %d: %w", i, errTable)
	}
	f := t.functions[at:]
	if uint64(field(f, countField)) > uint64(len(f)-functionSize)/4 {
		return nil, fmt.Errorf("function %d: %w", i, errTable)
	}
	return f, nil
}

// keep marks the bytes of a counter: pairs of variable-length numbers, of which the first of a
// pair is zero behind the last. Where a counter begins at zero there is none.
func (t table) keep(kept []bool, from uint32) error {
	if from == 0 {
		return nil
	}
	at := int(from)
	for first := true; ; first = false {
		value, end, err := t.number32(at)
		if err != nil {
			return err
		}
		last := value == 0 && !first
		if !last {
			if _, end, err = t.number32(end); err != nil {
				return err
			}
		}
		for ; at < end; at++ {
			kept[at] = true
		}
		if last {
			return nil
		}
	}
}

// number32 returns the variable-length number at a byte of the counters, and where it ends.
func (t table) number32(at int) (value uint64, end int, err error) {
	if at < len(t.counters) {
		if value, n := binary.Uvarint(t.counters[at:]); n > 0 {
			return value, at + n, nil
		}
	}
	return 0, 0, fmt.Errorf("the counter at byte %d: %w", at, errTable)
}

// field returns a field of a record.
func field(record []byte, at int) uint32 { return binary.LittleEndian.Uint32(record[at:]) }
