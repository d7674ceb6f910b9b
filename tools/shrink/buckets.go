package main

import "fmt"

// The runtime finds a function by a program counter through a table of buckets, one for each 4096
// counters, whose first word says at which function to begin (findfuncbucket in src/runtime/symtab.go).
// On WebAssembly a function has 65536 counters, of which the runtime looks at the first bucket alone:
// at one of sixteen, and the n-th of those says n. A loop writes that sooner than it is loaded.
const (
	bucketSize    = 20
	bucketStride  = 16 * bucketSize // from one function's bucket to the next one's
	bucketOffsets = 4               // where the offsets within a bucket begin, of which the first is used
)

// buckets is where the buckets begin in memory, and of how many functions they are.
type buckets struct{ at, functions int }

// take clears the buckets of a program, which fill writes anew.
func (b *buckets) take(memory []byte) error {
	t, err := findTable(memory)
	if err != nil {
		return err
	}
	if t.parts == nil {
		return fmt.Errorf("the buckets: %w", errTable)
	}
	from, size := t.parts.word(bucketsWord), bucketStride*(t.number-1)+bucketSize
	if from > uint64(len(memory)) || size > len(memory)-int(from) {
		return fmt.Errorf("the buckets at byte %d: %w", from, errTable)
	}
	whole := memory[from:][:size]
	for i := range t.number {
		if one := whole[i*bucketStride:]; t.place(i) != t.place(0)+uint32(i) || field(one, 0) != uint32(i) || one[bucketOffsets] != 0 {
			return fmt.Errorf("the bucket of function %d: %w", i, errTable)
		}
	}
	clear(whole)
	*b = buckets{int(from), t.number}
	return nil
}

// fill returns a function, without arguments and results, that writes the buckets.
func (b buckets) fill() function {
	const n = 0 // the one local: the number of a function
	return function{
		locals: []locals{{1, typeI32}},
		code: []instruction{
			opening(loop),
			numbered(getLocal, n), constant(constI32, bucketStride), plain(multiplyI32), // the address
			numbered(getLocal, n), store(storeI32, 2, int64(b.at)),
			numbered(getLocal, n), constant(constI32, 1), plain(addI32), numbered(teeLocal, n),
			constant(constI32, int64(b.functions)), plain(lessU32), numbered(branchIf, 0),
			plain(end),
			plain(end),
		},
	}
}
