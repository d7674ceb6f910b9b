package ui

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/study"
	"toewright/solver"
)

// scenarios are the set-ups that one part must serve.
type scenarios struct {
	app.Compo
	Bench bench
}

// Render shows the set-ups and how they count together.
func (s *scenarios) Render() app.UI {
	var list []study.Scenario
	combine := "weighted"
	if f := s.Bench.document().Search; f != nil {
		list = f.Scenarios
		if f.Combine != "" {
			combine = f.Combine
		}
	}
	return app.Details().Class("block").Open(len(list) > 0).Body(
		app.Summary().Text(fmt.Sprintf("Set-ups that it must serve (%s)", count(len(list)))),
		app.P().Class("note").Text("One arm serves a car at several casters, heights or wheels. With none, the car as it stands. The chart shows the selected car in each, dotted, and dashed that which decides."),
		app.Ul().Class("plain").Body(app.Range(list).Slice(func(i int) app.UI { return s.row(i, &list[i]) })),
		app.If(len(list) == 0, func() app.UI {
			return button("Caster a degree up and down, an inch lower", s.addUsual).ID("usual-setups")
		}),
		&picker{
			ID: "scenario", Label: "Add a set-up", Design: s.Bench.cars().Design,
			Taken: func(string) bool { return false }, Pick: s.add,
		},
		app.If(len(list) > 1, func() app.UI {
			return choices("combine", "Counts", combine, []choice{{"weighted", "the mean of all"}, {"worst", "the worst of them"}}, s.setCombine)
		}),
	)
}

func count(n int) string {
	if n == 0 {
		return "none"
	}
	return fmt.Sprint(n)
}

// row shows a set-up: its name, its changes and a way to remove it.
func (s *scenarios) row(i int, k *study.Scenario) app.UI {
	fields := slices.Sorted(maps.Keys(k.Changes))
	return app.Li().Class("setup").Body(
		&field{
			ID: fmt.Sprintf("setup-%d", i), Label: "Name", Hidden: true, Wide: true, Value: k.Name,
			Set: func(ctx app.Context, text string) error {
				return s.set(ctx, i, "rename a set-up", func(k *study.Scenario) { k.Name = strings.TrimSpace(text) })
			},
		},
		app.Range(fields).Slice(func(j int) app.UI { return s.change(i, fields[j], k.Changes[fields[j]]) }),
		app.P().Class("note").Text(s.Bench.Desk.SetUpText(i)),
		button("Remove", func(ctx app.Context, _ app.Event) {
			s.Bench.edit(ctx, func() error { return s.Bench.session().RemoveScenario(i) })
		}, i).Aria("label", "Remove "+k.Name),
	)
}

// change is the field of one change of a set-up.
func (s *scenarios) change(i int, key string, value float64) app.UI {
	p, _, err := solver.FindParameter(s.Bench.cars().Design, key)
	if err != nil {
		return app.P().Class("problem").Text(plain(err))
	}
	n, d := s.Bench.numbers(), s.Bench.document()
	return &field{
		ID: fmt.Sprintf("setup-%d-%s", i, key), Label: p.Label, Unit: n.ValueUnit(p), Value: n.ValueNumber(d, p, value),
		Set: func(ctx app.Context, text string) error {
			x, err := n.ParseValue(d, p, text)
			if err != nil {
				return err
			}
			return s.set(ctx, i, "change a set-up", func(k *study.Scenario) { k.Changes[key] = x })
		},
	}
}

func (s *scenarios) set(ctx app.Context, i int, label string, change func(*study.Scenario)) error {
	return s.Bench.edit(ctx, func() error { return s.Bench.session().SetScenario(i, label, change) })
}

// add adds a set-up in which one parameter is another.
func (s *scenarios) add(ctx app.Context, key string) {
	p, _, err := solver.FindParameter(s.Bench.cars().Design, key)
	if err != nil {
		return
	}
	s.Bench.edit(ctx, func() error {
		return s.Bench.session().AddScenario(p.Label, study.Changes{key: s.Bench.Desk.Usual(key)})
	})
}

func (s *scenarios) addUsual(ctx app.Context, _ app.Event) {
	s.Bench.edit(ctx, func() error { return s.Bench.session().AddScenarios(s.Bench.session().UsualScenarios()) })
}

func (s *scenarios) setCombine(ctx app.Context, value string) {
	s.Bench.edit(ctx, func() error {
		return s.Bench.session().EditSearch("how set-ups count", "", func(f *study.Search) { f.Combine = value })
	})
}
