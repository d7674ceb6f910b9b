package ui

import (
	"fmt"
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// standing shows how a car stands to the limits of the search: of a selected car each of
// them, of others those that it does not hold. Nothing where there are none.
func standing(b bench, car *model.Car, selected bool) app.UI {
	list, err := b.Desk.Standing(car)
	if err != nil {
		return app.P().Class("problem").Text("Limits: " + plain(err))
	}
	return app.If(len(list) > 0, func() app.UI { return limitLines(list, selected) })
}

// limitLines are those of them that are shown.
func limitLines(list []model.Standing, selected bool) app.UI {
	told := list
	if !selected {
		told = slices.DeleteFunc(slices.Clone(list), func(s model.Standing) bool { return s.Held })
	}
	if len(told) == 0 {
		return app.P().Class("limits note").Text(fmt.Sprintf("Holds all limits (%d).", len(list)))
	}
	return app.Ul().Class("limits").Aria("label", "Limits").Body(
		app.Range(told).Slice(func(i int) app.UI { return limitLine(told[i], selected) }),
	)
}

// limitLine is one limit: held, broken by so much, or neither and, of a selected car, why.
func limitLine(s model.Standing, selected bool) app.UI {
	class, sign := "held", "✓ "
	switch {
	case s.Lacks != "":
		class, sign = "warning", "? "
		if selected {
			s.Text += "; " + s.Lacks
		}
	case !s.Held:
		class, sign = "warning", "✗ "
	}
	return app.Li().Class(class).Body(
		app.Span().Aria("hidden", "true").Text(sign),
		app.Text(s.Label+": "+s.Text+"."),
	)
}
