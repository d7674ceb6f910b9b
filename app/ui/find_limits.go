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
	list, kinds := l.list(), model.LimitKinds(l.Bench.document())
	return app.Details().Class("block").Open(len(list) > 0).ID("limits").Body(
		app.Summary().Text(fmt.Sprintf("Limits that it must hold (%s)", count(len(list)))),
		app.P().Class("note").Text("Bounds on what else the parts do, over the window and in every set-up. A field left empty is no bound. Each candidate's card says how it stands to them."),
		app.If(l.asksLock(list), l.lock),
		app.Ul().Class("plain").Body(app.Range(list).Slice(func(i int) app.UI { return l.row(i, &list[i]) })),
		app.Label().For("add-limit").Text("Add a limit"),
		app.Select().ID("add-limit").OnChange(l.add).Body(
			app.Option().Text("choose").Selected(true),
			app.Range(kinds).Slice(func(i int) app.UI {
				return app.Option().Value(string(kinds[i].Key)).Text(kinds[i].Label)
			}),
			app.Range(model.Obstacles).Slice(func(i int) app.UI {
				o := model.Obstacles[i]
				return app.Option().Value(o.Key).Text(o.Label)
			}),
		),
	)
}

// row shows one limit.
func (l *limits) row(i int, k *study.Limit) app.UI {
	label, _ := model.LimitLabel(l.Bench.document(), k)
	return app.Li().Class("setup").Body(
		app.FieldSet().Class("variable").Body(
			app.Legend().Text(label),
			l.bound(i, "min", "at least", k, func(k *study.Limit) **float64 { return &k.Min }),
			l.bound(i, "max", "at most", k, func(k *study.Limit) **float64 { return &k.Max }),
			l.present(i),
			app.If(l.hasPlaces(k), func() app.UI { return l.where(i, k) }),
			app.If(k.Result == study.Clearance, func() app.UI { return l.clearance(i, k) }),
			button("Remove", func(ctx app.Context, _ app.Event) {
				l.Bench.edit(ctx, func() error {
					return l.Bench.session().SetLimits("remove a limit", slices.Delete(slices.Clone(l.list()), i, i+1))
				})
			}, i).Aria("label", "Remove the limit on "+label),
		),
	)
}

// present says what the selected car has now, from which a bound is best judged.
func (l *limits) present(i int) app.UI {
	car := l.Bench.Desk.Selected()
	list, err := l.Bench.Desk.Standing(car)
	if err != nil || i >= len(list) {
		return app.Text("") // why it cannot be known stands on the car's card
	}
	line := limitLine(list[i], true)
	return app.Div().Class("note").Body(app.Text("Now, "+carName(car)+":"), app.Ul().Class("limits present").Body(line))
}

// bound is the field of one of the bounds.
func (l *limits) bound(i int, id, text string, k *study.Limit, of func(*study.Limit) **float64) app.UI {
	label, unit := model.LimitLabel(l.Bench.document(), k)
	n, d := l.Bench.numbers(), l.Bench.document()
	length := unit == string(d.Units)
	value := boundText(*of(k))
	if length {
		unit = n.LengthUnit()
		if b := *of(k); b != nil {
			value = n.LengthNumber(d.Units.Millimetres(*b))
		}
	}
	return &field{
		ID: fmt.Sprintf("limit-%d-%s", i, id), Label: text, Unit: unit, Value: value,
		Set: func(ctx app.Context, text string) error {
			v, err := parseBound(text)
			if length && strings.TrimSpace(text) != "" {
				var mm float64
				mm, err = n.ParseLength(text)
				mm = d.Units.FromMillimetres(mm)
				v = &mm
			}
			if err != nil {
				return err
			}
			return l.set(ctx, i, "bound of "+label, func(k *study.Limit) { *of(k) = v })
		},
	}
}

// set changes one limit.
func (l *limits) set(ctx app.Context, i int, label string, change func(*study.Limit)) error {
	return l.Bench.edit(ctx, func() error { return l.Bench.session().SetLimit(label, i, change) })
}

// add adds the limit chosen.
func (l *limits) add(ctx app.Context, _ app.Event) {
	menu := ctx.JSSrc()
	key := menu.Get("value").String()
	if menu.Get("selectedIndex").Int() == 0 {
		return
	}
	menu.Set("selectedIndex", 0)
	list := append(slices.Clone(l.list()), model.NewLimit(l.Bench.document(), l.Bench.cars().Design, key))
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
