package ui

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// loads enters the load cases of the car: usual ones, and the user's own.
type loads struct {
	app.Compo
	Bench bench

	preset *engine.LoadPreset // about to be added; nil of none
	open   int                // case whose details are shown, counted from 1
}

// ownLoad is the key of a case of the user's own among the presets.
const ownLoad = "own"

// Render lists the cases, and what the study lacks for their figures.
func (l *loads) Render() app.UI {
	d := l.Bench.document()
	lacks := model.LoadsLack(d)
	list := []choice{{ownLoad, "a case of your own"}}
	for _, p := range engine.LoadPresets(d) {
		list = append(list, choice{p.Key, p.Name})
	}
	return app.Section().Class("block").ID("loads").Body(
		app.H2().Text("Loads"),
		app.P().Class("note").Text("What acts on a wheel in a case that the steering must bear: force in N forward, to the left and up, on either side. Forces in rod, arm and stud follow, stock against new. They are loads, no verdict: what a part bears is for strength work, and for a licensed engineer to judge."),
		only(len(lacks) > 0, func() app.UI {
			return app.Ul().Class("findings").Body(
				app.Li().Text("Not stated:"),
				app.Range(lacks).Slice(func(i int) app.UI { return app.Li().Text(lacks[i]) }),
			)
		}),
		&field{ID: "stud", Label: "Stud of the outer ball: diameter, height over its face", Unit: l.Bench.numbers().LengthUnit(), Value: l.Bench.numbers().StudText(d), Wide: true,
			Set: func(ctx app.Context, text string) error {
				return l.Bench.change(ctx, func() error { return l.Bench.session().SetStud(text) })
			}},
		many(app.Range(d.Loads).Slice(func(i int) app.UI { return l.one(i, &d.Loads[i]) })),
		l.stiffness(d),
		adder("add-load", "Add a load case", list, l.choose),
		only(l.preset != nil, l.asked),
	)
}

// stiffness are the fields of what gives under a load.
func (l *loads) stiffness(d *study.Document) app.UI {
	design := l.Bench.cars().Design
	if design == nil || len(d.Loads) == 0 {
		return nothing()
	}
	names := design.Members()
	return app.Details().Class("block").ID("stiffness").Open(len(d.Stiffness) > 0).Body(
		app.Summary().Text("Stiffness, for the toe that a load makes"),
		app.P().Class("note").Text("An estimate in Compare, only where all of these are stated. Pivots give alike in every direction, a strut's top square to its axis, links and rods along themselves; the gear with its mounts along the rack, or at the pitman ball. A joint that hardly gives has a large stiffness."),
		app.Div().Class("row").Body(app.Range(names).Slice(func(i int) app.UI {
			name, text := names[i], ""
			if k := d.Stiffness[name]; k != 0 {
				text = strconv.FormatFloat(k, 'g', -1, 64)
			}
			return &field{ID: "stiffness-" + strings.ReplaceAll(name, ".", "-"), Label: upperFirst(study.Spoken(name)), Unit: "N/mm", Value: text,
				Set: func(ctx app.Context, text string) error {
					return l.Bench.change(ctx, func() error { return l.Bench.session().SetStiffness(name, text) })
				}}
		})),
	)
}

// choose adds a case of the user's own, and shows the numbers of a usual one first.
func (l *loads) choose(ctx app.Context, key string) {
	d := l.Bench.document()
	if l.preset = nil; key == ownLoad {
		l.Bench.tell(ctx, l.add(ctx, model.OwnLoad(d)))
		return
	}
	list := engine.LoadPresets(d)
	l.preset = &list[slices.IndexFunc(list, func(p engine.LoadPreset) bool { return p.Key == key })]
}

func (l *loads) add(ctx app.Context, c study.LoadCase) error {
	err := l.Bench.change(ctx, func() error { return l.Bench.session().AddLoad(c) })
	if err == nil {
		l.preset, l.open = nil, len(l.Bench.document().Loads)
	}
	return err
}

// asked shows how a usual case is made, and the numbers that it starts from.
func (l *loads) asked() app.UI {
	p := l.preset
	return app.Div().Class("block").ID("preset").Body(
		app.P().Body(app.Strong().Text(p.Name), app.Text(": "+p.Formula+". W is the load on one wheel, R the tyre's radius.")),
		app.P().Class("note").Text("Source: "+p.Source+"."),
		app.If(p.Lacks != "", func() app.UI { return app.P().Class("problem").Text(upperFirst(study.Spoken(p.Lacks)) + ".") }).
			Else(func() app.UI {
				return app.Div().Class("row").Body(
					many(app.Range(p.Factors).Slice(func(i int) app.UI {
						f := &p.Factors[i]
						return &field{ID: fmt.Sprintf("preset-%d", i), Label: f.Name, Unit: f.Unit, Value: strconv.FormatFloat(f.Value, 'g', -1, 64),
							Set: func(_ app.Context, text string) error {
								x, err := model.ParseNumber(text)
								if err == nil {
									f.Value = x
								}
								return err
							}}
					})),
					button("Add it", func(ctx app.Context, _ app.Event) {
						c, err := engine.PresetCase(l.Bench.document(), p.Key, p.Factors)
						if err == nil {
							err = l.add(ctx, *c)
						}
						l.Bench.tell(ctx, err)
					}, p.Key).ID("add-preset"),
				)
			}),
	)
}

