package ui

import (
	"errors"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// maxFile is the size of the largest file that is read, in bytes: that of the largest
// study.
const maxFile = 4 << 20

// errFile is what a file that is too large is refused with.
var errFile = errors.New("the file is larger than any study, 4 MB: is it the right one?")

// readFile reads the file that was chosen in a field and hands it over, or why it could
// not be read. No file chosen is nothing.
func readFile(ctx app.Context, input app.Value, done func(ctx app.Context, name string, text []byte, err error)) {
	files := input.Get("files")
	if !files.Truthy() || files.Get("length").Int() == 0 {
		return
	}
	file := files.Index(0)
	name := file.Get("name").String()
	if file.Get("size").Int() > maxFile {
		done(ctx, name, nil, errFile)
		return
	}
	file.Call("text").Then(func(text app.Value) {
		ctx.Dispatch(func(ctx app.Context) {
			input.Set("value", "") // so that the same file can be chosen again
			done(ctx, name, []byte(text.String()), nil)
		})
	})
}

// download hands the user a file.
func download(name, kind string, text []byte) {
	w := app.Window()
	blob := w.Get("Blob").New([]any{string(text)}, map[string]any{"type": kind})
	address := w.Get("URL").Call("createObjectURL", blob)
	link := w.Get("document").Call("createElement", "a")
	link.Set("href", address)
	link.Set("download", name)
	link.Call("click")
	w.Get("URL").Call("revokeObjectURL", address)
}

// copyText puts a text on the clipboard and calls done if the browser let it.
func copyText(ctx app.Context, text string, done func(app.Context)) {
	clipboard := app.Window().Get("navigator").Get("clipboard")
	if !clipboard.Truthy() {
		return
	}
	var copied, denied app.Func
	end := func(do func(app.Context)) func(app.Value, []app.Value) any {
		return func(app.Value, []app.Value) any {
			ctx.Dispatch(do)
			copied.Release()
			denied.Release()
			return nil
		}
	}
	copied, denied = app.FuncOf(end(done)), app.FuncOf(end(nil))
	clipboard.Call("writeText", text).Call("then", copied, denied)
}

// forgetFragment takes the fragment out of the page's address.
func forgetFragment() {
	location := app.Window().Get("location")
	app.Window().Get("history").Call("replaceState", nil, "", location.Get("pathname").String()+location.Get("search").String())
}
