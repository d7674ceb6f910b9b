package main

import (
	"fmt"
	"slices"
)

// By a program counter the runtime finds a function through three things that follow from one another,
// which a program can write sooner than a browser loads them:
//
//   - The table of functions says of each at which number its counters begin, one after the other, and
//     where its record stands, one behind the other.
//   - Each record begins with that number.
//   - A table of buckets, one for each 4096 counters, says at which function to begin (findfuncbucket in
//     src/runtime/symtab.go). On WebAssembly a function has 65536 counters, of which the runtime looks at
//     the first bucket alone: at one of sixteen, and the n-th of those says n. The last bucket has but the
//     first of its offsets.
const (
	bucketStride  = 16 * 20 // from one function's bucket to the next one's
	bucketOffsets = 4       // where the offsets within a bucket begin, of which the first is used
	lastBucket    = bucketOffsets + 1
	entrySize     = 8 // of the table of functions
	recordAlign   = 8
)

// finding is what the functions of a program are found by.
type finding struct {
	buckets, functions int    // where they begin in memory; records are counted from the latter
	number             int    // of functions
	first, record      uint32 // the first function's number, and where its record stands
}

// take clears what the functions of a program are found by, which fill writes anew.
func (f *finding) take(memory []byte) error {
	t, err := findTable(memory)
	if err != nil {
		return err
	}
	if t.parts == nil {
		return fmt.Errorf("the record of the program's parts: %w", errTable)
	}
	from, end, size := t.parts.word(bucketsWord), t.parts.word(endWord), uint64(bucketStride*(t.number-1)+lastBucket)
	if end > uint64(len(memory)) || from > end || size != end-from || len(t.functions) < entrySize*(t.number+1) {
		return fmt.Errorf("the buckets at byte %d: %w", from, errTable)
	}
	buckets := memory[from:][:size]
	*f = finding{int(from), len(memory) - len(t.functions), t.number, t.place(0), t.recordAt(0)}
	if err := f.check(t, buckets); err != nil {
		return err
	}
	for i := range t.number {
		clear(t.functions[t.recordAt(i):][:4])
	}
	clear(t.functions[:entrySize*(t.number+1)])
	clear(buckets)
	return nil
}

// check returns an error where fill would write something else than there is.
func (f *finding) check(t table, buckets []byte) error {
	at := f.record
	for i := range t.number {
		r, err := t.function(i)
		if err != nil {
			return err
		}
		number, bucket := f.first+uint32(i), buckets[i*bucketStride:]
		switch {
		case t.place(i) != number, t.recordAt(i) != at, field(r, 0) != number:
			return fmt.Errorf("the number of function %d: %w", i, errTable)
		case field(bucket, 0) != uint32(i), bucket[bucketOffsets] != 0:
			return fmt.Errorf("the bucket of function %d: %w", i, errTable)
		}
		size := functionSize + 4*(field(r, countersField)+uint32(r[factsField]))
		at += (size + recordAlign - 1) &^ (recordAlign - 1)
	}
	if t.place(t.number) != f.first+uint32(t.number) || t.recordAt(t.number) != 0 {
		return fmt.Errorf("the end of the table: %w", errTable)
	}
	return nil
}

// fill returns a function, without arguments and results, that writes what functions are found by.
func (f *finding) fill() function {
	const n, record = 0, 1 // locals: the number of a function from 0, and where its record stands
	address := func(size int64) []instruction {
		return []instruction{numbered(getLocal, n), constant(constI32, size), plain(multiplyI32)}
	}
	number := []instruction{numbered(getLocal, n), constant(constI32, int64(f.first)), plain(addI32)}
	put := func(at int) []instruction { return []instruction{accessing(storeI32, 2, int64(at))} }
	inRecord := func(op, align byte, at int) []instruction {
		return []instruction{numbered(getLocal, record), accessing(op, align, int64(f.functions+at))}
	}
	return function{
		locals: []locals{{2, typeI32}},
		code: slices.Concat(
			[]instruction{constant(constI32, int64(f.record)), numbered(setLocal, record), opening(loop)},
			address(entrySize), number, put(f.functions),
			address(entrySize), []instruction{numbered(getLocal, record)}, put(f.functions+4),
			[]instruction{numbered(getLocal, record)}, number, put(f.functions),
			address(bucketStride), []instruction{numbered(getLocal, n)}, put(f.buckets),
			// The next record begins behind this one.
			[]instruction{numbered(getLocal, record)},
			inRecord(loadI32, 2, countersField), inRecord(loadU8, 0, factsField),
			[]instruction{
				plain(addI32), constant(constI32, 4), plain(multiplyI32),
				constant(constI32, functionSize+recordAlign-1), plain(addI32), constant(constI32, -recordAlign), plain(andI32),
				plain(addI32), numbered(setLocal, record),
				numbered(getLocal, n), constant(constI32, 1), plain(addI32), numbered(teeLocal, n),
				constant(constI32, int64(f.number)), plain(lessU32), numbered(branchIf, 0),
				plain(end),
			},
			address(entrySize), number, put(f.functions),
			[]instruction{plain(end)},
		),
	}
}
