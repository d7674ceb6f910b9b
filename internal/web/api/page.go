package api

import (
	"io"
	"net/http"

	"toewright/internal/calls"
)

// page is an answer to be looked at rather than read by a program.
type page calls.Sheet

// sandbox is what a browser adds to a page's own policy: no other page frames it, and
// it counts as of no origin, for its names come from whoever posted the study.
const sandbox = "; frame-ancestors 'none'; sandbox"

// write sends the page. Its own policy takes the place of that of all other answers,
// which lets no document style itself.
func (p *page) write(w http.ResponseWriter) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Header().Set("Content-Security-Policy", p.Policy+sandbox)
	w.Header().Set("Cache-Control", "no-store")
	io.WriteString(w, p.HTML) // The caller may be gone; there is nobody to tell.
}
