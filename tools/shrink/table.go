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

// Where a field stands in a function's record, in bytes. Behind the record stand which counters
// it has, then which facts, four bytes each.
const (
	nameField      = 4
	stackField     = 16
	fileField      = 20
	lineField      = 24
	countersField  = 28
	unitField      = 32
	startLineField = 36
	factsField     = 43 // of one byte
)

// errTable is the error for a table of another layout.
var errTable = errors.New("the table of functions is not laid out as by go1.20 to go1.26: see tools/shrink/table.go")

// table is Go's table of functions, as it stands in memory.
type table struct {
	names, units, files, counters, functions []byte
	facts                                    []byte // what the functions' facts are: it stands elsewhere
	parts                                    parts
	number                                   int
}

// findTable returns the one table of functions in memory.
func findTable(memory []byte) (table, error) {
	at := bytes.Index(memory, tableMagic)
	if at < 0 || at+headerSize > len(memory) || bytes.Contains(memory[at+1:], tableMagic) {
		return table{}, errTable
	}
	whole := memory[at:]
	word := func(i int) uint64 { return binary.LittleEndian.Uint64(whole[8*i:]) }
	number, bounds := word(1), [...]uint64{headerSize, word(4), word(5), word(6), word(7), word(8), uint64(len(whole))}
	for i := range len(bounds) - 1 {
		if bounds[i] > bounds[i+1] {
			return table{}, errTable
		}
	}
	part := func(i int) []byte { return whole[bounds[i]:bounds[i+1]] }
	record := findParts(memory, at)
	t := table{part(1), part(2), part(3), part(4), part(5), record.facts(memory, at), record, int(number)}
	if number == 0 || number > uint64(len(t.functions))/8 {
		return table{}, errTable
	}
	return t, nil
}

// function returns the record of a function, with what counters and facts it has.
func (t table) function(i int) ([]byte, error) {
	at := uint64(t.recordAt(i))
	if at+functionSize > uint64(len(t.functions)) {
		return nil, fmt.Errorf("function %d: %w", i, errTable)
	}
	f := t.functions[at:]
	behind := uint64(len(f)-functionSize) / 4
	if counters := uint64(field(f, countersField)); counters > behind || uint64(f[factsField]) > behind-counters {
		return nil, fmt.Errorf("function %d: %w", i, errTable)
	}
	return f, nil
}

// place returns by what number a program counter names a function: it holds the number of the
// WebAssembly function above its lower 16 bits.
func (t table) place(i int) uint32 { return field(t.functions, 8*i) }

// recordAt returns where the record of a function stands.
func (t table) recordAt(i int) uint32 { return field(t.functions, 8*i+4) }

// name returns the name of a function.
func (t table) name(f []byte) ([]byte, error) { return text(t.names, field(f, nameField)) }

// text returns the text that begins at a byte and ends before a zero.
func text(in []byte, at uint32) ([]byte, error) {
	if uint64(at) < uint64(len(in)) {
		if n := bytes.IndexByte(in[at:], 0); n >= 0 {
			return in[at:][:n], nil
		}
	}
	return nil, fmt.Errorf("the text at byte %d: %w", at, errTable)
}

// step reads a pair of a counter's variable-length numbers: by how much its value changes,
// after it how many instructions have that value. The first of a pair is zero behind the last.
func (t table) step(at int, first bool) (change int32, instructions uint64, end int, err error) {
	value, end, err := t.number32(at)
	if err != nil || value == 0 && !first {
		return 0, 0, end, err
	}
	instructions, end, err = t.number32(end)
	return int32(-(value & 1) ^ value>>1), instructions, end, err
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

// setField changes a field of a record.
func setField(record []byte, at int, value uint32) { binary.LittleEndian.PutUint32(record[at:], value) }
