package calls

import (
	"toewright/internal/drawing"
	"toewright/internal/engine"
	"toewright/internal/report"
)

// Names of the calls.
const (
	Sweep     = "sweep"
	Compare   = "compare"
	Steer     = "steer"
	Diagnose  = "diagnose"
	Axle      = "axle"
	Loads     = "loads"
	Covers    = "covers"
	Drawing   = "drawing"
	Search    = "search"
	TradeOff  = "tradeoff"
	Locate    = "locate"
	Form      = "form"
	Fit       = "fit"
	Tolerance = "tolerance"
	Series    = "series"
	Choose    = "choose"
	Map       = "map"
	Report    = "report"
	Arm       = "arm"
	Feasible  = "feasible"
	Why       = "why"
	MapCells  = "map-cells"
	MapRoom   = "map-room"
)

// Public returns the calls of the command and of the HTTP service.
func Public() []Call { return append(shared(), publicOnly()...) }

// OfPage returns the calls of the page's worker. The page carries what stands here and no
// more: the linker leaves out what only others ask.
func OfPage() []Call { return append(shared(), pageOnly()...) }

// shared are the calls of all doors.
func shared() []Call {
	return []Call{
		call(Compare, "Put the candidates beside the base car", engine.Compare, compareOptions, nil),
		call(Loads, "Find the forces in rods, springs and steering arms under stated loads", engine.Loads, loadsOptions, nil),
		call(Covers, "Find the set-ups within which a car's parts hold a limit of toe change", engine.Covers, coversOptions, nil),
		files(call(Drawing, "Draw a candidate's steering arm for the shop that makes it", armDrawing, drawingOptions, nil), drawing.Types()...),
		call(Search, "Find the values that bring toe change nearest to its target", engine.Search, searchOptions,
			func(o *engine.SearchOptions) *func(engine.Progress) { return &o.Progress }),
		call(TradeOff, "Weigh toe change against a second aim", engine.TradeOff, tradeOffOptions,
			func(o *engine.TradeOffOptions) *func(engine.Progress) { return &o.Progress }),
		call(Locate, "Find the hardpoints that a tape, a level and a plumb line measured", engine.Locate, locateOptions, nil),
		files(call(Form, "Print a form to measure a car by tape, in the order in which each measure helps most", tapeForm, formOptions,
			func(o *engine.TapeFormOptions) *func(engine.Progress) { return &o.Progress }), tapeFormType),
		call(Fit, "Find the car behind gauge readings, and the spacers it wants", engine.Fit, fitOptions,
			func(o *engine.FitOptions) *func(engine.Progress) { return &o.Progress }),
		call(Tolerance, "Build a series of cars within their tolerances and count those that pass", engine.Tolerance, toleranceOptions,
			func(o *engine.ToleranceOptions) *func(engine.Progress) { return &o.Progress }),
		call(Series, "Judge cars of a series by their readings, and say what they have in common", engine.Series, seriesOptions,
			func(o *engine.SeriesOptions) *func(engine.Progress) { return &o.Progress }),
		call(Choose, "Rank all combinations of the parts that can be bought", engine.Choose, chooseOptions,
			func(o *engine.ChooseOptions) *func(engine.Progress) { return &o.Progress }),
		files(call(Report, "Write the bench sheet of a candidate", benchSheet, reportOptions,
			func(o *report.Options) *func(engine.Progress) { return &o.Progress }), benchSheetType),
	}
}

// publicOnly are the calls that the page does not make.
func publicOnly() []Call {
	return []Call{
		call(Sweep, "Move the wheels through their travel", engine.Sweep, sweepOptions, nil),
		call(Diagnose, "Say why a toe curve is what it is, and what would correct it", engine.Diagnose, diagnoseOptions, nil),
		call(Steer, "Steer the wheels from lock to lock", engine.Steer, steerOptions, nil),
		call(Axle, "Say what both wheels of the axle do together", engine.Axle, axleOptions, nil),
		call(Map, "Show the toe change over two parameters", engine.Map, mapOptions,
			func(o *engine.MapOptions) *func(engine.Progress) { return &o.Progress }),
	}
}

// pageOnly are the calls whose answers are parts of a picture, or of a panel, or
// come before a question is asked.
func pageOnly() []Call {
	return []Call{
		call(Arm, "Measure the steering arms of a candidate as the shop makes them", engine.Arm, nil, nil),
		call(Feasible, "Say what a search's limits and window leave before it runs", engine.Feasible, nil, nil),
		call(Why, "Say why a car's wheels toe as they move, and what serves all its set-ups", engine.Why, nil, nil),
		call(MapCells, "Fill the rows of a map, as numbers", mapCells, nil, nil),
		call(MapRoom, "Say what room each cell of a map has to the limits", engine.MapRoom, nil,
			func(o *engine.MapOptions) *func(engine.Progress) { return &o.Progress }),
	}
}
