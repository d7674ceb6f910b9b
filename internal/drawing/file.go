package drawing

import (
	"cmp"
	"context"
	"fmt"
	"strings"

	"toewright/internal/drawing/dxf"
	"toewright/internal/drawing/step"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// Options say of which arm a file is made, and of which kind.
type Options struct {
	Candidate string `json:"candidate,omitzero"` // "base", where empty, is the base car
	As        string `json:"as,omitzero"`        // one of [Names]; the first where empty
	Side      string `json:"side,omitzero"`      // "left", where empty, or "right"

	Version string `json:"-"` // of the program, as the file states it
}

// formats are the kinds of files.
var formats = []struct {
	name, mediaType string
	write           func(*part, *Options) []byte
}{
	{"dxf", "image/vnd.dxf", func(p *part, _ *Options) []byte { return dxf.Write(p.drawing()) }},
	{"step", "model/step", func(p *part, o *Options) []byte { return step.Write(p.model(o.Version)) }},
	{"svg", "image/svg+xml", func(p *part, _ *Options) []byte { return writeSVG(p.drawing(), p.title) }},
}

// Names returns the names of the formats.
func Names() (names []string) {
	for _, f := range formats {
		names = append(names, f.name)
	}
	return names
}

// Types returns their media types.
func Types() (types []string) {
	for _, f := range formats {
		types = append(types, f.mediaType)
	}
	return types
}

// File returns the file that is asked for and its media type.
func File(ctx context.Context, d *study.Document, o Options) (text []byte, mediaType string, err error) {
	p, err := newPart(ctx, d, &o)
	if err != nil {
		return nil, "", err
	}
	for _, f := range formats {
		if f.name == cmp.Or(o.As, formats[0].name) {
			return f.write(p, &o), f.mediaType, nil
		}
	}
	return nil, "", &engine.Error{Key: "as", Message: fmt.Sprintf("%.40q is none of %s", o.As, strings.Join(Names(), ", "))}
}
