package main

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// TestFindingIsWritten holds a program's memory, once it is laid out, to what was linked, but for what
// traces are made of and the buckets that are never looked at; where there is node.
func TestFindingIsWritten(t *testing.T) {
	linked := build(t, source)
	smaller := filepath.Join(filepath.Dir(linked), "smaller.wasm")
	if err := run(smaller, linked); err != nil {
		t.Fatal(err)
	}
	before, after := memoryOf(t, linked), memoryOf(t, smaller)
	var f finding
	if err := f.take(bytes.Clone(before)); err != nil {
		t.Fatal(err)
	}
	for what, at := range map[string]int{"bucket": f.buckets + 7*bucketStride, "entry of the table": f.functions + 7*entrySize, "record": f.functions + int(f.record)} {
		if field(before[at:], 0) == 0 || field(after[at:], 0) != 0 {
			t.Errorf("the %s of a function is %d and became %d, want it in what was linked alone", what, field(before[at:], 0), field(after[at:], 0))
		}
	}
	laidOut := filepath.Join(filepath.Dir(linked), "memory")
	out, err := exec.Command("node", "-e", fmt.Sprintf(`
		const anything = new Proxy({}, { get: () => () => 0 }), fs = require("fs");
		WebAssembly.instantiate(fs.readFileSync(%q), { gojs: anything })
			.then(({ instance }) => fs.writeFileSync(%q, new Uint8Array(instance.exports.mem.buffer)));`, smaller, laidOut)).CombinedOutput()
	if errors.Is(err, exec.ErrNotFound) {
		t.Log("not run: there is no node")
		return
	}
	if err != nil {
		t.Fatalf("node: %v: %s", err, out)
	}
	memory, err := os.ReadFile(laidOut)
	if err != nil {
		t.Fatal(err)
	}
	want := bytes.Clone(before)
	if err := dropTraces(want); err != nil {
		t.Fatal(err)
	}
	unread := func(at int) bool {
		in := at - f.buckets
		return in >= 0 && in < bucketStride*(f.number-1) && in%bucketStride >= lastBucket
	}
	for at, b := range want {
		if memory[at] != b && !unread(at) {
			t.Fatalf("byte %#x of memory is %d, want %d as it was linked; functions are found by %+v", at, memory[at], b, f)
		}
	}
}

// TestOtherFinding refuses a memory in which functions are not found as they are known to be.
func TestOtherFinding(t *testing.T) {
	memory := memoryOf(t, build(t, source))
	table := bytes.Index(memory, tableMagic)
	record := bytes.Index(memory, binary.LittleEndian.AppendUint64(binary.LittleEndian.AppendUint64(nil, uint64(table)), uint64(table)+headerSize))
	at := int(binary.LittleEndian.Uint64(memory[record+8*bucketsWord:]))
	functions := table + int(binary.LittleEndian.Uint64(memory[table+64:]))
	number := int(binary.LittleEndian.Uint64(memory[table+8:]))
	for _, tt := range []struct {
		name string
		edit func(m []byte)
	}{
		{"no record of the parts", func(m []byte) { m[record]++ }},
		{"buckets outside of memory", func(m []byte) { binary.LittleEndian.PutUint64(m[record+8*bucketsWord:], uint64(len(m))-100) }},
		{"something behind the buckets", func(m []byte) { m[record+8*endWord]-- }},
		{"buckets that end sooner", func(m []byte) { m[record+8*endWord] ^= 16 }},
		{"another function in a bucket", func(m []byte) { m[at+20*bucketStride]++ }},
		{"an offset in a bucket", func(m []byte) { m[at+20*bucketStride+bucketOffsets]++ }},
		{"a function of another number", func(m []byte) { m[functions+30*entrySize]++ }},
		{"a record elsewhere", func(m []byte) { m[functions+30*entrySize+4] += recordAlign }},
		{"another number in a record", func(m []byte) { m[functions+int(field(m[functions+30*entrySize:], 4))]++ }},
		{"another end", func(m []byte) { m[functions+number*entrySize]++ }},
	} {
		t.Run(tt.name, func(t *testing.T) {
			m := bytes.Clone(memory)
			tt.edit(m)
			if err := new(finding).take(m); !errors.Is(err, errTable) {
				t.Errorf("error %v, want that the table is another one", err)
			}
		})
	}
}
