package ui

import (
	"encoding/json"
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/scene"
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/plot"
	"toewright/internal/study"
)

// tape leads through the measuring of a car by tape, one measure at a time: each time the one
// that settles the toe best of those that can be reached.
type tape struct {
	app.Compo
	Bench   bench
	State   *taping
	Version uint64 // of the desk, so that go-app renders it anew
}

// taping is what is known of a car that is being taped. It outlives the panel.
type taping struct {
	job    job
	of     *study.Document // that was located last, or is being located
	trial  string          // what stood in the field then
	result *engine.LocateResult
	fault  string
	page   job              // that writes the form
	next   *engine.NextTape // what is asked for
	refuse string           // why what was typed was not taken
}

// tapeField is the one in which the next measure is typed.
const tapeField = "tape-value"

// OnMount and OnUpdate have the car located when what was measured has changed.
func (t *tape) OnMount(ctx app.Context)  { ctx.Defer(t.refresh) }
func (t *tape) OnUpdate(ctx app.Context) { ctx.Defer(t.refresh) }

// OnDismount takes the band off the chart.
func (t *tape) OnDismount() { t.Bench.Desk.View.Bands = nil }

// refresh has the car located by what was measured and what is being typed. A worker does it.
func (t *tape) refresh(app.Context) {
	s, doc := t.State, t.Bench.document()
	typed := halfTyped.texts[tapeField]
	if doc.Measured == nil || t.Bench.Caller == nil || s.of == doc && s.trial == typed {
		return
	}
	if s.of != doc {
		s.refuse = ""
		if s.next != nil && s.of != nil && typed == "" {
			s.next = nil
		}
	}
	s.of, s.trial = doc, typed
	with := doc
	if mm, err := t.Bench.numbers().ParseLength(typed); err == nil && typed != "" && s.next != nil {
		with = model.WithMeasure(doc, s.next, mm)
	}
	s.job.drop()
	s.job.start(t.Bench.Lasting, t.Bench.Caller, calls.Locate, with, engine.LocateOptions{Curve: true}, func(ctx app.Context, raw json.RawMessage, err error) {
		r, err := answerOf[engine.LocateResult](raw, err)
		if s.fault = faultOf(err); err != nil {
			return
		}
		s.result = r
		if s.next == nil && len(r.Next) > 0 {
			s.next = &r.Next[0]
		}
		t.Bench.Desk.ShowTape(r)
		t.Bench.Changed(ctx)
	})
}

// Render shows the next measure, how well the toe is known, and all that was measured.
func (t *tape) Render() app.UI {
	d, s := t.Bench.document(), t.State
	if d.Measured == nil {
		return app.Div().Class("tape").Body(t.begin(), t.form(), t.two())
	}
	return app.Div().Class("tape").Body(
		only(s.fault != "", func() app.UI { return app.P().Class("problem").Role("alert").Text(s.fault) }),
		only(s.result != nil, func() app.UI {
			return app.P().ID("tape-status").Class(when(s.job.running(), "stale", "")).Aria("live", "polite").Text(model.TapeStatus(d, s.result))
		}),
		t.ask(),
		t.apply(),
		t.rows(),
		t.marks(),
		t.form(),
		only(len(d.Measured.Marks) == 0, func() app.UI { return app.Div().Body(t.two(), t.begin()) }),
	)
}

// begin offers marks.
func (t *tape) begin() app.UI {
	return app.Section().Class("block").Body(
		app.P().Text("With a tape, a level, a plumb line and an hour every point of a corner is had to a millimetre. Set six marks, measure what is asked for, and skip what cannot be reached. How to set marks, level the car and find centres: “A car by tape” in the docs."),
		button("Set six marks", func(ctx app.Context, _ app.Event) { t.Bench.edit(ctx, t.Bench.session().SetMarks) }).ID("tape-begin").Class("primary"),
	)
}

// form hands the user the form to measure the car by, as the command form does.
func (t *tape) form() app.UI {
	s := t.State
	return runOf(&s.page, "tape-form", "", "", button("Form to fill in beside the car", func(app.Context, app.Event) {
		t.Bench.download(&s.page, calls.Form, nil, "-tape.txt", "")
	}).ID("tape-form"))
}

// two are the two lengths that alone already give a curve.
func (t *tape) two() app.UI {
	base := t.Bench.cars().Base()
	if base == nil {
		return nothing()
	}
	d, n := t.Bench.document(), t.Bench.numbers()
	list := model.TwoLengths(d, t.Bench.cars().Design)
	if len(list) < 2 {
		return nothing()
	}
	return app.Section().Class("block").Body(
		app.H2().Text("Only two lengths"),
		app.P().Class("note").Text("Ball to ball, on the template that is nearest to the car: its curve then bends towards the car's, with the band that the rest leaves. Readings of a gauge narrow it most."),
		app.Range(list).Slice(func(i int) app.UI {
			of := &list[i]
			return &field{
				ID: "tape-two-" + strconv.Itoa(i), Label: []string{"Tie rod", "Arm: lower ball joint to tie-rod ball"}[i], Unit: n.LengthUnit(), Value: model.Taped(d, of),
				Set: t.length(func(mm float64) error { return t.Bench.session().TakeOne(of, mm) }),
			}
		}),
	)
}

