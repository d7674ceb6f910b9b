package ui

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// tag is a word beside a label that says where its number comes from.
func tag(text string) app.UI {
	return only(text != "", func() app.UI { return app.Span().Class("tag", "source").Text(text) })
}

// borrowed says which of the car's numbers are a template's, for as long as any are.
func (b bench) borrowed() app.UI {
	of := b.document().Borrowed()
	text := strings.TrimSpace(of.Warning() + " " + of.Remark())
	if text == "" {
		return nothing()
	}
	return app.P().ID("borrowed").Class("warning").Text(text)
}

// keep is the button by which numbers of a template become the car's own as they stand;
// nothing where there are none at the path.
func (b bench) keep(path, label string) app.UI {
	if !b.document().IsBorrowed(path) {
		return nothing()
	}
	return button("Keep as my car's", func(ctx app.Context, _ app.Event) {
		b.undoable(ctx, upperFirst(label)+": kept as your car's own.", func() error { return b.session().Own(path, label) })
	}, path).ID("keep-"+strings.ReplaceAll(path, ".", "-")).Class("keep").Aria("label", "Keep as my car's: "+label)
}

// upperFirst returns a label as it begins a sentence.
func upperFirst(label string) string { return strings.ToUpper(label[:1]) + label[1:] }

// borrowedList says how many entries of a list are nobody's own, and takes them out.
func (b bench) borrowedList(key string) app.UI {
	list := model.BorrowedOf(b.document(), key)
	if list.From == 0 {
		return nothing()
	}
	return app.Div().Class("borrowed").Body(
		app.P().Class("warning").Text(list.String()),
		app.Div().Class("deeds").Body(
			button("Take them out", func(ctx app.Context, _ app.Event) {
				b.undoable(ctx, "What was not your own is taken out.", func() error { return b.session().RemoveBorrowed(key) })
			}, key).ID("take-out-"+key),
			button("Keep them as mine", func(ctx app.Context, _ app.Event) {
				b.undoable(ctx, "Kept as your own.", func() error { return b.session().Own(key, key) })
			}, key).ID("keep-"+key),
		),
	)
}

// fitUse says in a line whether the answers are of the fitted car, with the button that
// makes them so.
func (b bench) fitUse() app.UI {
	use := model.FitUseOf(b.document(), b.Fit.result, b.Fit.of)
	return only(use.String() != "", func() app.UI {
		return app.Div().ID("fit-use").Class("borrowed").Body(
			app.P().Class("note").Text(use.String()),
			only(use == model.FitUnused, func() app.UI { return button("Use the fitted car", b.takeFit).ID("use-fit") }),
			only(use == model.FitMissing, func() app.UI {
				return button("Open Readings", func(ctx app.Context, _ app.Event) { b.Open(ctx, "readings") }).ID("to-readings")
			}),
		)
	})
}

// takeFit makes the car that was found the base car.
func (b bench) takeFit(ctx app.Context, _ app.Event) {
	b.undoable(ctx, "The fitted car is your car.", func() error { return b.session().TakeFit(b.Fit.of, b.Fit.result) })
}
