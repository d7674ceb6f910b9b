package calls

import (
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
	Search    = "search"
	TradeOff  = "tradeoff"
	Locate    = "locate"
	Fit       = "fit"
	Tolerance = "tolerance"
	Choose    = "choose"
	Map       = "map"
	Report    = "report"
	Arm       = "arm"
	MapBand   = "map-band"
	MapRoom   = "map-room"
)

// All returns every call.
func All() []Call {
	return []Call{
		call(Sweep, Public, "Move the wheels through their travel", engine.Sweep, sweepOptions, nil),
		call(Compare, Public, "Put the candidates beside the base car", engine.Compare, compareOptions, nil),
		call(Steer, Public, "Steer the wheels from lock to lock", engine.Steer, steerOptions, nil),
		call(Diagnose, Public|Page, "Say why a toe curve is what it is, and what would correct it", engine.Diagnose, diagnoseOptions, nil),
		call(Axle, Public, "Say what both wheels of the axle do together", engine.Axle, axleOptions, nil),
		call(Loads, Public, "Find the forces in rods, springs and steering arms under stated loads", engine.Loads, loadsOptions, nil),
		call(Search, Public|Page, "Find the values that bring toe change nearest to its target", engine.Search, searchOptions,
			func(o *engine.SearchOptions) *func(engine.Progress) { return &o.Progress }),
		call(TradeOff, Public|Page, "Weigh toe change against a second aim", engine.TradeOff, tradeOffOptions,
			func(o *engine.TradeOffOptions) *func(engine.Progress) { return &o.Progress }),
		call(Locate, Public|Page, "Find the hardpoints that a tape, a level and a plumb line measured", engine.Locate, locateOptions, nil),
		call(Fit, Public|Page, "Find the car behind gauge readings, and the spacers it wants", engine.Fit, fitOptions, nil),
		call(Tolerance, Public|Page, "Build a series of cars within their tolerances and count those that pass", engine.Tolerance, toleranceOptions,
			func(o *engine.ToleranceOptions) *func(engine.Progress) { return &o.Progress }),
		call(Choose, Public|Page, "Rank all combinations of the parts that can be bought", engine.Choose, chooseOptions,
			func(o *engine.ChooseOptions) *func(engine.Progress) { return &o.Progress }),
		call(Map, Public, "Show the toe change over two parameters", engine.Map, mapOptions,
			func(o *engine.MapOptions) *func(engine.Progress) { return &o.Progress }),
		call(Report, Public|Page, "Write the bench sheet of a candidate", benchSheet, reportOptions,
			func(o *report.Options) *func(engine.Progress) { return &o.Progress }),
		call(Arm, Page, "Measure the steering arms of a candidate as the shop makes them", engine.Arm, nil, nil),
		call(MapBand, Page, "Fill a share of a map's rows, for a worker of several", mapBand, nil, nil),
		call(MapRoom, Page, "Say what room each cell of a map has to the limits", engine.MapRoom, nil, nil),
	}
}
