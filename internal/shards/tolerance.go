package shards

import (
	"context"
	"encoding/json"
	"fmt"

	"toewright/internal/engine"
	"toewright/optimize"
)

// toleranceJob builds a series of cars.
type toleranceJob struct {
	Run
	run *engine.ToleranceRun
	sum *engine.Built
}

// Tolerance is the [Start] of that call.
func Tolerance(r Run) (Job, error) {
	o := engine.ToleranceOptions{Progress: r.Progress}
	if err := Strict(r.Options, &o); err != nil {
		return nil, err
	}
	run, err := engine.NewToleranceRun(r.Study, o)
	if err != nil {
		return nil, err
	}
	return &toleranceJob{r, run, run.Empty()}, nil
}

// census is what a shard counts.
type census struct {
	Cars     int       `json:"cars"`
	Failed   int       `json:"failed"`
	Passed   int       `json:"passed"`
	Figure   counts    `json:"figure"`
	Curve    []counts  `json:"curve"`
	InSetUps []*census `json:"inSetUps,omitzero"` // which have none themselves
}

// Do implements [Job].
func (j *toleranceJob) Do(ctx context.Context, s engine.Shard) (any, error) {
	b, err := j.run.Build(ctx, s)
	if err != nil {
		return nil, err
	}
	out := censusOf(b.Census)
	for _, c := range b.InSetUps {
		out.InSetUps = append(out.InSetUps, censusOf(c))
	}
	return out, nil
}

// censusOf writes what was counted; nil of nothing.
func censusOf(c *optimize.Census) *census {
	if c == nil {
		return nil
	}
	out := &census{Cars: c.Cars, Failed: c.Failed, Passed: c.Passed, Figure: countsOf(c.Figure)}
	for _, t := range c.Curve {
		out.Curve = append(out.Curve, countsOf(t))
	}
	return out
}

// Add implements [Job].
func (j *toleranceJob) Add(s engine.Shard, raw json.RawMessage) error {
	var c census
	if err := Strict(raw, &c); err != nil {
		return err
	}
	part := j.run.Empty()
	if err := j.read(&c, j.run.Span(s), part.Census); err != nil {
		return fmt.Errorf("result%w", err)
	}
	if len(c.InSetUps) != len(part.InSetUps) {
		return fmt.Errorf("result.inSetUps: %d set-ups, want %d", len(c.InSetUps), len(part.InSetUps))
	}
	for i, up := range c.InSetUps {
		if (up == nil) != (part.InSetUps[i] == nil) {
			return fmt.Errorf("result.inSetUps.%d: cars where none can be built, or none where they can", i)
		}
		if up == nil {
			continue
		}
		if err := j.read(up, j.run.InSetUp(s), part.InSetUps[i]); err != nil {
			return fmt.Errorf("result.inSetUps.%d%w", i, err)
		}
	}
	j.sum.Join(part)
	return nil
}

// read puts what a shard has counted of its cars into an empty census.
func (j *toleranceJob) read(c *census, cars optimize.Span, out *optimize.Census) error {
	if n := cars.Len(); j.wrongCount(c.Cars, n) {
		return fmt.Errorf(".cars: %d, want the %d of its shard", c.Cars, n)
	}
	if c.Failed < 0 || c.Failed > c.Cars || c.Passed < 0 || c.Passed > c.Cars-c.Failed {
		return fmt.Errorf(": %d failed and %d passed of %d cars", c.Failed, c.Passed, c.Cars)
	}
	out.Cars, out.Failed, out.Passed = c.Cars, c.Failed, c.Passed
	built := c.Cars - c.Failed
	if err := c.Figure.putInto(out.Figure, built); err != nil {
		return fmt.Errorf(".figure: %w", err)
	}
	if len(c.Curve) != len(out.Curve) {
		return fmt.Errorf(".curve: %d places, want %d", len(c.Curve), len(out.Curve))
	}
	for i, k := range c.Curve {
		if err := k.putInto(out.Curve[i], built); err != nil {
			return fmt.Errorf(".curve.%d: %w", i, err)
		}
	}
	return nil
}

// Answer implements [Job].
func (j *toleranceJob) Answer(ctx context.Context) (any, error) { return j.run.Result(ctx, j.sum) }
