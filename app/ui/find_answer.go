package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// found shows what was found: the figure, exact against stepped, and how sure it is.
func (f *find) found() app.UI {
	a := f.State.answer
	return app.Section().Class("answer").ID("answer").Aria("label", "What was found").Body(
		app.H2().Body(app.Text(a.Name), app.Small().Text("kept as a candidate, in "+seconds(f.State.took))),
		only(f.State.of != f.Bench.document().Search, func() app.UI {
			return app.P().Class("note").Text("Found before the last changes of the question.")
		}),
		app.Div().Class("outcome").Body(
			app.Strong().Class("figure").Text(a.Figure),
			app.P().Class("note").Body(
				app.Text(a.What+", "+a.Unit+from(a.Start)),
				only(a.Exact != "", func() app.UI {
					return app.Span().Text("exact answer " + a.Exact + "; this is on the steps and sizes stated")
				}),
			),
			f.deeds(),
		),
		remarks(a.Sure),
		app.Details().Body(app.Summary().Text("Its values, and what else is known"), answerValues(a.Values), remarks(a.Remarks), cautionLine()),
	)
}

// answerValues are those of the car that was made, each beside what it was rounded from.
func answerValues(list []model.AnswerValue) app.UI {
	return app.Dl().Class("values").Body(app.Range(list).Slice(func(i int) app.UI {
		v := list[i]
		return app.Div().Body(
			app.Dt().Text(upperFirst(v.Label)),
			app.Dd().Body(app.Text(v.Text), only(v.Exact != "", func() app.UI { return app.Small().Text("exact " + v.Exact) })),
		)
	}))
}

// from says what a figure was before, where that is known.
func from(start string) string {
	if start == "" {
		return ""
	}
	return ", from " + start
}

// remarks lists sentences about an answer.
func remarks(list []model.Remark) app.UI {
	return app.Ul().Class("remarks").Body(app.Range(list).Slice(func(i int) app.UI {
		return app.Li().Class(list[i].Class()).Text(list[i].Text)
	}))
}
