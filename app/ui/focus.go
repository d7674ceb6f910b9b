package ui

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// reveal scrolls the first element that a selector finds into view.
func reveal(selector string) {
	if e := app.Window().Get("document").Call("querySelector", selector); e.Truthy() {
		e.Call("scrollIntoView", map[string]any{"block": "nearest"})
	}
}

// slideMargin is the room before what was slid into view, in CSS pixels.
const slideMargin = 16

// slideTo scrolls a row sideways to one of its elements. The page stays where it is.
func slideTo(row, element string) {
	document := app.Window().Get("document")
	r, e := document.Call("querySelector", row), document.Call("querySelector", element)
	if r.Truthy() && e.Truthy() {
		r.Set("scrollLeft", e.Get("offsetLeft").Int()-r.Get("offsetLeft").Int()-slideMargin)
	}
}

// inSight is how much of a panel must be on the screen, in pixels, or it is scrolled to.
const inSight = 150

// toTop scrolls the page, and the content of the first element that a selector finds,
// to the top; where that element is then below the screen, to what holds it.
func toTop(selector string) {
	app.Window().Call("scrollTo", 0, 0)
	e := app.Window().Get("document").Call("querySelector", selector)
	if !e.Truthy() {
		return
	}
	e.Set("scrollTop", 0)
	if top := e.Call("getBoundingClientRect").Get("top").Float(); top > app.Window().Get("innerHeight").Float()-inSight {
		e.Get("parentElement").Call("scrollIntoView")
	}
}

// focus gives the keyboard to an element, if it is there, and brings it into view.
func focus(id string) { focusAs(id, false) }

// focusAs is [focus], which may leave the page where it is.
func focusAs(id string, still bool) {
	if e := app.Window().GetElementByID(id); e.Truthy() {
		e.Call("focus", map[string]any{"preventScroll": still})
	}
}

// focused returns the id of what has the keyboard, if that has one.
func focused() string {
	if e := app.Window().Get("document").Get("activeElement"); e.Truthy() {
		return e.Get("id").String()
	}
	return ""
}
