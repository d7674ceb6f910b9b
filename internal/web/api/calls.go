package api

import (
	"context"

	"github.com/spf13/pflag"

	"toewright/internal/engine"
	"toewright/internal/options"
	"toewright/internal/study"
)

// ask answers a call on a study. What it returns is written as JSON, unless it is a
// [*page].
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
	on("sweep", "Move the wheels through their travel", options.Sweep, engine.Sweep),
	on("compare", "Put the candidates beside the base car", options.Compare, engine.Compare),
	on("steer", "Steer the wheels from lock to lock", options.Steer, engine.Steer),
	on("diagnose", "Say why a toe curve is what it is, and what would mend it", options.Diagnose, engine.Diagnose),
	on("axle", "Say what both wheels of the axle do together", options.Axle, engine.Axle),
	on("search", "Find the values that bring toe change nearest to its target", options.Search, engine.Search),
	on("tradeoff", "Weigh toe change against a second aim", options.TradeOff, engine.TradeOff),
	on("fit", "Find the car behind gauge readings, and the spacers it wants", options.Fit, engine.Fit),
	on("tolerance", "Build a series of cars within their tolerances", options.Tolerance, engine.Tolerance),
	on("choose", "Try every combination of the catalogue's parts", options.Choose, engine.Choose),
	on("map", "Draw the result over two parameters", options.Map, engine.Map),
	on("loads", "Find the forces in rods, springs and steering arms under stated loads", options.Loads, engine.Loads),
	on("report", "Write the bench sheet of a candidate", options.Report, sheet),
}

// on returns the call that answers with what do returns for a study and options,
// which add enters in a set of flags.
func on[O, R any](name, summary string, add func(*pflag.FlagSet, *O), do func(context.Context, *study.Document, O) (*R, error)) call {
	var result R
	return call{name, summary, result, func(fs *pflag.FlagSet) ask {
		var o O
		add(fs, &o)
		return func(ctx context.Context, d *study.Document) (any, error) { return do(ctx, d, o) }
	}}
}

// flags returns the options of a call, and the call made once they are set.
func (c *call) flags() (*pflag.FlagSet, ask) {
	fs := pflag.NewFlagSet(c.name, pflag.ContinueOnError)
	return fs, c.prepare(fs)
}
