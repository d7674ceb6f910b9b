package ui

import (
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/solver"
)

// rows lists what was read, with the row that is typed in its place and the one that comes
// after it.
func (r *readings) rows(run model.Run) app.UI {
	d, k := r.Bench.document(), &r.State.keypad
	rows := run.Rows(d)
	at, replaced := r.place(run, rows)
	var list []app.UI
	off := r.residuals(run)
	next, more := k.Following(r.Bench.session())
	for i := range rows {
		if i == at {
			list = append(list, r.typedRow())
		}
		if i != at || !replaced {
			list = append(list, r.row(&rows[i], off))
		}
	}
	if at == len(rows) {
		list = append(list, r.typedRow())
		if more {
			list = append(list, r.nextRow(next.Travel))
		}
	}
	return app.Div().Body(
		app.Table().Class("run-rows").Body(
			app.Caption().Class("unseen").Text("Readings of the run, "+model.In(k.ReadingUnit(d))+", toe-in positive"),
			app.THead().Body(app.Tr().Body(
				app.Th().Scope("col").Text("Travel, "+r.Bench.numbers().LengthUnit()), r.sideHead("Left", off), r.sideHead("Right", off),
			)),
			app.TBody().Body(list...),
		),
		only(k.Opened != nil, func() app.UI { return r.opened(run) }),
		app.P().Class("note").ID("spacing").Text(r.spacing(next, more)),
	)
}

// sideHead is the head of a side's readings.
func (r *readings) sideHead(label string, off map[float64][2]*model.Residual) app.UI {
	return app.Th().Scope("col").Body(
		app.Text(label+", "+r.State.keypad.ReadingUnit(r.Bench.document())),
		only(off != nil, func() app.UI { return app.Small().Text("less fit") }),
	)
}

// place returns where among the rows the one that is typed belongs; replaced is true where it
// stands for the row there.
func (r *readings) place(run model.Run, rows []model.RunRow) (at int, replaced bool) {
	k := &r.State.keypad
	if k.Opened != nil {
		at = slices.IndexFunc(rows, func(row model.RunRow) bool { return row.Travel == *k.Opened })
		return max(at, 0), at >= 0
	}
	x, ok := k.Travel(r.Bench.session(), run)
	if !ok {
		return len(rows), false
	}
	at = slices.IndexFunc(rows, func(row model.RunRow) bool { return row.Travel >= x })
	if at < 0 {
		return len(rows), false
	}
	return at, false
}

// spacing says how rows go on.
func (r *readings) spacing(next model.Proposal, more bool) string {
	switch {
	case r.State.keypad.Done():
		return "All travels of the run are read. Type another one, or begin the next run."
	case more && next.Own:
		return "Rows follow your own travels; type another one and the next rows follow that."
	}
	return "Rows follow the study's travel; type your own and the next rows follow that."
}

// residuals returns by how much the readings of a run are more than the fitted car gives, by
// their travels; nil where no fit holds.
func (r *readings) residuals(run model.Run) map[float64][2]*model.Residual {
	f, d := &r.State.fit, r.Bench.document()
	if f.result == nil || !model.FitsStill(f.of, d) {
		return nil
	}
	at := map[float64][2]*model.Residual{}
	for side, i := range run.Sets {
		list := model.Residuals(d, f.result, i)
		for j := range list {
			both := at[d.Readings[i].Values[j][0]]
			both[side] = &list[j]
			at[d.Readings[i].Values[j][0]] = both
		}
	}
	return at
}

// row shows a row that was entered. A press on a number opens it.
func (r *readings) row(row *model.RunRow, off map[float64][2]*model.Residual) app.UI {
	travel := model.SignedTravel(r.Bench.document(), row.Travel)
	return app.Tr().Body(
		app.Th().Scope("row").Body(r.cell(row, model.TravelField, travel, travel)),
		app.Range(solver.Sides).Slice(func(i int) app.UI {
			side := solver.Sides[i]
			text := r.State.keypad.ReadingText(r.Bench.document(), row.Values[side])
			if text == "" {
				text = "–"
			}
			return app.Td().Body(
				r.cell(row, model.LeftField+model.ReadingField(side), text, side.String()+" at "+travel+": "+text),
				r.less(off[row.Travel][side]),
			)
		}),
	)
}

// cell is a number of a row that was entered.
func (r *readings) cell(row *model.RunRow, f model.ReadingField, text, label string) app.UI {
	return app.Button().Type("button").Class("cell").Text(text).Aria("label", "Change "+label).OnClick(func(ctx app.Context, _ app.Event) {
		r.typed(func(k *model.Keypad) { k.Open(r.Bench.session(), row, f) })
	}, app.EventScope(row.Travel, int(f), text))
}

// less shows by how much a reading is more than the fitted car gives.
func (r *readings) less(off *model.Residual) app.UI {
	if off == nil {
		return nothing()
	}
	text := number.Signed(off.Off, r.State.keypad.ReadingText(r.Bench.document(), &off.Off))
	if off.Out {
		return app.Small().Class("warning").Title("Left out of the fit: read it again").Text("⚠ " + text)
	}
	return app.Small().Text(text)
}

// typedRow has the fields of the row that is typed.
func (r *readings) typedRow() app.UI {
	return app.Tr().Class("typed").Body(
		app.Th().Scope("row").Body(r.padField(model.TravelField)),
		app.Td().Body(r.padField(model.LeftField)), app.Td().Body(r.padField(model.RightField)),
	)
}

// nextRow shows the travel that comes after the row that is typed.
func (r *readings) nextRow(travel float64) app.UI {
	return app.Tr().Class("next-row").Body(
		app.Th().Scope("row").Text(model.SignedTravel(r.Bench.document(), travel)), app.Td().Text("–"), app.Td().Text("–"),
	)
}

// opened is what else can be done with a row that was opened.
func (r *readings) opened(run model.Run) app.UI {
	travel := *r.State.keypad.Opened
	return app.Div().Class("deeds").Body(
		button("Remove this row", func(ctx app.Context, _ app.Event) {
			r.typed(func(k *model.Keypad) { k.Close(r.Bench.session()) })
			r.Bench.undoable(ctx, "The reading is removed.", func() error { return r.Bench.session().RemoveReading(run, travel) })
		}, travel).ID("remove-row"),
		button("Leave it as it was", func(ctx app.Context, _ app.Event) {
			r.typed(func(k *model.Keypad) { k.Close(r.Bench.session()) })
		}).ID("leave-row"),
	)
}
