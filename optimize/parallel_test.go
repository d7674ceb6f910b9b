package optimize_test

import (
	"context"
	"reflect"
	"testing"

	"toewright/optimize"
)

// TestParallelDoesNotMatter: the same series, shelf and map, however they are
// divided.
func TestParallelDoesNotMatter(t *testing.T) {
	ctx := context.Background()
	series, shelf := textbookSeries(t), textbookShelf(t)
	spread, err := series.Propagate()
	if err != nil {
		t.Fatal(err)
	}
	j := textbookJudge(t)
	grid := optimize.ParameterMap{Judge: j, X: freeOf(t, j.Base, "tieRodOuterHeight", -5, 5), Y: freeOf(t, j.Base, "tieRodInnerHeight", -5, 5), Columns: 7, Rows: 9}
	for _, tt := range []struct {
		name string
		run  func(optimize.Parallel) (any, error)
	}{
		{"series", func(p optimize.Parallel) (any, error) { return series.Count(ctx, spread, cars(300), p) }},
		{"shelf", func(p optimize.Parallel) (any, error) { return shelf.Try(ctx, optimize.Span{End: 36}, p) }},
		{"map", func(p optimize.Parallel) (any, error) { return grid.Fill(ctx, optimize.Span{End: 9}, p) }},
	} {
		t.Run(tt.name, func(t *testing.T) {
			want, err := tt.run(optimize.Parallel{Workers: 1})
			if err != nil {
				t.Fatal(err)
			}
			for _, p := range []optimize.Parallel{{}, {Workers: 3, Chunk: 2}, {Workers: 2, Chunk: 1}} {
				done := 0
				p.Progress = func(n int) { done = n }
				got, err := tt.run(p)
				if err != nil {
					t.Fatal(err)
				}
				if !reflect.DeepEqual(got, want) {
					t.Errorf("%+v: differs from the run of one worker", p)
				}
				if done == 0 {
					t.Errorf("%+v: no progress was reported", p)
				}
			}
		})
	}
}

func TestParallelCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	series := textbookSeries(t)
	spread, err := series.Propagate()
	if err != nil {
		t.Fatal(err)
	}
	p := optimize.Parallel{Workers: 2, Chunk: 10, Progress: func(int) { cancel() }}
	got, err := series.Count(ctx, spread, cars(100_000), p)
	if err != nil {
		t.Fatal(err)
	}
	if got.Cars == 0 || got.Cars > 1000 {
		t.Errorf("%d cars after a cancel at the first chunk", got.Cars)
	}
}

// TestParallelRefuses: what cannot be begun is an error of the call, not of its
// goroutines.
func TestParallelRefuses(t *testing.T) {
	series := textbookSeries(t)
	spread, err := series.Propagate()
	if err != nil {
		t.Fatal(err)
	}
	series.Tolerances = nil
	if _, err := series.Count(context.Background(), spread, cars(1000), optimize.Parallel{}); err == nil {
		t.Error("a series without tolerances was built")
	}
}
