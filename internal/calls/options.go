package calls

import (
	"toewright/internal/drawing"
	"toewright/internal/engine"
	"toewright/internal/report"
)

func sweepOptions(o *engine.SweepOptions) []Option {
	return append([]Option{
		candidate(&o.Candidate),
		motion(&o.Motion),
		word(&o.TravelAt, "travel-at", "where travel counts: at the wheel's centre, or at the tyre's contact, the lowest point of the wheel's plane", "wheel-centre", "contact"),
	}, attitude(&o.Attitude)...)
}

func compareOptions(o *engine.CompareOptions) []Option {
	return append([]Option{
		candidate(&o.Candidate),
		car(&o.Yardstick, "yardstick", "`name` of the candidate that differences are taken from; base where the study names none"),
		motion(&o.Motion),
	}, attitude(&o.Attitude)...)
}

func steerOptions(o *engine.SteerOptions) []Option {
	return []Option{
		candidate(&o.Candidate),
		optional(&o.Lock, "lock", "most steering input to either side, in place of the study's"),
		optional(&o.Step, "step", "step of the input; a twelfth of the lock where not given"),
		number(&o.Heave, "heave", "height at which the wheels are steered, in the file's units, bump positive"),
		number(&o.Roll, "roll", "body roll at which they are, in degrees, positive lowers the right side"),
	}
}

func diagnoseOptions(o *engine.DiagnoseOptions) []Option { return []Option{candidate(&o.Candidate)} }

func loadsOptions(o *engine.LoadsOptions) []Option {
	return []Option{
		candidate(&o.Candidate),
		text(&o.Preset, "preset", "usual load `cases` in place of the study's, with commas between and their numbers after equals signs, as in kerb=120,bump; list shows them, their formulas and sources"),
	}
}

func coversOptions(o *engine.CoversOptions) []Option {
	return []Option{
		candidate(&o.Candidate),
		limit(&o.Limit, "is held"),
		limited(&o.Figure),
		text(&o.By, "by", "`parameters` that are varied one at a time, with commas between; those of the set-up where not given"),
	}
}

func axleOptions(o *engine.AxleOptions) []Option {
	return []Option{
		candidate(&o.Candidate),
		optional(&o.Speed, "speed", "speed in `km/h` at which drag is estimated; 100 where not given"),
		optional(&o.Distance, "distance", "distance in `m` over which drift is estimated; 100 where not given"),
	}
}

func searchOptions(o *engine.SearchOptions) []Option {
	return append([]Option{
		word(&o.Minimise, "minimise", "figure to minimise in place of the study's", "rms", "peak"),
		side(&o.Side),
		seed(&o.Seed, "restarts"),
	}, target(&o.TargetOf, &o.TargetSlope)...)
}

func tradeOffOptions(o *engine.TradeOffOptions) []Option {
	return append([]Option{
		word(&o.Aim, "aim", "what toe change is weighed against", "stock", "ackermann", "ratio"),
		optional(&o.Ackermann, "ackermann", "Ackermann `percentage` asked for; 100 where not given"),
		count(&o.Designs, "designs", "`number` of designs; 8 where not given"),
		side(&o.Side),
		seed(&o.Seed, "restarts"),
	}, target(&o.TargetOf, &o.TargetSlope)...)
}

func locateOptions(o *engine.LocateOptions) []Option {
	return []Option{count(&o.Measure, "measure", "`number` of further measures listed; 5 where not given")}
}

func formOptions(o *engine.TapeFormOptions) []Option {
	return []Option{count(&o.Measures, "measures", "most `number` of measures; 40 where not given")}
}

func fitOptions(o *engine.FitOptions) []Option {
	return []Option{count(&o.Measure, "measure", "`number` of further measurements listed; 5 where not given")}
}

func toleranceOptions(o *engine.ToleranceOptions) []Option {
	return []Option{
		candidate(&o.Candidate),
		count(&o.Cars, "cars", "`number` of cars built; that of the study, or 20000, where not given"),
		limit(&o.Limit, "passes"),
		limited(&o.Figure),
		side(&o.Side),
		word(&o.Toe, "toe", "static toe: set again on each car, or what comes of its parts, in place of the study's", engine.ToeReSet, "as-built"),
		seed(&o.Seed, "cars"),
	}
}

func seriesOptions(o *engine.SeriesOptions) []Option {
	return []Option{
		candidate(&o.Candidate),
		limit(&o.Limit, "passes"),
		limited(&o.Figure),
	}
}

func chooseOptions(o *engine.ChooseOptions) []Option {
	return []Option{
		word(&o.Figure, "figure", "figure that combinations are ranked by", "rms", "peak"),
		side(&o.Side),
		word(&o.Effect, "effect", "what else an undominated combination must not be beaten in", "parts"),
		count(&o.Most, "most", "`number` of the best combinations listed; 20 where not given"),
	}
}

func mapOptions(o *engine.MapOptions) []Option {
	return []Option{
		candidate(&o.Candidate),
		word(&o.Figure, "figure", "figure drawn", "rms", "peak"),
		side(&o.Side),
		text(&o.Scenario, "scenario", "`name` of the search's set-up that the car is in, or all for all of them together; as it stands where not given"),
		text(&o.X, "x", "`parameter` across; the search's first variable where not given"),
		text(&o.Y, "y", "`parameter` upward; the search's second variable where not given"),
		optional(&o.XMin, "x-min", "least value across, in place of the usual bound"),
		optional(&o.XMax, "x-max", "largest value across"),
		optional(&o.YMin, "y-min", "least value upward"),
		optional(&o.YMax, "y-max", "largest value upward"),
		count(&o.Columns, "columns", "`number` of cells across; 64 where not given"),
		count(&o.Rows, "rows", "`number` of cells upward; 64 where not given"),
	}
}

func drawingOptions(o *drawing.Options) []Option {
	return []Option{
		car(&o.Candidate, "candidate", "`name` of the candidate whose arm it is; base where not given"),
		word(&o.As, "as", "kind of file; dxf where not given", drawing.Names()...),
		word(&o.Side, "side", "arm that is drawn; left where not given, on the sheet of svg both", "left", "right"),
		word(&o.Projection, "projection", "how the views lie; the study's, or third-angle, where not given", drawing.Projections...),
		optional(&o.Step, "step", "step that the shop works to, in the file's units; the last decimal shown where not given"),
		word(&o.Paper, "paper", "sheet of svg; letter for a study shown in inches, else a4", report.Papers...),
	}
}

func reportOptions(o *report.Options) []Option {
	return []Option{
		car(&o.Candidate, "candidate", "`name` of the candidate whose sheet it is; the first that is not hidden where not given"),
		car(&o.Yardstick, "yardstick", "`name` of the car it is compared with; base where the study names none"),
		text(&o.Date, "date", "date as `text`, in place of the study's"),
		word((*string)(&o.Paper), "paper", "printed page; letter for a study shown in inches, else a4", report.Papers...),
		count(&o.Cars, "cars", "`number` of cars built for the tolerances; that of the study, or 20000, where not given"),
		word(&o.Form, "form", "what is written: the bench sheet for who makes the part, which stands where not given, the card for who fits it, or the record of a series", report.Forms...),
		optional(&o.Base, "base", "base of the gauge by which a card is checked, in the file's units; that of the study's display where not given"),
	}
}
