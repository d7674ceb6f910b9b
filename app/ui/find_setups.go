package ui

import (
	"fmt"
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
)

// setUps is the table of the set-ups that one part must serve: a row for each, a column for
// each setting in which they differ.
func (q *question) setUps() app.UI {
	list := q.search().Scenarios
	return app.Div().Body(
		app.P().Class("note").Text("One arm serves a car at several casters, heights or wheels, each set-up with as many settings as it has. An empty cell is as the car stands. The chart shows the selected car in each, dotted, and dashed that which decides."),
		app.If(len(list) > 0, func() app.UI { return q.setUpTable(list) }).Else(func() app.UI {
			return button("Caster a degree up and down, an inch lower", q.addUsualSetUps).ID("usual-setups")
		}),
		app.Div().Class("row").Body(
			adder("add-setup", "Add a set-up", setUpChoices(), q.addSetUp),
			only(len(list) > 0, func() app.UI { return adder("add-setting", "Add a setting", q.settings(), q.addColumn) }),
		),
		only(len(list) > 0, func() app.UI {
			return &picker{
				ID: "scenario", Label: "Another setting", Design: q.Bench.cars().Design,
				Taken: q.hasColumn, Pick: func(ctx app.Context, key string) { q.addColumn(ctx, key) },
			}
		}),
		only(len(list) > 1, func() app.UI {
			combine := "weighted"
			if c := q.search().Combine; c != "" {
				combine = c
			}
			return choices("combine", "Counts", combine, []choice{{"weighted", "the mean of all"}, {"worst", "the worst of them"}}, q.setCombine)
		}),
	)
}

