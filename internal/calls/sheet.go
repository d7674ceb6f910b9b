package calls

import (
	"context"
	"strings"

	"toewright/internal/report"
	"toewright/internal/study"
	"toewright/internal/version"
)

// Sheet is a bench sheet as a page of its own: an answer to be looked at rather than
// read by a program.
type Sheet struct {
	HTML   string `json:"html"`
	Policy string `json:"-"` // of content security, under which it looks as it should
}

func benchSheet(ctx context.Context, d *study.Document, o report.Options) (*Sheet, error) {
	o.Version = version.Name()
	s, err := report.Gather(ctx, d, o)
	if err != nil {
		return nil, err
	}
	var b strings.Builder
	err = report.Write(&b, s)
	return &Sheet{b.String(), report.Policy(s.Paper)}, err
}
