package ui

import (
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// question is what is asked of a search, of a map, of a trade-off and of parts to buy: it
// is stated once, open in Search and elsewhere one line a part.
type question struct {
	app.Compo
	Bench bench
	State *asking
	Open  bool // its parts begin open
	// After does something later; it is that of the panels.
	After func(time.Duration, func(app.Context))
}

// asking is what of the question is open, and whether it can be had. It outlives the panels.
type asking struct {
	turned   map[string]bool // parts that are not as they begin, by their keys and where
	variable string          // key of the one whose sizes are shown
	limit    int             // number, from 1, of the one whose details are shown
	columns  []string        // settings of set-ups that are asked for and in none yet
	check    feasibility
}

// parts of the question, in their order.
var questionParts = []struct {
	key, title string
	line       func(model.Question) string
	body       func(*question) app.UI
}{
	{"free", "May change", func(q model.Question) string { return q.Free }, (*question).free},
	{"target", "Target", func(q model.Question) string { return q.Target }, (*question).target},
	{"setups", "Set-ups", func(q model.Question) string { return q.SetUps }, (*question).setUps},
	{"limits", "Limits", func(q model.Question) string { return q.Limits }, (*question).limits},
}

// OnMount and OnUpdate see to it that what cannot be had is known.
func (q *question) OnMount(app.Context)  { q.State.check.look(q.Bench, q.After) }
func (q *question) OnUpdate(app.Context) { q.State.check.look(q.Bench, q.After) }

// Render shows the parts.
func (q *question) Render() app.UI {
	lines := q.Bench.Desk.Question()
	return app.Div().Class("question").Body(
		app.Range(questionParts).Slice(func(i int) app.UI {
			p := &questionParts[i]
			open := q.isOpen(p.key)
			return app.Section().Class("ask").ID("ask-"+p.key).Body(
				app.Div().Class("ask-head").Body(
					app.H2().Body(q.turner(p.key, p.title, open)),
					only(!open, func() app.UI { return app.P().Class("ask-line").Text(p.line(lines)) }),
				),
				only(open, func() app.UI { return p.body(q) }),
			)
		}),
	)
}

// turner is the button that opens and closes a part.
func (q *question) turner(key, title string, open bool) app.UI {
	return app.Button().Type("button").ID("ask-"+key+"-open").Class("turner").Aria("expanded", open).
		OnClick(func(app.Context, app.Event) { q.turn(key) }, app.EventScope(key, q.Open)).
		Body(app.Text(title), app.Span().Class("turner-sign").Aria("hidden", true))
}

// place names a part where it stands: each way remembers by itself.
func (q *question) place(key string) string {
	if q.Open {
		return key + " in Search"
	}
	return key
}

func (q *question) isOpen(key string) bool { return q.begins(key) != q.State.turned[q.place(key)] }

// begins reports whether a part is open to begin with: in Search all of them, of a narrow
// page the first.
func (q *question) begins(key string) bool {
	return q.Open && (key == questionParts[0].key || !isNarrow())
}

func (q *question) turn(key string) {
	if q.State.turned == nil {
		q.State.turned = map[string]bool{}
	}
	q.State.turned[q.place(key)] = !q.State.turned[q.place(key)]
}

// narrowPage is the width in CSS pixels below which a page is a phone's.
const narrowPage = 700

// isNarrow reports whether the page is a phone's.
func isNarrow() bool {
	width := app.Window().Get("innerWidth")
	return width.Truthy() && width.Int() < narrowPage
}

// cannotFind says why there is nothing to be found of a base car that cannot be solved.
func (b bench) cannotFind() app.UI {
	return app.Div().Body(
		app.P().Class("problem").Text("The base car cannot be solved: "+plain(b.cars().Err)),
		app.P().Text("Mend its points in Car; then there is something to find."),
	)
}
