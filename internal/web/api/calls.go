package api

import (
	"context"

	"github.com/spf13/pflag"

	"toewright/internal/engine"
	"toewright/internal/options"
	"toewright/internal/study"
)

// ask answers a call on a study. What it returns is written as JSON.
type ask func(context.Context, *study.Document) (any, error)

// call is one of the engine's calls.
type call struct {
	name    string // the last part of its path
	summary string
	result  any // a value of the type that it answers with
	// prepare adds the options to a set of flags and returns the call that is
	// made once they are set.
	prepare func(*pflag.FlagSet) ask
}

var calls = []call{
	{"sweep", "Move the wheels through their travel", engine.SweepResult{}, func(fs *pflag.FlagSet) ask {
		var o engine.SweepOptions
		options.Sweep(fs, &o)
		return func(ctx context.Context, d *study.Document) (any, error) { return engine.Sweep(ctx, d, o) }
	}},
	{"compare", "Put the candidates beside the base car", engine.CompareResult{}, func(fs *pflag.FlagSet) ask {
		var o engine.CompareOptions
		options.Compare(fs, &o)
		return func(ctx context.Context, d *study.Document) (any, error) { return engine.Compare(ctx, d, o) }
	}},
	{"steer", "Steer the wheels from lock to lock", engine.SteerResult{}, func(fs *pflag.FlagSet) ask {
		var o engine.SteerOptions
		options.Steer(fs, &o)
		return func(ctx context.Context, d *study.Document) (any, error) { return engine.Steer(ctx, d, o) }
	}},
	{"diagnose", "Say why a toe curve is what it is, and what would mend it", engine.DiagnoseResult{}, func(fs *pflag.FlagSet) ask {
		var o engine.DiagnoseOptions
		options.Diagnose(fs, &o)
		return func(ctx context.Context, d *study.Document) (any, error) { return engine.Diagnose(ctx, d, o) }
	}},
	{"search", "Find the values that bring toe change nearest to its target", engine.SearchResult{}, func(fs *pflag.FlagSet) ask {
		var o engine.SearchOptions
		options.Search(fs, &o)
		return func(ctx context.Context, d *study.Document) (any, error) { return engine.Search(ctx, d, o) }
	}},
	{"fit", "Find the car behind gauge readings, and the spacers it wants", engine.FitResult{}, func(fs *pflag.FlagSet) ask {
		var o engine.FitOptions
		options.Fit(fs, &o)
		return func(ctx context.Context, d *study.Document) (any, error) { return engine.Fit(ctx, d, o) }
	}},
	{"tolerance", "Build a series of cars within their tolerances", engine.ToleranceResult{}, func(fs *pflag.FlagSet) ask {
		var o engine.ToleranceOptions
		options.Tolerance(fs, &o)
		return func(ctx context.Context, d *study.Document) (any, error) { return engine.Tolerance(ctx, d, o) }
	}},
	{"choose", "Try every combination of the catalogue's parts", engine.ChooseResult{}, func(fs *pflag.FlagSet) ask {
		var o engine.ChooseOptions
		options.Choose(fs, &o)
		return func(ctx context.Context, d *study.Document) (any, error) { return engine.Choose(ctx, d, o) }
	}},
	{"map", "Draw the result over two parameters", engine.MapResult{}, func(fs *pflag.FlagSet) ask {
		var o engine.MapOptions
		options.Map(fs, &o)
		return func(ctx context.Context, d *study.Document) (any, error) { return engine.Map(ctx, d, o) }
	}},
}

// flags returns the options of a call, and the call made once they are set.
func (c *call) flags() (*pflag.FlagSet, ask) {
	fs := pflag.NewFlagSet(c.name, pflag.ContinueOnError)
	return fs, c.prepare(fs)
}
