package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
)

// bench is what every panel works on. It is handed to each by value; its functions make
// go-app render a panel again whenever what holds it is rendered.
type bench struct {
	Desk    *model.Desk
	Caller  Caller
	Changed func(app.Context) // to be called after any edit of the desk
	// Say tells the user something, with a way to undo it if there is one.
	Say  func(ctx app.Context, text string, undo func(app.Context))
	Undo func(app.Context) // undoes the last edit
	// Lasting is a context that lives as long as the page. That of an event ends with
	// the element that it came from, and what is dispatched by it is dropped then.
	Lasting app.Context
	Fit     *fitting                  // the fit of the readings
	Open    func(app.Context, string) // opens a panel
	Show    func(app.Context)         // shows the selected car beside the reference, over the whole screen
}

// session returns the open study.
func (b bench) session() *model.Session { return b.Desk.Session }

// document returns the open study's document, which must not be changed.
func (b bench) document() *study.Document { return b.Desk.Session.Document() }

// cars returns the solved cars.
func (b bench) cars() *model.Cars { return b.Desk.Session.Cars() }

// reference returns the car that the selected one is held against.
func (b bench) reference() *model.Car {
	if car := b.cars().At(b.Desk.View.Yardstick); car != nil {
		return car
	}
	return b.cars().Base()
}

// numbers returns how numbers are written.
func (b bench) numbers() model.Numbers { return model.NumbersOf(b.document()) }

// change makes an edit and shows it. An error is returned, to be told where it was typed and
// nowhere else.
func (b bench) change(ctx app.Context, do func() error) error {
	err := do()
	b.Changed(ctx)
	return err
}

// edit is [bench.change] of what has no place of its own to tell an error: the bottom line has it.
func (b bench) edit(ctx app.Context, do func() error) { b.tell(ctx, b.change(ctx, do)) }

// tell says in the bottom line why an edit was refused, if it was.
func (b bench) tell(ctx app.Context, err error) {
	if err != nil {
		b.Say(ctx, plain(err), nil)
	}
}

// keyboard gives the keyboard to the last of the elements that can have it, once what was
// edited is on the page: the element that it came from may be gone by then.
func (b bench) keyboard(ids ...string) {
	b.Lasting.Dispatch(func(ctx app.Context) {
		ctx.Defer(func(app.Context) {
			for _, id := range ids {
				focus(id)
			}
		})
	})
}

// changeTold is [bench.change], and tells of what was changed with a way to undo it.
func (b bench) changeTold(ctx app.Context, text string, do func() error) error {
	err := b.change(ctx, do)
	if err == nil {
		b.Say(ctx, text, b.Undo)
	}
	return err
}

// undoable is [bench.edit], and tells of what was changed with a way to undo it.
func (b bench) undoable(ctx app.Context, text string, do func() error) {
	b.tell(ctx, b.changeTold(ctx, text, do))
}
