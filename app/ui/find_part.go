package ui

import (
	"cmp"
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// part is one part of the catalogue.
type part struct {
	app.Compo
	Bench bench
	Index int
	Part  study.Part
}

// errPrice is what a price that is none is refused with.
var errPrice = errors.New("type a price like 49.50")

// Render shows the part in a line, and what it changes when that is opened.
func (p *part) Render() app.UI {
	id := fmt.Sprintf("part-%d", p.Index)
	keys := slices.Sorted(maps.Keys(p.Part.Changes))
	text := func(name, label, value string, put func(*study.Part, string)) app.UI {
		return &field{ID: id + "-" + name, Label: label, Value: value, Wide: true, Set: func(ctx app.Context, text string) error {
			return p.set(ctx, label, func(k *study.Part) { put(k, strings.TrimSpace(text)) })
		}}
	}
	return app.Details().Class("setup").Body(
		app.Summary().Text(fmt.Sprintf("%s: %s, %s", p.Part.Slot, p.Part.Name, cmp.Or(model.PriceText(p.Part.Price), "no price stated"))),
		text("slot", "Slot", p.Part.Slot, func(k *study.Part, t string) { k.Slot = t }),
		text("name", "Part", p.Part.Name, func(k *study.Part, t string) { k.Name = t }),
		&field{ID: id + "-price", Label: "Price", Value: model.PriceText(p.Part.Price), Tag: model.SourceTag(p.Bench.document(), fmt.Sprintf("catalogue.%d.price", p.Index)), Set: p.setPrice},
		many(app.Range(keys).Slice(func(i int) app.UI { return p.change(id, keys[i]) })),
		&picker{
			ID: id + "-add", Label: "It changes", Design: p.Bench.cars().Design,
			Taken: func(key string) bool { return slices.Contains(keys, key) },
			Pick: func(ctx app.Context, key string) {
				p.Bench.tell(ctx, p.setEffect(ctx, key, p.Bench.Desk.Usual(key)))
			},
		},
		button("Remove", func(ctx app.Context, _ app.Event) {
			p.Bench.undoable(ctx, p.Part.Name+" is off the list.", func() error { return p.Bench.session().RemovePart(p.Index) })
		}, p.Index, p.Part.Name).Aria("label", "Remove "+p.Part.Name),
	)
}

func (p *part) setPrice(ctx app.Context, text string) error {
	price, err := parsePrice(text)
	if err != nil {
		return err
	}
	return p.set(ctx, "price", func(k *study.Part) { k.Price = price })
}

// parsePrice reads a price; an empty text is none, which is 0.
func parsePrice(text string) (float64, error) {
	text = strings.Replace(strings.TrimSpace(text), ",", ".", 1)
	if text == "" {
		return 0, nil
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || !(x >= 0) || math.IsInf(x, 0) {
		return 0, errPrice
	}
	return x, nil
}

// change is the field of one change that the part makes.
func (p *part) change(id, key string) app.UI {
	q, sides, err := solver.FindParameter(p.Bench.cars().Design, key)
	if err != nil {
		return app.P().Class("problem").Text(plain(err))
	}
	n, d := p.Bench.numbers(), p.Bench.document()
	return &field{
		ID: id + "-" + key, Label: q.Label + sideWord(sides), Unit: n.ValueUnit(q), Value: n.ValueNumber(d, q, p.Part.Changes[key]),
		Set: func(ctx app.Context, text string) error {
			x, err := n.ParseValue(d, q, text)
			if err != nil {
				return err
			}
			return p.setEffect(ctx, key, x)
		},
	}
}

func (p *part) setEffect(ctx app.Context, key string, x float64) error {
	return p.set(ctx, "what a part changes", func(k *study.Part) {
		if k.Changes == nil {
			k.Changes = study.Changes{}
		}
		k.Changes[key] = x
	})
}

func (p *part) set(ctx app.Context, label string, change func(*study.Part)) error {
	return p.Bench.change(ctx, func() error { return p.Bench.session().SetPart(p.Index, label, change) })
}
