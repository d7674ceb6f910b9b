package batch

import (
	"context"
	"encoding/json"
	"fmt"

	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/optimize"
)

// toleranceJob builds a series of cars.
type toleranceJob struct {
	run *engine.ToleranceRun
	sum *optimize.Census
}

func newTolerance(d *study.Document, options json.RawMessage) (job, error) {
	var o engine.ToleranceOptions
	if err := strict(options, &o); err != nil {
		return nil, err
	}
	run, err := engine.NewToleranceRun(d, o)
	if err != nil {
		return nil, err
	}
	return &toleranceJob{run, run.Empty()}, nil
}

// census is the result of a shard.
type census struct {
	Cars   int      `json:"cars"`
	Failed int      `json:"failed"`
	Passed int      `json:"passed"`
	Figure counts   `json:"figure"`
	Curve  []counts `json:"curve"`
}

func (j *toleranceJob) do(ctx context.Context, s engine.Shard) (any, error) {
	c, err := j.run.Build(ctx, s)
	if err != nil {
		return nil, err
	}
	out := census{Cars: c.Cars, Failed: c.Failed, Passed: c.Passed, Figure: countsOf(c.Figure)}
	for _, t := range c.Curve {
		out.Curve = append(out.Curve, countsOf(t))
	}
	return out, nil
}

func (j *toleranceJob) add(s engine.Shard, raw json.RawMessage) error {
	var c census
	if err := strict(raw, &c); err != nil {
		return err
	}
	if n := j.run.Span(s).Len(); c.Cars != n {
		return fmt.Errorf("result.cars: %d, want the %d of its shard", c.Cars, n)
	}
	if c.Failed < 0 || c.Failed > c.Cars || c.Passed < 0 || c.Passed > c.Cars-c.Failed {
		return fmt.Errorf("result: %d failed and %d passed of %d cars", c.Failed, c.Passed, c.Cars)
	}
	part, err := j.read(&c)
	if err != nil {
		return err
	}
	j.sum.Join(part)
	return nil
}

// read returns the census that a result holds.
func (j *toleranceJob) read(c *census) (*optimize.Census, error) {
	out := j.run.Empty()
	out.Cars, out.Failed, out.Passed = c.Cars, c.Failed, c.Passed
	built := c.Cars - c.Failed
	if err := c.Figure.putInto(out.Figure, built); err != nil {
		return nil, fmt.Errorf("result.figure: %w", err)
	}
	if len(c.Curve) != len(out.Curve) {
		return nil, fmt.Errorf("result.curve: %d places, want %d", len(c.Curve), len(out.Curve))
	}
	for i, k := range c.Curve {
		if err := k.putInto(out.Curve[i], built); err != nil {
			return nil, fmt.Errorf("result.curve.%d: %w", i, err)
		}
	}
	return out, nil
}

func (j *toleranceJob) answer(ctx context.Context) (any, error) { return j.run.Result(ctx, j.sum), nil }
