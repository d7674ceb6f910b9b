package ui

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// focus gives the keyboard to an element, if it is there.
func focus(id string) {
	if e := app.Window().GetElementByID(id); e.Truthy() {
		e.Call("focus")
	}
}
