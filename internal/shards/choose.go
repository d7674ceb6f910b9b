package shards

import (
	"context"
	"encoding/json"
	"fmt"

	"toewright/internal/engine"
	"toewright/optimize"
	"toewright/solver"
)

// chooseJob tries the combinations of a catalogue.
type chooseJob struct {
	Run
	run *engine.ChooseRun
	sum optimize.Choices
}

// Choose is the [Start] of that call.
func Choose(r Run) (Job, error) {
	o := engine.ChooseOptions{Progress: r.Progress}
	if err := Strict(r.Options, &o); err != nil {
		return nil, err
	}
	run, err := engine.NewChooseRun(r.Study, o)
	if err != nil {
		return nil, err
	}
	return &chooseJob{Run: r, run: run}, nil
}

// choices is the result of a shard.
type choices struct {
	Tried int      `json:"tried"`
	Built int      `json:"built"`
	Best  []choice `json:"best"`
	Front []choice `json:"front"`
}

type choice struct {
	Number  int       `json:"number"`
	Price   float64   `json:"price"`
	RMS     float64   `json:"rms"`  // radians
	Peak    float64   `json:"peak"` // radians
	Effects []float64 `json:"effects,omitzero"`
}

// Do implements [Job].
func (j *chooseJob) Do(ctx context.Context, s engine.Shard) (any, error) {
	found, err := j.run.Try(ctx, s)
	if err != nil {
		return nil, err
	}
	return choices{Tried: found.Tried, Built: found.Built, Best: written(found.Best), Front: written(found.Front)}, nil
}

func written(list []optimize.Choice) []choice {
	out := make([]choice, len(list))
	for i, c := range list {
		out[i] = choice{c.Number, c.Price, c.Figures.RMS.Radians(), c.Figures.Peak.Radians(), c.Effects}
	}
	return out
}

// Add implements [Job].
func (j *chooseJob) Add(s engine.Shard, raw json.RawMessage) error {
	var c choices
	if err := Strict(raw, &c); err != nil {
		return err
	}
	span := j.run.Span(s)
	if j.wrongCount(c.Tried, span.Len()) {
		return fmt.Errorf("result.tried: %d, want the %d of its shard", c.Tried, span.Len())
	}
	if c.Built < 0 || c.Built > c.Tried || !j.run.Listed(len(c.Best), c.Built) || len(c.Front) > c.Built {
		return fmt.Errorf("result: %d best and %d undominated of %d built, %d tried", len(c.Best), len(c.Front), c.Built, c.Tried)
	}
	part := optimize.Choices{Tried: c.Tried, Built: c.Built}
	var err error
	if part.Best, err = j.read(c.Best, span); err != nil {
		return fmt.Errorf("result.best.%w", err)
	}
	if part.Front, err = j.read(c.Front, span); err != nil {
		return fmt.Errorf("result.front.%w", err)
	}
	j.run.Join(&j.sum, &part)
	return nil
}

// read returns the choices of a list, each of another combination of the span.
func (j *chooseJob) read(list []choice, span optimize.Span) ([]optimize.Choice, error) {
	seen := map[int]bool{}
	out := make([]optimize.Choice, len(list))
	for i, c := range list {
		if c.Number < span.First || c.Number >= span.End || seen[c.Number] {
			return nil, fmt.Errorf("%d: combination %d, want each of %d to %d once at most", i, c.Number, span.First, span.End-1)
		}
		seen[c.Number] = true
		if !(c.RMS >= 0 && c.Peak >= 0) || len(c.Effects) != j.run.Effects() {
			return nil, fmt.Errorf("%d: rms %g, peak %g and %d effects, want 0 or more and %d", i, c.RMS, c.Peak, len(c.Effects), j.run.Effects())
		}
		figures := optimize.Figures{RMS: solver.Angle(c.RMS), Peak: solver.Angle(c.Peak)}
		out[i] = optimize.Choice{Number: c.Number, Price: c.Price, Figures: figures, Effects: c.Effects}
	}
	return out, nil
}

// Answer implements [Job].
func (j *chooseJob) Answer(ctx context.Context) (any, error) { return j.run.Result(ctx, &j.sum) }
