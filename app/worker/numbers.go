package worker

import (
	"context"
	"encoding/binary"
	"errors"
	"math"

	"toewright/internal/engine"
	"toewright/internal/study"
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

// Band says which share of a map's rows is asked for.
type Band struct {
	engine.MapOptions
	Shard engine.Shard `json:"shard"`
}

// mapBand answers with the figures in radians, row after row.
func mapBand(ctx context.Context, d *study.Document, o Band) (wasm.Bytes, error) {
	run, err := engine.NewMapRun(d, o.MapOptions)
	if err != nil {
		return nil, err
	}
	cells, err := run.Fill(ctx, o.Shard)
	if err != nil {
		return nil, err
	}
	out := make([]float64, len(cells))
	for i, c := range cells {
		out[i] = float64(c)
	}
	return pack(out), nil
}

func mapRoom(ctx context.Context, d *study.Document, o engine.MapOptions) (wasm.Bytes, error) {
	room, err := engine.MapRoom(ctx, d, o)
	return pack(room), err
}
