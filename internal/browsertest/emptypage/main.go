// Command emptypage is a go-app page with a line of text, to measure ours against.
// Built for the browser it is the page's program; built for anything else it writes
// the other files of the page to a folder, which still needs web/app.wasm and
// web/icon-192.png.
//
//	go run ./internal/browsertest/emptypage FOLDER
package main

import (
	"fmt"
	"os"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// page is the empty page.
type page struct{ app.Compo }

// Render shows a line of text.
func (*page) Render() app.UI { return app.P().ID("empty").Text("nothing here") }

func main() {
	app.Route("/", func() app.Composer { return &page{} })
	app.RunWhenOnBrowser()
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: emptypage FOLDER")
		os.Exit(2)
	}
	if err := write(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "emptypage:", err)
		os.Exit(1)
	}
}

// write writes the files as go-app makes them if nothing is asked of it, but for the
// icon, which would come from another host.
func write(folder string) error {
	const icon = "/web/icon-192.png"
	return app.GenerateStaticWebsite(folder, &app.Handler{
		Name:    "Empty",
		Icon:    app.Icon{Default: icon, Large: icon, Maskable: icon, SVG: icon},
		Version: "empty",
	})
}