// columns are the settings of the table.
func (q *question) columns() (list []model.SetUpColumn) {
	keys := model.SetUpKeys(q.search().Scenarios)
	for _, key := range q.State.columns {
		if !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	for _, key := range keys {
		if c, ok := model.SetUpColumnOf(q.Bench.cars().Design, key); ok {
			list = append(list, c)
		}
	}
	return list
}

// setUpTable shows the set-ups.
func (q *question) setUpTable(list []study.Scenario) app.UI {
	columns, n := q.columns(), q.Bench.numbers()
	rows, err := q.Bench.Desk.SetUpRows()
	if err != nil {
		rows = make([]model.SetUpRow, len(list))
	}
	return app.Div().Body(
		only(err != nil, func() app.UI { return app.P().Class("problem").Text(plain(err)) }),
		app.Div().Class("crowd").Body(app.Table().Class("asked setups").Body(
			app.THead().Body(app.Tr().Body(
				app.Th().Scope("col").Text("Set-up"),
				app.Range(columns).Slice(func(i int) app.UI {
					return app.Th().Scope("col").Body(app.Text(upperFirst(columns[i].Label)), app.Span().Class("unit").Text(" "+columns[i].Unit(n)))
				}),
				app.Th().Scope("col").Class("before").Text("Peak before"),
				app.Th().Scope("col").Body(app.Text("Now"), app.Span().Class("unit").Text(" "+n.ToeUnit())),
				app.Td(),
			)),
			app.TBody().Body(app.Range(list).Slice(func(i int) app.UI { return q.setUpRow(i, &list[i], columns, rows[i]) })),
		)),
	)
}

// setUpRow shows a set-up: its name, its settings, its peaks and a way to remove it.
func (q *question) setUpRow(i int, k *study.Scenario, columns []model.SetUpColumn, row model.SetUpRow) app.UI {
	return app.Tr().Body(
		app.Th().Scope("row").Body(&field{
			ID: fmt.Sprintf("setup-%d", i), Label: fmt.Sprintf("Name of set-up %d", i+1), Hidden: true, Wide: true, Value: k.Name,
			Set: func(ctx app.Context, text string) error {
				return q.Bench.change(ctx, func() error {
					return q.Bench.session().SetScenario(i, "rename a set-up", func(k *study.Scenario) { k.Name = strings.TrimSpace(text) })
				})
			},
		}),
		app.Range(columns).Slice(func(j int) app.UI { return q.setUpCell(i, k, columns[j]) }),
		app.Td().Class("before").DataSet("label", "peak before").Text(row.Before),
		app.Td().Class("now").DataSet("label", "now").Body(
			app.If(row.Problem != "", func() app.UI {
				return app.Span().Class("warning").Text("✗ " + sentence(study.Spoken(row.Problem)))
			}).Else(func() app.UI { return app.Text(row.Now) }),
			only(row.Decides, func() app.UI { return app.Small().Text("decides") }),
		),
		app.Td().Class("more").Body(app.Button().Type("button").Class("small").Text("×").Aria("label", "Remove "+k.Name).
			OnClick(func(ctx app.Context, _ app.Event) {
				q.Bench.edit(ctx, func() error { return q.Bench.session().RemoveScenario(i) })
			}, app.EventScope("remove", i, k.Name))),
	)
}

// setUpCell is the field of a setting of a set-up.
func (q *question) setUpCell(i int, k *study.Scenario, c model.SetUpColumn) app.UI {
	return cell(c.Label, &field{
		ID: fmt.Sprintf("setup-%d-%s", i, c.Key), Label: k.Name + ", " + c.Label, Hidden: true, Value: c.Number(q.Bench.document(), k),
		Set: func(ctx app.Context, text string) error {
			if err := q.Bench.session().SetInSetUp(i, &c, text); err != nil {
				return err
			}
			q.Bench.Changed(ctx)
			return nil
		},
	})
}

// usualSettings are the keys of those that are offered by themselves, where the car has
// them.
var usualSettings = []string{"caster", "rideHeight", "camber", "toe", "tyreRadius"}

// settings are those that can be added as a column.
func (q *question) settings() (list []choice) {
	design := q.Bench.cars().Design
	add := func(c model.SetUpColumn) {
		if !q.hasColumn(c.Key) {
			list = append(list, choice{c.Key, c.Label})
		}
	}
	for _, key := range usualSettings {
		if c, ok := model.SetUpColumnOf(design, key); ok {
			add(c)
		}
	}
	for _, c := range model.SetUpPositions(design) {
		add(c)
	}
	return list
}

func (q *question) hasColumn(key string) bool {
	return slices.ContainsFunc(q.columns(), func(c model.SetUpColumn) bool { return c.Key == key })
}

func (q *question) addColumn(_ app.Context, key string) {
	q.State.columns = append(q.State.columns, key)
}

// setUpChoices are the set-ups to begin with.
func setUpChoices() (list []choice) {
	for _, k := range model.SetUpKinds {
		list = append(list, choice{k.Key, k.Label})
	}
	return list
}

func (q *question) addSetUp(ctx app.Context, key string) {
	for i := range model.SetUpKinds {
		if k := &model.SetUpKinds[i]; k.Key == key {
			q.Bench.edit(ctx, func() error { return q.Bench.session().AddSetUps(k) })
		}
	}
}

func (q *question) addUsualSetUps(ctx app.Context, _ app.Event) {
	q.Bench.edit(ctx, func() error { return q.Bench.session().AddScenarios(q.Bench.session().UsualScenarios()) })
}

func (q *question) setCombine(ctx app.Context, value string) {
	q.Bench.edit(ctx, func() error {
		return q.Bench.session().EditSearch("how set-ups count", "", func(f *study.Search) { f.Combine = value })
	})
}

// adder is a list of what can be added, which goes back to its own word once something
// was.
func adder(id, label string, list []choice, add func(app.Context, string)) app.UI {
	return app.Div().Class("adder").Body(
		app.Label().For(id).Class("unseen").Text(label),
		app.Select().ID(id).OnChange(func(ctx app.Context, _ app.Event) {
			menu := ctx.JSSrc()
			key := menu.Get("value").String()
			if menu.Get("selectedIndex").Int() == 0 {
				return
			}
			menu.Set("selectedIndex", 0)
			add(ctx, key)
		}, app.EventScope(id, len(list))).Body(
			app.Option().Value("").Text(label+" …").Selected(true),
			app.Range(list).Slice(func(i int) app.UI { return app.Option().Value(list[i].Value).Text(list[i].Text) }),
		),
	)
}
