package ui

import (
	"errors"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// maxFile is the size of the largest file that is read, in bytes: that of all studies that a
// browser may keep. One study has a limit of its own, 4 MB.
const maxFile = 64 << 20

// errFile is what a file that is too large is refused with.
var errFile = errors.New("the file is larger than all studies that a browser keeps, 64 MB: is it the right one?")

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

// download hands the user a text as a file.
func download(name, kind string, text []byte) { downloadBlob(name, blobOf(kind, text)) }

// blobOf returns a text as the browser handles files.
func blobOf(kind string, text []byte) app.Value {
	return app.Window().Get("Blob").New([]any{string(text)}, map[string]any{"type": kind})
}

// takeTime is how long a browser may take to fetch a file that it was handed. Some fetch it
// only once the script that handed it over has ended, and find nothing if it is gone by then.
const takeTime = time.Minute

// downloadBlob hands the user a file.
func downloadBlob(name string, blob app.Value) {
	w := app.Window()
	document := w.Get("document")
	address := w.Get("URL").Call("createObjectURL", blob)
	link := document.Call("createElement", "a")
	link.Set("href", address)
	link.Set("download", name)
	link.Set("hidden", true)
	document.Get("body").Call("append", link)
	link.Call("click")
	link.Call("remove")
	var forget app.Func
	forget = app.FuncOf(func(app.Value, []app.Value) any {
		w.Get("URL").Call("revokeObjectURL", address)
		forget.Release()
		return nil
	})
	w.Call("setTimeout", forget, takeTime.Milliseconds())
}

// copyText puts a text on the clipboard and calls done if the browser let it.
func copyText(ctx app.Context, text string, done func(app.Context)) {
	clipboard := app.Window().Get("navigator").Get("clipboard")
	if !clipboard.Truthy() {
		return
	}
	await(ctx, clipboard.Call("writeText", text), func(ctx app.Context, _ app.Value, ok bool) {
		if ok {
			done(ctx)
		}
	})
}

// await calls done with what a promise comes to; ok is false where it fails.
func await(ctx app.Context, promise app.Value, done func(ctx app.Context, v app.Value, ok bool)) {
	var kept, broken app.Func
	end := func(ok bool) app.Func {
		return app.FuncOf(func(_ app.Value, args []app.Value) any {
			ctx.Dispatch(func(ctx app.Context) { done(ctx, args[0], ok) })
			kept.Release()
			broken.Release()
			return nil
		})
	}
	kept, broken = end(true), end(false)
	promise.Call("then", kept, broken)
}

// forgetFragment takes the fragment out of the page's address.
func forgetFragment() {
	location := app.Window().Get("location")
	app.Window().Get("history").Call("replaceState", nil, "", location.Get("pathname").String()+location.Get("search").String())
}
