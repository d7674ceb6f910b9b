package ui

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// listen calls do for each event of the window and returns what ends that.
func listen(event string, do func(app.Value)) (deaf func()) {
	f := app.FuncOf(func(_ app.Value, args []app.Value) any {
		do(args[0])
		return nil
	})
	app.Window().Call("addEventListener", event, f)
	return func() {
		app.Window().Call("removeEventListener", event, f)
		f.Release()
	}
}
