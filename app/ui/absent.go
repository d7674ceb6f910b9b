package ui

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// go-app tells the children of an element apart by their number. Where one that is not there
// took no number, those behind it would be made anew as it comes: a field in which is being typed
// loses focus and text, a press that is on its way is lost.

// nothing keeps the number of a child that is not there: a text of no length, which takes no room.
func nothing() app.UI { return app.Text("") }

// only is a child that is there on a condition. One thing or another is app.If with its Else.
func only(there bool, child func() app.UI) app.UI {
	if there {
		return child()
	}
	return nothing()
}

// many are children of which there are now more, now fewer, and behind which others stand: all of
// them take one number.
func many(children app.UI) app.UI { return app.Div().Class("many").Body(children) }
