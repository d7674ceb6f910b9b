package worker

import (
	"context"
	"encoding/json"
	"errors"

	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/wasm"
)

// errNoStudy is what a call without a study is refused with.
var errNoStudy = errors.New("worker: params have no study")

// Params are what a method is called with; O are the options of its call.
type Params[O any] struct {
	Study   *study.Document `json:"study"`
	Options O               `json:"options"`
}

// Handlers returns the methods by their names: the calls that the page makes.
func Handlers() map[string]wasm.Handler {
	methods := map[string]wasm.Handler{}
	for _, c := range calls.OfPage() {
		methods[c.Name] = handler(c.New)
	}
	return methods
}

// handler makes a method of a call, of which request returns a new one.
func handler(request func() *calls.Request) wasm.Handler {
	return func(ctx context.Context, params json.RawMessage, progress func(any)) (any, error) {
		r := request()
		p := Params[any]{Options: r.Values} // JSON goes where it points to
		if err := json.Unmarshal(params, &p); err != nil {
			return nil, err
		}
		if p.Study == nil {
			return nil, errNoStudy
		}
		answer, err := r.Ask(ctx, p.Study, func(e engine.Progress) { progress(e) })
		if numbers, ok := answer.([]float64); ok {
			return pack(numbers), err
		}
		return answer, err
	}
}
