package ui

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// carEditor changes one car: its name, its parameters and what setpoints it holds.
type carEditor struct {
	app.Compo
	Bench bench
	Car   int
}

// Render shows a slider for each main parameter and for each that is changed.
func (e *carEditor) Render() app.UI {
	design := e.Bench.cars().Design
	keys := e.keys()
	return app.Div().Class("editor").Body(
		only(e.Car == 0, func() app.UI {
			return app.P().Class("note").Text("The base car is the car as measured. Move a slider and a candidate is made from it.")
		}),
		only(e.Car > 0, func() app.UI { return e.said() }),
		many(app.Range(keys).Slice(func(i int) app.UI { return e.parameter(design, keys[i]) })),
		&picker{
			ID: fmt.Sprintf("add-%d", e.Car), Label: "Change another parameter", Design: design,
			Taken: func(key string) bool { return slices.Contains(keys, key) },
			Pick:  e.addParameter,
		},
		only(e.Car > 0, func() app.UI { return e.setpoints() }),
	)
}

// keys lists the main parameters that the car has, then the others that are changed.
func (e *carEditor) keys() []string {
	var keys []string
	for _, key := range model.MainParameters {
		if _, _, err := solver.FindParameter(e.Bench.cars().Design, key); err == nil {
			keys = append(keys, key)
		}
	}
	for _, key := range slices.Sorted(maps.Keys(e.changes())) {
		if !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	return keys
}

func (e *carEditor) changes() study.Changes {
	if car := e.Bench.cars().At(e.Car); car != nil {
		return car.Changes
	}
	return nil
}

// said are name, price and note of a candidate.
func (e *carEditor) said() app.UI {
	k, b := &e.Bench.document().Candidates[e.Car-1], e.Bench
	set := func(do func(string) error) func(app.Context, string) error {
		return func(ctx app.Context, text string) error {
			return b.change(ctx, func() error { return do(strings.TrimSpace(text)) })
		}
	}
	return app.Div().Class("row").Body(
		&field{ID: fmt.Sprintf("name-%d", e.Car), Label: "Name", Wide: true, Value: k.Name, Set: set(func(text string) error { return b.session().Rename(e.Car, text) })},
		&field{ID: fmt.Sprintf("price-%d", e.Car), Label: "Price", Value: model.PriceText(k.Price), Set: func(ctx app.Context, text string) error {
			price, err := parsePrice(text)
			if err != nil {
				return err
			}
			return b.change(ctx, func() error { return b.session().SetPrice(e.Car, price) })
		}},
		&field{ID: fmt.Sprintf("note-%d", e.Car), Label: "Note", Wide: true, Value: k.Note, Set: set(func(text string) error { return b.session().SetNote(e.Car, text) })},
	)
}

func (e *carEditor) parameter(design *solver.Design, key string) app.UI {
	p, sides, err := solver.FindParameter(design, key)
	if err != nil {
		return app.P().Class("problem").Text(plain(err))
	}
	return &slider{Bench: e.Bench, Car: e.Car, Key: key, Parameter: p, Sides: sides}
}

// addParameter gives the car a change of a parameter: none yet, or the setting that
// it has.
func (e *carEditor) addParameter(ctx app.Context, key string) {
	e.Bench.edit(ctx, func() error { return e.Bench.Desk.Set(key, e.Bench.Desk.Usual(key), "") })
}

// setpoints shows which alignment values are set again after the change.
func (e *carEditor) setpoints() app.UI {
	held := e.Bench.document().Candidates[e.Car-1].Hold
	return app.FieldSet().Class("choices").Body(
		app.Legend().Body(explain("Set again after the change", aboutSetpoint)),
		app.Range(model.Setpoints).Slice(func(i int) app.UI {
			name := model.Setpoints[i]
			id := "hold-" + strconv.Itoa(e.Car) + "-" + name
			return app.Span().Class("choice").Body(
				app.Input().Type("checkbox").ID(id).Checked(held == nil || slices.Contains(held, name)).
					OnChange(func(ctx app.Context, _ app.Event) {
						on := ctx.JSSrc().Get("checked").Bool()
						e.Bench.edit(ctx, func() error { return e.Bench.session().SetHeld(e.Car, name, on) })
					}, app.EventScope(id)),
				app.Label().For(id).Text(name),
			)
		}),
	)
}
