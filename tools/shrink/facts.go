package main

import (
	"bytes"
	"encoding/binary"
	"maps"
	"slices"
)

// Words of the record of the program's parts (moduledata in src/runtime/symtab.go of go1.26), which
// begins with where the table of functions begins: where the buckets begin by which a function is
// found, where read-only data begin, the functions' facts among them, and where the table ends.
const (
	bucketsWord  = 19
	readOnlyWord = 39
	factsWord    = 40
	endWord      = 41
	partsWords   = 42
)

// parts is the record of a program's parts.
type parts []byte

// findParts returns the record of a program's parts; nothing where there is none.
func findParts(memory []byte, table int) parts {
	begins := binary.LittleEndian.AppendUint64(nil, uint64(table))
	begins = binary.LittleEndian.AppendUint64(begins, uint64(table)+headerSize)
	at := bytes.Index(memory, begins)
	if at < 0 || at+8*partsWords > len(memory) {
		return nil
	}
	return memory[at:][:8*partsWords]
}

// word returns a word of the record.
func (p parts) word(i int) uint64 { return binary.LittleEndian.Uint64(p[8*i:]) }

// facts returns what the facts of all functions are, and what stands behind them; nothing where the
// record does not say it.
func (p parts) facts(memory []byte, table int) []byte {
	if p == nil {
		return nil
	}
	from, end := p.word(factsWord), p.word(endWord)
	if p.word(readOnlyWord) > from || from > end || end < uint64(table) || end > uint64(len(memory)) {
		return nil
	}
	return memory[from:end]
}

// factList holds where each fact begins, and whether a function keeps it.
type factList map[uint32]bool

// add adds the facts of a function. Functions share facts that are alike.
func (l factList) add(f []byte) {
	behind := f[functionSize+4*field(f, countersField):]
	for kind := range int(f[factsField]) {
		if at := field(behind, 4*kind); at != noFact {
			l[at] = l[at] || !slices.Contains(traceFacts, kind)
		}
	}
}

// clearDropped clears the facts that no function keeps: each ends where the next begins. The last one stays.
func (l factList) clearDropped(facts []byte) error {
	begins := slices.Sorted(maps.Keys(l))
	if len(begins) > 0 && uint64(begins[len(begins)-1]) > uint64(len(facts)) {
		return errTable
	}
	for i := 1; i < len(begins); i++ {
		if from := begins[i-1]; !l[from] {
			clear(facts[from:begins[i]])
		}
	}
	return nil
}
