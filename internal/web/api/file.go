package api

import (
	"io"
	"net/http"

	"toewright/internal/calls"
)

// file is an answer that is a file of its own: a page, a drawing.
type file calls.File

// sandbox is what a browser adds to a page's own policy: no other page frames it, and
// it counts as of no origin, for its names come from whoever posted the study.
const sandbox = "; frame-ancestors 'none'; sandbox"

// write sends the file. A page's own policy takes the place of that of all other answers,
// which lets no document style itself.
func (f *file) write(w http.ResponseWriter) {
	w.Header().Set("Content-Type", f.Type+"; charset=utf-8")
	w.Header().Set("Content-Security-Policy", f.Policy+sandbox)
	w.Header().Set("Cache-Control", "no-store")
	io.WriteString(w, f.Text) // The caller may be gone; there is nobody to tell.
}
