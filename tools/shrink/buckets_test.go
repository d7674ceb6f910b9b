package main

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"os/exec"
	"path/filepath"
	"testing"
)

// TestBucketsAreWritten holds the buckets that a program has in memory, once that is laid out, to those
// that were linked, where there is node.
func TestBucketsAreWritten(t *testing.T) {
	linked := build(t, source)
	smaller := filepath.Join(filepath.Dir(linked), "smaller.wasm")
	if err := run(smaller, linked); err != nil {
		t.Fatal(err)
	}
	before, after := memoryOf(t, linked), memoryOf(t, smaller)
	var b buckets
	if err := b.take(bytes.Clone(before)); err != nil {
		t.Fatal(err)
	}
	if field(before[b.at+7*bucketStride:], 0) != 7 || field(after[b.at+7*bucketStride:], 0) != 0 {
		t.Error("want buckets in what was linked, and none in what became of it")
	}
	out, err := exec.Command("node", "-e", fmt.Sprintf(`
		const anything = new Proxy({}, { get: () => () => 0 });
		WebAssembly.instantiate(require("fs").readFileSync(%q), { gojs: anything }).then(({ instance }) => {
			const memory = new DataView(instance.exports.mem.buffer);
			let right = 0;
			for (let i = 0; i < %d; i++) {
				right += memory.getUint32(%d + i * %d, true) === i && memory.getUint8(%d + i * %d) === 0;
			}
			console.log(right);
		});`, smaller, b.functions, b.at, bucketStride, b.at+bucketOffsets, bucketStride)).CombinedOutput()
	if errors.Is(err, exec.ErrNotFound) {
		t.Log("not run: there is no node")
		return
	}
	if got, want := string(out), fmt.Sprintln(b.functions); err != nil || got != want {
		t.Errorf("node says %q (%v), want that all %s buckets are right", got, err, want)
	}
}

// TestOtherBuckets refuses a memory whose buckets are not as they are known to be.
func TestOtherBuckets(t *testing.T) {
	memory := memoryOf(t, build(t, source))
	table := bytes.Index(memory, tableMagic)
	record := bytes.Index(memory, binary.LittleEndian.AppendUint64(binary.LittleEndian.AppendUint64(nil, uint64(table)), uint64(table)+headerSize))
	at := int(binary.LittleEndian.Uint64(memory[record+8*bucketsWord:]))
	for _, tt := range []struct {
		name string
		edit func(m []byte)
	}{
		{"no record of the parts", func(m []byte) { m[record]++ }},
		{"buckets outside of memory", func(m []byte) { binary.LittleEndian.PutUint64(m[record+8*bucketsWord:], uint64(len(m))-100) }},
		{"another function in a bucket", func(m []byte) { m[at+20*bucketStride]++ }},
		{"an offset in a bucket", func(m []byte) { m[at+20*bucketStride+bucketOffsets]++ }},
		{"functions that are not counted on", func(m []byte) { m[int(binary.LittleEndian.Uint64(memory[table+64:]))+table+8*30]++ }},
	} {
		t.Run(tt.name, func(t *testing.T) {
			m := bytes.Clone(memory)
			tt.edit(m)
			if err := new(buckets).take(m); !errors.Is(err, errTable) {
				t.Errorf("error %v, want that the table is another one", err)
			}
		})
	}
}
