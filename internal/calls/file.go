package calls

import (
	"context"
	"strings"

	"toewright/internal/drawing"
	"toewright/internal/engine"
	"toewright/internal/report"
	"toewright/internal/study"
	"toewright/internal/version"
)

// File is an answer that is a file of its own rather than figures: a page, a drawing.
type File struct {
	Text   string `json:"text"`
	Type   string `json:"type"` // its media type
	Policy string `json:"-"`    // of a page: of content security, under which it looks as it should
}

// benchSheetType is the media type of the bench sheet.
const benchSheetType = "text/html"

func benchSheet(ctx context.Context, d *study.Document, o report.Options) (*File, error) {
	o.Version = version.Name()
	s, err := report.Gather(ctx, d, o)
	if err != nil {
		return nil, err
	}
	var b strings.Builder
	err = report.Write(&b, s)
	return &File{b.String(), benchSheetType, report.Policy(s.Paper)}, err
}

func armDrawing(ctx context.Context, d *study.Document, o drawing.Options) (*File, error) {
	o.Version = version.Name()
	text, mediaType, err := drawing.File(ctx, d, o)
	if err != nil {
		return nil, err
	}
	return &File{string(text), mediaType, barePolicy}, nil
}

// tapeFormType is the media type of the form to measure a car by.
const tapeFormType = "text/plain"

func tapeForm(ctx context.Context, d *study.Document, o engine.TapeFormOptions) (*File, error) {
	text, err := report.TapeForm(ctx, d, o)
	if err != nil {
		return nil, err
	}
	return &File{text, tapeFormType, barePolicy}, nil
}

// barePolicy lets a picture load nothing and run nothing.
const barePolicy = "default-src 'none'"

// files returns a call whose answer is a file of one of some media types.
func files(c Call, types ...string) Call {
	c.Types = types
	return c
}
