package ui

import (
	"cmp"
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/number"
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

// armRow is a dimension of the arm, of each side.
type armRow struct {
	label string
	of    func(*engine.ArmSide) string
}

// arm is the table of the arm's dimensions, as the shop reads them.
func (s *benchSheet) arm() app.UI {
	if s.State.fault != "" {
		return app.P().Class("problem").Text(s.State.fault)
	}
	if s.State.arm == nil {
		return app.P().Aria("live", "polite").Text("The dimensions are being computed.")
	}
	rows, sides := s.armRows(), s.State.arm.Sides
	return app.Table().Class("figures sheet-table").ID("arm").Body(
		app.Caption().Text("The hole for the outer ball, from the original hole"),
		app.THead().Body(app.Tr().Body(
			app.Td(), app.Range(sides).Slice(func(i int) app.UI { return app.Th().Scope("col").Text(sides[i].Side) }),
		)),
		app.TBody().Body(app.Range(rows).Slice(func(i int) app.UI {
			return app.Tr().Body(
				app.Th().Scope("row").Text(rows[i].label),
				app.Range(sides).Slice(func(j int) app.UI { return app.Td().Text(rows[i].of(&sides[j])) }),
			)
		})),
	)
}

// armRows lists the dimensions that the study can tell.
func (s *benchSheet) armRows() []armRow {
	n, u := s.Bench.numbers(), s.State.arm.Units
	length := func(x float64) string { return n.Length(u.Millimetres(x)) }
	change := func(l engine.Lengths) string { return length(l.Before) + " → " + length(l.After) }
	rows := []armRow{
		{"forward", func(a *engine.ArmSide) string { return length(a.Car[0]) }},
		{"outboard", func(a *engine.ArmSide) string { return length(a.Car[1]) }},
		{"up", func(a *engine.ArmSide) string { return length(a.Car[2]) }},
		{"along the stud, upward", func(a *engine.ArmSide) string { return length(a.AlongStud) }},
		{"across the stud", func(a *engine.ArmSide) string { return length(a.AcrossStud) }},
	}
	if s.State.arm.Sides[0].Face != nil {
		rows = append(rows,
			armRow{"square to the mounting face, outward", func(a *engine.ArmSide) string { return length(a.Face.By[0]) }},
			armRow{"along the bolts", func(a *engine.ArmSide) string { return length(a.Face.By[1]) }},
			armRow{"in the face, across the bolts", func(a *engine.ArmSide) string { return length(a.Face.By[2]) }},
		)
	}
	rows = append(rows,
		armRow{"arm, steering axis to ball, level", func(a *engine.ArmSide) string { return change(a.Arm) }},
		armRow{"tie rod, ball to ball", func(a *engine.ArmSide) string { return change(a.TieRod) }},
	)
	if s.State.arm.Sides[0].Turns.Valid() {
		rows = append(rows, armRow{"turns of the adjuster, longer positive", func(a *engine.ArmSide) string { return number.Decimal(float64(a.Turns), 2) }})
	}
	return rows
}

// table lists the toe changes of both wheels before and after.
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
	return app.Table().Class("figures sheet-table travels").Body(
		app.Caption().Text("Toe change from ride height, per wheel, "+n.ToeUnit()+", toe-in positive"),
		app.THead().Body(app.Tr().Body(
			app.Th().Scope("col").Text("travel"),
			app.Range(cars).Slice(func(i int) app.UI { return app.Th().Scope("col").Text(carName(cars[i]) + ", left") }),
			app.Range(cars).Slice(func(i int) app.UI { return app.Th().Scope("col").Text(carName(cars[i]) + ", right") }),
		)),
		app.TBody().Body(app.Range(travels).Slice(func(i int) app.UI {
			t := travels[i]
			return app.Tr().Body(
				app.Th().Scope("row").Text(n.Travel(t)),
				app.Range(cars).Slice(func(j int) app.UI { return app.Td().Text(toe(cars[j], solver.Left, t)) }),
				app.Range(cars).Slice(func(j int) app.UI { return app.Td().Text(toe(cars[j], solver.Right, t)) }),
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
		return nil
	}
	return app.P().Class("verdict").Text("Within its tolerances: " + yieldText(r))
}
