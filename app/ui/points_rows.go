package ui

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// Render shows a row for each point, and what the picked one is.
func (g *pointGrid) Render() app.UI {
	g.resume()
	rows := g.rows()
	g.State.grid.Clamp(len(rows))
	var list []app.UI
	for i := range rows {
		list = append(list, g.row(i, &rows[i]), only(g.State.grid.Row == i, func() app.UI { return g.fault(g.picked()) }))
	}
	return app.Div().Class("points").Body(
		app.Table().Class("cells").Role("grid").Aria("label", "Points of the "+string(g.State.side(g.Bench.document()))+" side, in "+g.Bench.numbers().LengthUnit()).
			OnInput(g.typed).On("focusin", g.come).On("focusout", g.leave).OnClick(g.press).Body(
			app.THead().Body(app.Tr().Body(
				app.Th().Scope("col").Text("Point"),
				app.Th().Scope("col").Text("x forward"), app.Th().Scope("col").Text("y left"), app.Th().Scope("col").Text("z up"),
				app.Th().Scope("col").Class("sd").Text("± sd"), app.Th().Scope("col").Body(app.Span().Text("From")),
			)),
			app.TBody().Body(list...),
		),
		g.about(&rows[g.State.grid.Row]),
	)
}

// row shows a point: its coordinates, by how much they may be off, and where they come from.
func (g *pointGrid) row(i int, p *model.PointRow) app.UI {
	d := g.Bench.document()
	sign, from := model.From(d, p.Path)
	sd := model.PointSD(d, p)
	return app.Tr().Class(when(i == g.State.grid.Row && g.Bench.Desk.View.Picked != "", "picked", "")).Body(
		app.Th().Scope("row").Text(upperFirst(p.Label)),
		app.Range([model.GridColumns]struct{}{}).Slice(func(axis int) app.UI { return g.cell(i, axis, p) }),
		app.Td().Class("sd").Text(when(sd == "", "–", sd)),
		app.Td().Class("from", "from-"+string(sign)).Body(app.Span().Text(from)),
	)
}

// cell shows a coordinate, or what is being typed over it.
func (g *pointGrid) cell(i, axis int, p *model.PointRow) app.UI {
	d, s := g.Bench.document(), &g.State.grid
	id, text := p.CellID(axis), model.PointText(d, p, axis)
	here, index := i == s.Row && axis == s.Column, -1
	if here {
		index = 0
	}
	if here && s.Mode != model.Walking {
		text = s.Text
	}
	input := app.Input().ID(id).Type("text").Class(when(model.IsTheirs(d, p, axis), "theirs", "")).Value(text).TabIndex(index).
		AutoComplete(false).Spellcheck(false).Attr("enterkeyhint", "next").
		Aria("label", strings.TrimSuffix(upperFirst(p.Label)+", "+string(p.Side), ", ")+", "+"xyz"[axis:axis+1]).Aria("invalid", here && s.Fault != nil)
	if here && s.Fault != nil {
		input = input.Aria("describedby", id+"-problem")
	}
	return app.Td().Class("number").Body(input)
}

// fault says under the picked cell why what was typed or pasted there was refused.
func (g *pointGrid) fault(id string) app.UI {
	text := g.pasted
	if err := g.State.grid.Fault; err != nil {
		text = plain(err)
	}
	return only(text != "", func() app.UI {
		return app.Tr().Class("fault").Body(app.Td().ColSpan(6).Body(app.P().ID(id + "-problem").Class("problem").Role("alert").Text(sentence(text))))
	})
}

// about says of the picked point where its numbers come from, what it is and where the tape
// goes, and takes a template's numbers for the car's own.
func (g *pointGrid) about(p *model.PointRow) app.UI {
	_, from := model.From(g.Bench.document(), p.Path)
	if sd := model.PointSD(g.Bench.document(), p); sd != "" {
		from += ", ± " + sd + " " + g.Bench.numbers().LengthUnit()
	}
	return app.Div().Class("about").ID("about-point").Body(
		app.P().Class("note").Body(app.Strong().Text(upperFirst(p.Label)), app.Text(" ("+from+"): "+model.AboutPoint(p.Name))),
		g.Bench.keep(p.Path, p.Label),
		only(model.HasPointSD(g.Bench.document(), p), func() app.UI { return g.known(p) }),
	)
}

// known asks how well the picked point is known.
func (g *pointGrid) known(p *model.PointRow) app.UI {
	d, s := g.Bench.document(), g.Bench.session()
	return app.Div().Class("row").Body(
		&field{
			ID: "known-" + p.CellID(0), Label: "Known to, one standard deviation; 0 is exact", Unit: g.Bench.numbers().LengthUnit(), Value: model.PointSDNumber(d, p),
			Set: func(ctx app.Context, text string) error {
				return g.Bench.change(ctx, func() error { return s.TypePointSD(*p, text) })
			},
		},
		only(d.Priors != nil, func() app.UI {
			return button("As is usual, for all", func(ctx app.Context, _ app.Event) {
				g.Bench.undoable(ctx, "All points are as well known as is usual by tape.", s.ForgetSDs)
			}).ID("usual-sds")
		}),
	)
}

// sides chooses whose points are shown, and whether the right side has its own.
func (c *car) sides() app.UI {
	d, s, state := c.Bench.document(), c.Bench.session(), &c.Panels.pointing
	mirrored := d.Suspension.Right == nil
	now := string(state.side(d))
	if mirrored {
		now = "both"
	}
	list := []choice{{"both", "Both, mirrored"}, {"left", "Left"}, {"right", "Right"}}
	if d.Suspension.Common != nil {
		list = list[1:]
	}
	return app.Div().Class("deeds").Body(
		app.Div().Class("segments").Role("group").Aria("label", "Points of").Body(app.Range(list).Slice(func(i int) app.UI {
			side := list[i].Value
			return app.Button().Type("button").ID("side-"+side).Aria("pressed", side == now).Text(list[i].Text).OnClick(func(ctx app.Context, _ app.Event) {
				state.right = side == "right"
				switch {
				case side == "both" && !mirrored:
					c.Bench.undoable(ctx, "The right side is the mirror image of the left.", s.MirrorRight)
				case side != "both" && mirrored:
					c.Bench.undoable(ctx, "The right side has points of its own.", s.OwnRight)
				}
			}, app.EventScope(side, now))
		})),
		only(d.Suspension.Common != nil, func() app.UI {
			return button("Right from left", func(ctx app.Context, _ app.Event) {
				c.Bench.undoable(ctx, "The right side is the mirror image of the left.", s.MirrorRight)
			})
		}),
		only(!mirrored, func() app.UI {
			return button("Left from right", func(ctx app.Context, _ app.Event) {
				c.Bench.undoable(ctx, "The left side is the mirror image of the right.", s.MirrorLeft)
			}).ID("left-from-right")
		}),
	)
}
