package api

import (
	"bytes"
	"context"
	"net/http"

	"toewright/internal/report"
	"toewright/internal/study"
	"toewright/internal/version"
)

// page is an answer to be looked at rather than read by a program.
type page struct {
	html   []byte
	policy string // under which it looks as it should
}

// sheet answers with a bench sheet.
func sheet(ctx context.Context, d *study.Document, o report.Options) (*page, error) {
	o.Version = version.Name()
	s, err := report.Gather(ctx, d, o)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := report.Write(&b, s); err != nil {
		return nil, err
	}
	return &page{b.Bytes(), report.Policy(s.Paper)}, nil
}

// sandbox is what a browser adds to a page's own policy: no other page frames it, and
// it counts as of no origin, for its names come from whoever posted the study.
const sandbox = "; frame-ancestors 'none'; sandbox"

// write sends the page. Its own policy takes the place of that of all other answers,
// which lets no document style itself.
func (p *page) write(w http.ResponseWriter) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Header().Set("Content-Security-Policy", p.policy+sandbox)
	w.Header().Set("Cache-Control", "no-store")
	w.Write(p.html) // The caller may be gone; there is nobody to tell.
}
