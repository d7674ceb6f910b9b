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

// TestFindingIsWritten holds what a program's functions are found by, once its memory is laid out, to
// what was linked, where there is node.
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
	for i := range f.number {
		entry := f.functions + entrySize*i
		for what, at := range map[string]int{
			"bucket": f.buckets + bucketStride*i, "number": entry, "place of its record": entry + 4, "number in its record": f.functions + int(field(before[entry+4:], 0)),
		} {
			if got, want := field(memory[at:], 0), field(before[at:], 0); got != want {
				t.Fatalf("function %d: the %s is %d, was %d", i, what, got, want)
			}
		}
		if got := memory[f.buckets+bucketStride*i+bucketOffsets]; got != 0 {
			t.Fatalf("function %d: the offset in its bucket is %d, was 0", i, got)
		}
	}
	if end := f.functions + entrySize*f.number; !bytes.Equal(memory[end:][:entrySize], before[end:][:entrySize]) {
		t.Errorf("the table ends with % x, did with % x", memory[end:][:entrySize], before[end:][:entrySize])
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
