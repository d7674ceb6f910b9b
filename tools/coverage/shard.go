package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"

	"toewright/internal/engine"
	"toewright/internal/shards"
)

// simulation is an experiment as numbered cars or jobs, each of which is simulated by itself,
// and the page that is written of what came of all.
type simulation[R any] struct {
	of   any // the experiment, as a part says it
	size int
	one  func(ctx context.Context, i int) (R, error)
	page func(w io.Writer, all []R) (kept bool, err error)
}

// do simulates a shard's numbers, those from its index on by as many as there are shards.
func (s *simulation[R]) do(ctx context.Context, own engine.Shard) ([]R, error) {
	n := (s.size - own.Index + own.Of - 1) / own.Of
	out, errs := make([]R, n), make([]error, n)
	onAll(n, func(k int) {
		if errs[k] = ctx.Err(); errs[k] == nil {
			out[k], errs[k] = s.one(ctx, own.Index+k*own.Of)
		}
	})
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return out, ctx.Err()
}

// part is what came of a shard of an experiment.
type part[R any] struct {
	Experiment json.RawMessage `json:"experiment"`
	Shard      engine.Shard    `json:"shard"`
	Results    []R             `json:"results"`
}

// write writes the whole page.
func (s *simulation[R]) write(ctx context.Context, w io.Writer) (kept bool, err error) {
	all, err := s.do(ctx, engine.Whole)
	if err != nil {
		return false, err
	}
	return s.page(w, all)
}

// writePart writes the part of a shard, one line of JSON.
func (s *simulation[R]) writePart(ctx context.Context, own engine.Shard, w io.Writer) error {
	results, err := s.do(ctx, own)
	if err != nil {
		return err
	}
	of, err := json.Marshal(s.of)
	if err != nil {
		return err
	}
	return json.NewEncoder(w).Encode(part[R]{of, own, results})
}

// merge writes the page from the parts of all shards.
func (s *simulation[R]) merge(files []string, w io.Writer) (kept bool, err error) {
	all, had := make([]R, s.size), map[engine.Shard]bool{}
	var first engine.Shard
	for _, name := range files {
		p, err := s.read(name)
		if err != nil {
			return false, fmt.Errorf("%s: %w", name, err)
		}
		if len(had) == 0 {
			first = p.Shard
		}
		if had[p.Shard] || p.Shard.Of != first.Of {
			return false, fmt.Errorf("%s: shard %d/%d is there twice, or divides otherwise", name, p.Shard.Index, p.Shard.Of)
		}
		had[p.Shard] = true
		for k, r := range p.Results {
			all[p.Shard.Index+k*p.Shard.Of] = r
		}
	}
	if len(had) == 0 || len(had) < first.Of {
		return false, fmt.Errorf("%d of %d shards are there", len(had), first.Of)
	}
	return s.page(w, all)
}

// read reads a part of this experiment.
func (s *simulation[R]) read(name string) (p part[R], err error) {
	data, err := os.ReadFile(name)
	if err != nil {
		return p, err
	}
	if err := shards.Strict(data, &p); err != nil {
		return p, err
	}
	of, err := json.Marshal(s.of)
	if err != nil {
		return p, err
	}
	if !bytes.Equal(of, p.Experiment) {
		return p, fmt.Errorf("is of another experiment: %s, want %s", p.Experiment, of)
	}
	n, i := p.Shard.Of, p.Shard.Index
	if n < 1 || i < 0 || i >= n || len(p.Results) != (s.size-i+n-1)/n {
		return p, fmt.Errorf("has %d results, which are not those of shard %d/%d", len(p.Results), i, n)
	}
	return p, nil
}