// one shows a case: its forces, and in its details all else.
func (l *loads) one(i int, c *study.LoadCase) app.UI {
	open := l.open == i+1
	return app.Div().Class("load-case").Body(
		app.Div().Class("row").Body(
			app.Strong().Text(c.Name),
			moreButton(fmt.Sprintf("load-%d-more", i), c.Name, open, func(app.Context, app.Event) {
				if l.open = i + 1; open {
					l.open = 0
				}
			}),
			app.Button().Type("button").Class("small").Text("×").Aria("label", "Remove "+c.Name).OnClick(func(ctx app.Context, _ app.Event) {
				l.open = 0
				l.Bench.edit(ctx, func() error { return l.Bench.session().RemoveLoad(i) })
			}, app.EventScope("remove", i, c.Name)),
		),
		only(c.Source != "", func() app.UI { return app.P().Class("note").Text(upperFirst(c.Source) + ".") }),
		app.Div().Class("row").Body(l.three(i, "left", "Left wheel", "N", c.Left, false), l.three(i, "right", "Right wheel", "N", c.Right, false)),
		only(open, func() app.UI {
			return app.Div().Class("row").Body(
				l.three(i, "left-moment", "Left wheel, moment", "N\u00a0m", c.Left, true), l.three(i, "right-moment", "Right wheel, moment", "N\u00a0m", c.Right, true),
				l.name(i, c),
				l.number(i, "travel", "Wheel travel", string(l.Bench.document().Units), func(c *study.LoadCase) *float64 { return &c.Travel }),
				l.number(i, "steer", "Steering input", "", func(c *study.LoadCase) *float64 { return &c.Steer }),
				menu(fmt.Sprintf("load-%d-at", i), "acts at", loadPlace(c), []choice{{"contact", "the contact"}, {"wheel-centre", "the wheel centre"}}, func(ctx app.Context, at string) {
					l.Bench.tell(ctx, l.set(ctx, i, "place of a load", func(c *study.LoadCase) {
						for _, w := range []**study.WheelLoad{&c.Left, &c.Right} {
							if *w != nil {
								moved := **w
								moved.At, *w = at, &moved
							}
						}
					}))
				}),
			)
		}),
	)
}

func loadPlace(c *study.LoadCase) string {
	for _, w := range []*study.WheelLoad{c.Left, c.Right} {
		if w != nil && w.At != "" {
			return w.At
		}
	}
	return "contact"
}

func (l *loads) set(ctx app.Context, i int, label string, change func(*study.LoadCase)) error {
	return l.Bench.change(ctx, func() error { return l.Bench.session().SetLoad(i, label, change) })
}

// three is the field of a force or a moment: three numbers, or none for a wheel that bears
// nothing.
func (l *loads) three(i int, id, label, unit string, w *study.WheelLoad, moment bool) app.UI {
	text := ""
	if w != nil && moment {
		text = model.ThreeText(w.Moment)
	} else if w != nil {
		text = model.ThreeText(&w.Force)
	}
	return &field{
		ID: fmt.Sprintf("load-%d-%s", i, id), Label: label + ", forward, left, up", Unit: unit, Value: text, Wide: true,
		Set: func(ctx app.Context, text string) error {
			v, err := model.ParseThree(text)
			if err != nil {
				return err
			}
			return l.set(ctx, i, "a load", func(c *study.LoadCase) { model.PutThree(c, strings.HasPrefix(id, "left"), moment, v) })
		},
	}
}

func (l *loads) name(i int, c *study.LoadCase) app.UI {
	return &field{ID: fmt.Sprintf("load-%d-name", i), Label: "Name", Value: c.Name, Wide: true, Set: func(ctx app.Context, text string) error {
		return l.set(ctx, i, "name of a load case", func(c *study.LoadCase) { c.Name = text })
	}}
}

// number is the field of a number of a case.
func (l *loads) number(i int, id, label, unit string, of func(*study.LoadCase) *float64) app.UI {
	return &field{
		ID: fmt.Sprintf("load-%d-%s", i, id), Label: label, Unit: unit, Value: strconv.FormatFloat(*of(&l.Bench.document().Loads[i]), 'g', -1, 64),
		Set: func(ctx app.Context, text string) error {
			x, err := model.ParseNumber(text)
			if err != nil {
				return err
			}
			return l.set(ctx, i, label, func(c *study.LoadCase) { *of(c) = x })
		},
	}
}
