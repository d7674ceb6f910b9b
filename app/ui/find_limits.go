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

// limits is the table of what the answer of a search must hold: wanted, now, to spare.
func (q *question) limits() app.UI { return &limits{Bench: q.Bench, State: q.State} }

type limits struct {
	app.Compo
	Bench bench
	State *asking
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
	standing, err := l.Bench.Desk.Standing(l.Bench.Desk.Selected())
	if err != nil || len(standing) != len(list) {
		standing = make([]model.Standing, len(list)) // why it cannot be known stands above
	}
	return app.Div().Body(
		app.P().Class("note").Text("Over the window, in every set-up. A field left empty is no bound. Now is what the selected car has: "+carName(l.Bench.Desk.Selected())+"."),
		only(err != nil, func() app.UI { return app.P().Class("problem").Text(plain(err)) }),
		only(l.asksLock(list), l.lock),
		only(len(list) > 0, func() app.UI {
			return app.Table().Class("asked limits").Body(
				app.THead().Body(app.Tr().Body(heads("Limit", "At least", "At most", "Now", "To spare", "")...)),
				app.Range(list).Slice(func(i int) app.UI { return l.row(i, &list[i], &standing[i]) }),
			)
		}),
		adder("add-limit", "Add a limit", l.choices(), l.add),
	)
}

// choices are what can be limited.
func (l *limits) choices() (list []choice) {
	for _, k := range model.LimitKinds(l.Bench.document()) {
		list = append(list, choice{string(k.Key), k.Label})
	}
	for _, o := range model.Obstacles {
		list = append(list, choice{o.Key, o.Label})
	}
	return list
}

// row shows one limit.
func (l *limits) row(i int, k *study.Limit, now *model.Standing) app.UI {
	label, unit := model.LimitLabel(l.Bench.document(), k)
	open := l.State.limit == i+1
	return app.TBody().Class(now.Class()).Body(
		app.Tr().Body(
			app.Th().Scope("row").Body(app.Text(label), app.Span().Class("unit").Text(" "+l.Bench.numbers().AmountUnit(unit))),
			cell("at least", l.bound(i, "min", "at least", k, func(k *study.Limit) **float64 { return &k.Min })),
			cell("at most", l.bound(i, "max", "at most", k, func(k *study.Limit) **float64 { return &k.Max })),
			app.Td().Class("now").DataSet("label", "now").Body(
				app.Text(now.Value),
				only(now.Value == "", func() app.UI { return app.Small().Text(l.lacking(now)) }),
				only(now.Spare != "", func() app.UI { return app.Small().Class("under").Text(now.SpareText()) }),
			),
			app.Td().Class("spare").Text(now.SpareText()),
			app.Td().Class("more").Body(
				moreButton(fmt.Sprintf("limit-%d-more", i), label, open, func(app.Context, app.Event) {
					if l.State.limit = i + 1; open {
						l.State.limit = 0
					}
				}),
				app.Button().Type("button").Class("small").Text("×").Aria("label", "Remove the limit on "+label).
					OnClick(func(ctx app.Context, _ app.Event) {
						l.State.limit = 0
						l.Bench.edit(ctx, func() error {
							return l.Bench.session().SetLimits("remove a limit", slices.Delete(slices.Clone(l.list()), i, i+1))
						})
					}, app.EventScope("remove", i, label)),
			),
		),
		only(open, func() app.UI { return l.details(i, k, now) }),
	)
}

// lacking says why a limit has no value.
func (l *limits) lacking(now *model.Standing) string {
	if now.Lacks != "" {
		return "? " + now.Lacks
	}
	return now.Text
}

// details are where a limit is looked at, of what it is, and in full how the car stands.
func (l *limits) details(i int, k *study.Limit, now *model.Standing) app.UI {
	return app.Tr().Class("details").Body(app.Td().ColSpan(6).Body(
		only(now.Text != "", func() app.UI { return app.P().Class("note").Text(upperFirst(now.Text) + ".") }),
		app.Div().Class("row").Body(
			only(l.hasPlaces(k), func() app.UI { return l.where(i, k) }),
			l.side(i, k),
		),
		only(k.Result == study.Clearance, func() app.UI { return l.clearance(i, k) }),
	))
}

// side is the choice of the wheel that a limit is for.
func (l *limits) side(i int, k *study.Limit) app.UI {
	list := []choice{{"", "both wheels"}, {string(study.Left), "left wheel"}, {string(study.Right), "right wheel"}}
	return menu(fmt.Sprintf("limit-%d-side", i), "of", string(k.Side), list, func(ctx app.Context, value string) {
		l.Bench.tell(ctx, l.set(ctx, i, "wheel of a limit", func(k *study.Limit) { k.Side = study.Side(value) }))
	})
}

// bound is the field of one of the bounds.
func (l *limits) bound(i int, id, text string, k *study.Limit, of func(*study.Limit) **float64) app.UI {
	label, unit := model.LimitLabel(l.Bench.document(), k)
	n, d := l.Bench.numbers(), l.Bench.document()
	length := unit == string(d.Units)
	value := boundText(*of(k))
	if b := *of(k); length && b != nil {
		value = n.LengthNumber(d.Units.Millimetres(*b))
	}
	return &field{
		ID: fmt.Sprintf("limit-%d-%s", i, id), Label: label + " " + text, Hidden: true, Value: value,
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
	return l.Bench.change(ctx, func() error { return l.Bench.session().SetLimit(label, i, change) })
}

// add adds the limit chosen, and shows the details of one that needs them.
func (l *limits) add(ctx app.Context, key string) {
	k := model.NewLimit(l.Bench.document(), l.Bench.cars().Design, key)
	list := append(slices.Clone(l.list()), k)
	if l.State.limit = 0; k.Result == study.Clearance || l.hasPlaces(&k) {
		l.State.limit = len(list)
	}
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
