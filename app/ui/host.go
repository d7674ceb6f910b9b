package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// host is what the browser says of the page as a program: that a newer version of it
// waits, and that it can be installed. The script boot.js hears both.
type host struct {
	waiting     bool // a newer version is there
	put         bool // off until later
	installable bool
}

// The events by which boot.js tells of it.
const (
	updateEvent  = "toewright:update"
	installEvent = "toewright:install"
)

// look brings up to date what is known of the browser's offers.
func (h *host) look() {
	if boot := app.Window().Get("toewright"); boot.Truthy() {
		h.waiting, h.installable = boot.Get("updateWaiting").Truthy(), boot.Get("installable").Truthy()
	}
}

// offer says that a newer version waits.
func (h *host) offer(p *Panels) app.UI {
	if !h.waiting || h.put {
		return nothing()
	}
	return app.Div().ID("newer").Class("banner").Role("status").Body(
		app.P().Text("A newer version of this page is there. Your study is kept; the page loads anew."),
		app.Div().Class("deeds").Body(
			button("Change to it", func(ctx app.Context, _ app.Event) {
				p.Kept.save(ctx, p)
				app.Window().Get("toewright").Call("update")
			}).ID("update-now"),
			button("Later", func(app.Context, app.Event) { h.put = true }).ID("update-later"),
		),
	)
}

// install offers to put the page among the programs of the device.
func (h *host) install() app.UI {
	if !app.Window().Get("isSecureContext").Truthy() {
		return app.P().Class("note").Text("This address is plain http: the browser keeps no page of it for use without a network and checks no files of it. https can do both, and so can this machine's own address.")
	}
	if !h.installable {
		return app.P().Class("note").Text("The page works without a network once it was loaded. The browser's menu can put it among your programs.")
	}
	return app.Div().Body(
		button("Install on this device", func(app.Context, app.Event) { app.Window().Get("toewright").Call("install") }).ID("install"),
		app.P().Class("note").Text("It then opens like any other program, with a network or without."),
	)
}
