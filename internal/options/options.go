package options

import (
	"github.com/spf13/pflag"

	"toewright/internal/engine"
)

// Names of options that a door may complete from the study.
const (
	Candidate = "candidate"
	Yardstick = "yardstick"
	X         = "x"
	Y         = "y"
	TargetOf  = "target-of"
)

// Sweep adds the options of a sweep.
func Sweep(fs *pflag.FlagSet, o *engine.SweepOptions) {
	candidate(fs, &o.Candidate)
	motion(fs, &o.Motion)
	choose(fs, &o.TravelAt, "travel-at", "where travel counts: at the wheel's centre, or at the tyre's contact, the lowest point of the wheel's plane", "wheel-centre", "contact")
	attitude(fs, &o.Attitude)
}

// Compare adds the options of a comparison.
func Compare(fs *pflag.FlagSet, o *engine.CompareOptions) {
	candidate(fs, &o.Candidate)
	fs.StringVar(&o.Yardstick, Yardstick, "", "`name` of the candidate that differences are taken from; base where the study names none")
	motion(fs, &o.Motion)
	attitude(fs, &o.Attitude)
}

// Search adds the options of a search.
func Search(fs *pflag.FlagSet, o *engine.SearchOptions) {
	choose(fs, &o.Minimise, "minimise", "figure to minimise in place of the study's", "rms", "peak")
	side(fs, &o.Side)
	target(fs, &o.TargetOf, &o.TargetSlope)
	seed(fs, &o.Seed, "restarts")
}

func side(fs *pflag.FlagSet, name *string) {
	choose(fs, name, "side", "wheel that is judged; both, of which the worse counts, where not given", "left", "right", "both")
}

func candidate(fs *pflag.FlagSet, name *string) {
	fs.StringVar(name, Candidate, "", "`name` of the one candidate wanted; base is the car as the file gives it")
}

func motion(fs *pflag.FlagSet, m *string) {
	choose(fs, m, "motion", "wheels that move: both, one with the other held, or left up and right down", "both", "left", "right", "roll")
}

func attitude(fs *pflag.FlagSet, a *engine.Attitude) {
	fs.Float64Var(&a.Steer, "steer", 0, "steering input: along the rack's axis in the file's units, or degrees of the pitman arm")
	fs.Float64Var(&a.Heave, "heave", 0, "height from which travel is counted, in the file's units, bump positive")
	fs.Float64Var(&a.Roll, "roll", 0, "body roll from which travel is counted, in degrees, positive lowers the right side")
}

// Steer adds the options of steering from lock to lock.
func Steer(fs *pflag.FlagSet, o *engine.SteerOptions) {
	candidate(fs, &o.Candidate)
	optional(fs, &o.Lock, "lock", "most steering input to either side, in place of the study's")
	optional(fs, &o.Step, "step", "step of the input; a twelfth of the lock where not given")
	fs.Float64Var(&o.Heave, "heave", 0, "height at which the wheels are steered, in the file's units, bump positive")
	fs.Float64Var(&o.Roll, "roll", 0, "body roll at which they are, in degrees, positive lowers the right side")
}

// Diagnose adds the options of a diagnosis.
func Diagnose(fs *pflag.FlagSet, o *engine.DiagnoseOptions) { candidate(fs, &o.Candidate) }

// Fit adds the options of a fit.
func Fit(fs *pflag.FlagSet, o *engine.FitOptions) {
	count(fs, &o.Measure, "measure", "`number` of further measurements listed; 5 where not given")
}

// Loads adds the options of the forces under stated loads.
func Loads(fs *pflag.FlagSet, o *engine.LoadsOptions) { candidate(fs, &o.Candidate) }

// Axle adds the options of what both wheels do together.
func Axle(fs *pflag.FlagSet, o *engine.AxleOptions) {
	candidate(fs, &o.Candidate)
	optional(fs, &o.Speed, "speed", "speed in `km/h` at which drag is estimated; 100 where not given")
	optional(fs, &o.Distance, "distance", "distance in `m` over which drift is estimated; 100 where not given")
}

// TradeOff adds the options of a trade-off.
func TradeOff(fs *pflag.FlagSet, o *engine.TradeOffOptions) {
	choose(fs, &o.Aim, "aim", "what toe change is weighed against", "stock", "ackermann", "ratio")
	optional(fs, &o.Ackermann, "ackermann", "Ackermann `percentage` asked for; 100 where not given")
	count(fs, &o.Designs, "designs", "`number` of designs; 8 where not given")
	side(fs, &o.Side)
	target(fs, &o.TargetOf, &o.TargetSlope)
	seed(fs, &o.Seed, "restarts")
}

// target adds what names the wanted curve.
func target(fs *pflag.FlagSet, of *string, slope **float64) {
	fs.StringVar(of, TargetOf, "", "`name` of the candidate, or base, whose toe change is wanted, in place of the study's target")
	optional(fs, slope, "target-slope", "wanted toe change in degrees by unit of travel, in place of the study's target")
}
