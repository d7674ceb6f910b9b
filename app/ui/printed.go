package ui

import (
	"maps"
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/solver"
)

// printed is the table of the cars under the drawing on paper. No screen shows it.
type printed struct{ desk *model.Desk }

// table has a row for each car and side; one for both where they are alike.
func (p printed) table() app.UI {
	n := model.NumbersOf(p.desk.Session.Document())
	rows := p.desk.Session.Cars().List
	return app.Table().Class("printed sheet-table figures").Body(
		app.Caption().Text("Cars on the sheet. Per wheel, "+model.In(n.ToeUnit())+", slope "+model.In(n.SlopeUnit())+", travel "+model.In(n.LengthUnit())+"."),
		app.THead().Body(app.Tr().Body(
			app.Td(), app.Th().Scope("col").Text("Car"), app.Th().Scope("col").Text("What is changed"), app.Th().Scope("col").Text("Wheel"),
			app.Range(model.TableFigures).Slice(func(i int) app.UI { return app.Th().Scope("col").Text(model.TableFigures[i].Label()) }),
		)),
		app.TBody().Body(app.Range(rows).Slice(func(i int) app.UI { return p.car(n, rows[i]) })),
	)
}

// car shows the rows of one car.
func (p printed) car(n model.Numbers, r *model.Car) app.UI {
	if r.Err != nil {
		return app.Tr().Body(app.Td().Body(swatch(r.Index)), app.Th().Scope("row").Text(carName(r)),
			app.Td().ColSpan(2+len(model.TableFigures)).Text(plain(r.Err)))
	}
	if n.Alike(r) {
		return p.row(n, r, "both", solver.Left)
	}
	return app.Range(solver.Sides).Slice(func(i int) app.UI {
		return p.row(n, r, solver.Side(i).String(), solver.Side(i))
	})
}

func (p printed) row(n model.Numbers, r *model.Car, wheel string, s solver.Side) app.UI {
	return app.Tr().Body(
		app.Td().Body(swatch(r.Index)), app.Th().Scope("row").Text(carName(r)),
		app.Td().Text(p.changes(n, r)), app.Td().Text(wheel),
		app.Range(model.TableFigures).Slice(func(i int) app.UI {
			f := model.TableFigures[i]
			return app.Td().Text(n.FigureNumber(f, f.Of(&r.Figures[s])))
		}),
	)
}

// changes says what a car changes, a dash for nothing.
func (p printed) changes(n model.Numbers, car *model.Car) string {
	var list []string
	for _, key := range slices.Sorted(maps.Keys(car.Changes)) {
		q, sides, err := solver.FindParameter(p.desk.Session.Cars().Design, key)
		if err == nil {
			list = append(list, q.Label+sideWord(sides)+" "+n.Value(p.desk.Session.Document(), q, car.Changes[key]))
		}
	}
	if len(list) == 0 {
		return "–"
	}
	return strings.Join(list, "; ")
}
