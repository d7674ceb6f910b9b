package worker

import (
	"encoding/binary"
	"errors"
	"math"

	"toewright/wasm"
)

// numberSize is that of a number among [wasm.Bytes].
const numberSize = 8

// errCut is what bytes are refused with that are no whole number of numbers.
var errCut = errors.New("worker: the numbers are cut off")

// pack returns numbers as the little-endian bytes of a Float64Array.
func pack(numbers []float64) wasm.Bytes {
	b := make(wasm.Bytes, 0, numberSize*len(numbers))
	for _, x := range numbers {
		b = binary.LittleEndian.AppendUint64(b, math.Float64bits(x))
	}
	return b
}

// Numbers reads what a method that makes many numbers has answered.
func Numbers(b []byte) ([]float64, error) {
	if len(b)%numberSize != 0 {
		return nil, errCut
	}
	out := make([]float64, len(b)/numberSize)
	for i := range out {
		out[i] = math.Float64frombits(binary.LittleEndian.Uint64(b[numberSize*i:]))
	}
	return out, nil
}
