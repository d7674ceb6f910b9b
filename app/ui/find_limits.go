package ui

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
)

// limits are what the answer of a search must hold.
type limits struct {
	app.Compo
	Bench bench
}

// list returns the study's limits.
func (l *limits) list() []study.Limit {
	if f := l.Bench.document().Search; f != nil {
		return f.Limits
	}
	return nil
}

// Render shows each limit with its bounds, and a list to add one from.
func (l *limits) Render() app.UI {
	list := l.list()
	return app.Details().Class("block").Open(len(list) > 0).Body(
		app.Summary().Text(fmt.Sprintf("Limits that it must hold (%s)", count(len(list)))),
		app.P().Class("note").Text("Bounds on what else the parts do, over the window and in every set-up. A field left empty is no bound."),
		app.Ul().Class("plain").Body(app.Range(list).Slice(func(i int) app.UI { return l.row(i, &list[i]) })),
		app.Label().For("add-limit").Text("Add a limit"),
		app.Select().ID("add-limit").OnChange(l.add).Body(
			app.Option().Value("").Text("choose").Selected(true),
			app.Range(model.LimitKinds).Slice(func(i int) app.UI {
				k := model.LimitKinds[i]
				return app.Option().Value(k.Result).Text(k.Label)
			}),
		),
	)
}

// row shows one limit.
func (l *limits) row(i int, k *study.Limit) app.UI {
	label, unit := model.LimitLabel(l.Bench.document(), k)
	bound := func(id, text string, value *float64, put func(*study.Limit, *float64)) app.UI {
		return &field{
			ID: fmt.Sprintf("limit-%d-%s", i, id), Label: text, Unit: unit, Value: boundText(value),
			Set: func(ctx app.Context, text string) error {
				v, err := parseBound(text)
				if err != nil {
					return err
				}
				return l.set(ctx, i, "bound of "+label, func(k *study.Limit) { put(k, v) })
			},
		}
	}
	return app.Li().Class("setup").Body(
		app.FieldSet().Class("variable").Body(
			app.Legend().Text(label),
			bound("min", "at least", k.Min, func(k *study.Limit, v *float64) { k.Min = v }),
			bound("max", "at most", k.Max, func(k *study.Limit, v *float64) { k.Max = v }),
			button("Remove", func(ctx app.Context, _ app.Event) {
				l.Bench.edit(ctx, func() error {
					return l.Bench.session().SetLimits("remove a limit", slices.Delete(slices.Clone(l.list()), i, i+1))
				})
			}, i).Aria("label", "Remove the limit on "+label),
		),
	)
}

// set changes one limit.
func (l *limits) set(ctx app.Context, i int, label string, change func(*study.Limit)) error {
	list := slices.Clone(l.list())
	change(&list[i])
	return l.Bench.edit(ctx, func() error { return l.Bench.session().SetLimits(label, list) })
}

// add adds the limit chosen, with bounds that the base car holds by itself.
func (l *limits) add(ctx app.Context, _ app.Event) {
	result := ctx.JSSrc().Get("value").String()
	if result == "" {
		return
	}
	zero := 0.0
	list := append(slices.Clone(l.list()), study.Limit{Result: result, Min: &zero})
	l.Bench.edit(ctx, func() error { return l.Bench.session().SetLimits("add a limit", list) })
}

func boundText(x *float64) string {
	if x == nil {
		return ""
	}
	return strconv.FormatFloat(*x, 'g', -1, 64)
}

// errBound is what a bound that is no number is refused with.
var errBound = errors.New("a bound is a number, or empty for none")

// parseBound reads a bound, nil where the text is empty.
func parseBound(text string) (*float64, error) {
	text = strings.TrimSpace(strings.ReplaceAll(text, ",", "."))
	if text == "" {
		return nil, nil
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return nil, errBound
	}
	return &x, nil
}
