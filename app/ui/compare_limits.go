package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// standing shows how a car stands to each limit of the search. Nothing where there are
// none.
func standing(b bench, car *model.Car) app.UI {
	list, err := b.Desk.Standing(car)
	if err != nil {
		return app.P().Class("problem").Text("Limits: " + plain(err))
	}
	if len(list) == 0 {
		return nothing()
	}
	return app.Ul().Class("limits plain").Aria("label", "Limits").Body(
		app.Range(list).Slice(func(i int) app.UI { return limitLine(list[i]) }),
	)
}

// limitLine is one limit: held, broken by so much, or neither and why.
func limitLine(s model.Standing) app.UI {
	class, sign := "held", "✓ "
	switch {
	case s.Lacks != "":
		class, sign = "warning", "? "
		s.Text += "; " + s.Lacks
	case !s.Held:
		class, sign = "warning", "✗ "
	}
	return app.Li().Class(class).Body(
		app.Span().Aria("hidden", "true").Text(sign),
		app.Text(s.Label+": "+s.Text+"."),
	)
}