// ask shows the next measure on a picture, and the field for it.
func (t *tape) ask() app.UI {
	d, s, next := t.Bench.document(), t.State, t.State.next
	if next == nil {
		return only(s.result != nil && len(s.result.Next) == 0, func() app.UI {
			return app.P().Text("Nothing more that could be measured would settle the toe by much.")
		})
	}
	question := model.TapeQuestion(d, next)
	picture := plot.Document{Title: "Where to measure: " + question, Picture: scene.Taped(d, next)}
	return app.Section().Class("tape-ask").Aria("label", "Next measure").Body(
		app.Raw(string(picture.AppendInline(nil))),
		app.Label().For(tapeField).ID("tape-question").Text(question),
		app.Div().Class("tape-entry").Body(
			app.Input().ID(tapeField).Type("text").Attr("inputmode", "decimal").AutoComplete(false).Value(halfTyped.texts[tapeField]).
				OnInput(t.typing).OnKeyDown(t.key),
			app.Span().Class("unit").Text(t.Bench.numbers().LengthUnit()),
			button("Next", t.take).ID("tape-next").Class("primary"),
		),
		only(s.refuse != "", func() app.UI { return app.P().Class("problem").Role("alert").Text(s.refuse) }),
		app.Div().Class("deeds").Body(
			button("Cannot reach", func(ctx app.Context, _ app.Event) {
				halfTyped.drop(tapeField)
				t.Bench.edit(ctx, func() error { return t.Bench.session().SkipMeasure(next) })
			}, next.Key).ID("tape-skip"),
			only(s.result != nil, func() app.UI { return t.others() }),
		),
	)
}

// others are the next best measures, to choose from.
func (t *tape) others() app.UI {
	list := slices.DeleteFunc(slices.Clone(t.State.result.Next), func(n engine.NextTape) bool { return n.Key == t.State.next.Key })
	return app.Details().Body(
		app.Summary().Text("Another one"),
		app.Range(list).Slice(func(i int) app.UI {
			n := list[i]
			return button(model.TapeQuestion(t.Bench.document(), &n), func(app.Context, app.Event) {
				halfTyped.drop(tapeField)
				t.State.next = &n
			}, n.Key)
		}),
	)
}

// typing keeps what is being typed, and has the car located with it.
func (t *tape) typing(ctx app.Context, _ app.Event) {
	halfTyped.set(tapeField, ctx.JSSrc().Get("value").String(), "")
	t.State.refuse = ""
	t.refresh(ctx)
}

func (t *tape) key(ctx app.Context, e app.Event) {
	if e.Get("key").String() == "Enter" {
		t.take(ctx, e)
		return
	}
	ctx.PreventUpdate()
}

// take enters what was typed and asks for the next.
func (t *tape) take(ctx app.Context, _ app.Event) {
	s, typed := t.State, halfTyped.texts[tapeField]
	mm, err := t.Bench.numbers().ParseLength(typed)
	if err == nil {
		next := s.next
		err = t.Bench.changeTold(ctx, "Measured: "+model.TapeQuestion(t.Bench.document(), next)+".", func() error { return t.Bench.session().TakeMeasure(next, mm) })
	}
	if err != nil {
		s.refuse = plain(err)
		return
	}
	halfTyped.drop(tapeField)
	t.Bench.keyboard(tapeField)
}

// apply puts the points where the tape has them.
func (t *tape) apply() app.UI {
	s := t.State
	if s.result == nil || len(t.Bench.document().Measures()) == 0 {
		return nothing()
	}
	return app.Div().Class("deeds").Body(
		button("Fit the points to the tape", func(ctx app.Context, _ app.Event) {
			t.Bench.undoable(ctx, "The points stand where the tape has them.", func() error { return t.Bench.session().TakeLocation(s.result) })
		}, s.of).ID("tape-apply").Disabled(s.job.running() || s.trial != "" || s.of != t.Bench.document()),
	)
}

// length returns what a field of a length does with what is typed: it is read, and set as an
// edit, mm.
func (t *tape) length(set func(mm float64) error) func(app.Context, string) error {
	return func(ctx app.Context, text string) error {
		mm, err := t.Bench.numbers().ParseLength(text)
		if err != nil {
			return err
		}
		return t.Bench.change(ctx, func() error { return set(mm) })
	}
}

// rows is the table of what was measured.
func (t *tape) rows() app.UI {
	r := t.State.result
	list := model.TapeRows(t.Bench.document(), r)
	if len(list) == 0 {
		return nothing()
	}
	return app.Table().Class("tape-rows").Body(
		app.THead().Body(app.Tr().Body(heads("Measured", "Taped", "± sd", "Points say", "Off", "")...)),
		app.TBody().Body(app.Range(list).Slice(func(i int) app.UI { return t.row(&list[len(list)-1-i]) })),
	)
}

// row is one measure, the last one first.
func (t *tape) row(m *model.TapeRow) app.UI {
	of := m.Measure
	return app.Tr().Class(when(m.Wrong != "", "wrong", "")).Body(
		app.Th().Scope("row").Body(app.Text(m.Of), only(m.Wrong != "", func() app.UI { return app.Span().Class("warning").Text(" ✗ " + m.Wrong) })),
		app.Td().Body(&field{
			ID: "tape-" + m.Path(), Label: m.Of, Hidden: true, Value: m.Taped,
			Set: t.length(func(mm float64) error { return t.Bench.session().SetMeasure(of, mm) }),
		}),
		app.Td().Text(m.SD), app.Td().Text(m.Says), app.Td().Text(m.Off),
		app.Td().Body(button("×", func(ctx app.Context, _ app.Event) {
			t.Bench.undoable(ctx, "Taken out: "+m.Of+".", func() error { return t.Bench.session().DropMeasure(of) })
		}, of).Aria("label", "Take out "+m.Of)),
	)
}
