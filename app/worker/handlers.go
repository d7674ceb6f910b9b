package worker

import (
	"context"
	"encoding/json"
	"errors"

	"toewright/internal/engine"
	"toewright/internal/report"
	"toewright/internal/study"
	"toewright/wasm"
)

// The methods.
const (
	Search    = "search"
	Fit       = "fit"
	Tolerance = "tolerance"
	Choose    = "choose"
	MapBand   = "map-band"
	MapRoom   = "map-room"
	TradeOff  = "trade-off"
	Diagnose  = "diagnose"
	Arm       = "arm"
	Report    = "report"
)

// errNoStudy is what a call without a study is refused with.
var errNoStudy = errors.New("worker: params have no study")

// Params are what a method is called with; O are the options of its call.
type Params[O any] struct {
	Study   *study.Document `json:"study"`
	Options O               `json:"options"`
}

// Handlers returns the methods by their names.
func Handlers() map[string]wasm.Handler {
	return map[string]wasm.Handler{
		Search:    handler(engine.Search, func(o *engine.SearchOptions, report func(engine.Progress)) { o.Progress = report }),
		Fit:       handler(engine.Fit, func(*engine.FitOptions, func(engine.Progress)) {}),
		Tolerance: handler(engine.Tolerance, func(o *engine.ToleranceOptions, report func(engine.Progress)) { o.Progress = report }),
		Choose:    handler(engine.Choose, func(o *engine.ChooseOptions, report func(engine.Progress)) { o.Progress = report }),
		Diagnose:  handler(engine.Diagnose, func(*engine.DiagnoseOptions, func(engine.Progress)) {}),
		Arm:       handler(engine.Arm, func(*engine.ArmOptions, func(engine.Progress)) {}),
		Report:    handler(benchSheet, func(o *report.Options, to func(engine.Progress)) { o.Progress = to }),
		MapBand:   handler(mapBand, func(*Band, func(engine.Progress)) {}),
		MapRoom:   handler(mapRoom, func(*engine.MapOptions, func(engine.Progress)) {}),
		TradeOff:  handler(engine.TradeOff, func(o *engine.TradeOffOptions, report func(engine.Progress)) { o.Progress = report }),
	}
}

// Sheet is what Report answers with: a bench sheet as a page of its own.
type Sheet struct {
	HTML string `json:"html"`
}

func benchSheet(ctx context.Context, d *study.Document, o report.Options) (Sheet, error) {
	page, err := report.HTML(ctx, d, o)
	return Sheet{string(page)}, err
}

// handler makes a method of a call. SetReport gives the options the function to which
// the call reports.
func handler[O, R any](call func(context.Context, *study.Document, O) (R, error), setReport func(*O, func(engine.Progress))) wasm.Handler {
	return func(ctx context.Context, params json.RawMessage, progress func(any)) (any, error) {
		var p Params[O]
		if err := json.Unmarshal(params, &p); err != nil {
			return nil, err
		}
		if p.Study == nil {
			return nil, errNoStudy
		}
		setReport(&p.Options, func(e engine.Progress) { progress(e) })
		return call(ctx, p.Study, p.Options)
	}
}
