package options

import (
	"github.com/spf13/pflag"

	"toewright/internal/engine"
	"toewright/internal/report"
)

// Tolerance adds the options of a series of cars.
func Tolerance(fs *pflag.FlagSet, o *engine.ToleranceOptions) {
	candidate(fs, &o.Candidate)
	count(fs, &o.Cars, "cars", "`number` of cars built; that of the study, or 20000, where not given")
	optional(fs, &o.Limit, "limit", "largest toe change in `degrees` that passes, in place of the study's")
	choose(fs, &o.Figure, "figure", "figure held against the limit", "peak", "rms")
	side(fs, &o.Side)
	choose(fs, &o.Toe, "toe", "static toe: set again on each car, or what comes of its parts, in place of the study's", engine.ToeReSet, "as-built")
	seed(fs, &o.Seed, "cars")
}

// Choose adds the options of a choice from the catalogue.
func Choose(fs *pflag.FlagSet, o *engine.ChooseOptions) {
	choose(fs, &o.Figure, "figure", "figure that combinations are ranked by", "rms", "peak")
	side(fs, &o.Side)
	choose(fs, &o.Effect, "effect", "what else an undominated combination must not be beaten in", "parts")
	count(fs, &o.Most, "most", "`number` of the best combinations listed; 20 where not given")
}

// Map adds the options of a map.
func Map(fs *pflag.FlagSet, o *engine.MapOptions) {
	candidate(fs, &o.Candidate)
	choose(fs, &o.Figure, "figure", "figure drawn", "rms", "peak")
	side(fs, &o.Side)
	fs.StringVar(&o.Scenario, "scenario", "", "`name` of the search's set-up that the car is in, or all for all of them together; as it stands where not given")
	fs.StringVar(&o.X, X, "", "`parameter` across; the search's first variable where not given")
	fs.StringVar(&o.Y, Y, "", "`parameter` upward; the search's second variable where not given")
	optional(fs, &o.XMin, "x-min", "least value across, in place of the usual bound")
	optional(fs, &o.XMax, "x-max", "largest value across")
	optional(fs, &o.YMin, "y-min", "least value upward")
	optional(fs, &o.YMax, "y-max", "largest value upward")
	count(fs, &o.Columns, "columns", "`number` of cells across; 64 where not given")
	count(fs, &o.Rows, "rows", "`number` of cells upward; 64 where not given")
}

// Report adds the options of a bench sheet.
func Report(fs *pflag.FlagSet, o *report.Options) {
	fs.StringVar(&o.Candidate, Candidate, "", "`name` of the candidate whose sheet it is; the first that is not hidden where not given")
	fs.StringVar(&o.Yardstick, Yardstick, "", "`name` of the car it is compared with; base where the study names none")
	fs.StringVar(&o.Date, "date", "", "date as `text`, in place of the study's")
	choose(fs, (*string)(&o.Paper), "paper", "printed page; letter for a study shown in inches, else a4", report.Papers...)
	count(fs, &o.Cars, "cars", "`number` of cars built for the tolerances; that of the study, or 20000, where not given")
}
