package ui

import (
	"cmp"
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// title is the head of the sheet.
func (s *benchSheet) title(car *model.Car) app.UI {
	d := s.Bench.document()
	fields := []struct{ label, value string }{
		{"Study", cmp.Or(d.Name, "without a name")}, {"Part for", carName(car)},
		{"Revision", cmp.Or(d.Revision, "–")}, {"Date", cmp.Or(d.Date, "–")},
	}
	return app.Dl().Class("sheet-title").Body(app.Range(fields).Slice(func(i int) app.UI {
		return app.Div().Body(app.Dt().Text(fields[i].label), app.Dd().Text(fields[i].value))
	}))
}

// table lists the toe changes of both wheels before and after, in one column where they toe
// alike.
func (s *benchSheet) table(car *model.Car) app.UI {
	n, cars := s.Bench.numbers(), s.shownCars()
	travels := model.SheetTravels(s.Bench.document(), s.Bench.cars())
	toe := func(c *model.Car, side solver.Side, t float64) string {
		a, ok := c.ToeChange(side, t)
		if !ok {
			return "not reached"
		}
		return n.ToeNumber(a)
	}
	type column struct {
		name string
		car  *model.Car
		side solver.Side
	}
	sides, wheels := model.ShownSides(cars), "per wheel"
	if len(sides) == 1 {
		wheels = "left = right"
	}
	var columns []column
	for _, side := range sides {
		for _, c := range cars {
			name := carName(c)
			if len(sides) > 1 {
				name += ", " + side.String()
			}
			columns = append(columns, column{name, c, side})
		}
	}
	return app.Table().Class("figures sheet-table travels").Body(
		app.Caption().Text("Toe change from ride height, "+wheels+", "+n.ToeUnit()+", toe-in positive"),
		app.THead().Body(app.Tr().Body(
			app.Th().Scope("col").Text("travel"),
			app.Range(columns).Slice(func(i int) app.UI { return app.Th().Scope("col").Class("named").Text(columns[i].name) }),
		)),
		app.TBody().Body(app.Range(travels).Slice(func(i int) app.UI {
			return app.Tr().Body(
				app.Th().Scope("row").Text(n.Travel(travels[i])),
				app.Range(columns).Slice(func(j int) app.UI { return app.Td().Text(toe(columns[j].car, columns[j].side, travels[i])) }),
			)
		})),
	)
}

// conditions says under what the numbers hold.
func (s *benchSheet) conditions(car *model.Car) app.UI {
	d, n := s.Bench.document(), s.Bench.numbers()
	w, mm := d.SearchWindow(), d.Units.Millimetres
	held := "toe, camber and caster"
	if car.Index > 0 {
		if hold := d.Candidates[car.Index-1].Hold; hold != nil {
			held = cmp.Or(strings.Join(hold, ", "), "nothing")
		}
	}
	list := []string{
		fmt.Sprintf("Window: %s bump, %s droop, wheel centre against body; both wheels together, steering straight ahead.", n.Travel(mm(w.Bump)), n.Travel(mm(w.Droop))),
		"Set again after the change: " + held + ".",
		"Toe is per wheel, toe-in positive, " + model.In(n.ToeUnit()) + ".",
	}
	list = append(list, s.changes(d, car)...)
	return app.Section().Body(
		app.H2().Text("Conditions"),
		app.Ul().Body(app.Range(list).Slice(func(i int) app.UI { return app.Li().Text(list[i]) })),
	)
}

// changes lists what the car changes.
func (s *benchSheet) changes(d *study.Document, car *model.Car) []string {
	var list []string
	for _, v := range model.ChangesInWords(d, s.Bench.cars(), car) {
		list = append(list, "Changed: "+v.Label+" "+v.Text+".")
	}
	return list
}

// verdict says how a series of this car does, if one was built of the study as it is.
func (s *benchSheet) verdict(car *model.Car) app.UI {
	r := s.Series.result
	if r == nil || s.Series.of != s.Bench.document() || r.Candidate != car.Name {
		return nothing()
	}
	return app.P().Class("verdict").Text("Within its tolerances: " + yieldText(r))
}
