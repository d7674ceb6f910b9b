package drawing

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"toewright/internal/drawing/dxf"
	"toewright/internal/drawing/step"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// Options say of which arm a file is made, and of which kind.
type Options struct {
	Candidate string   `json:"candidate,omitzero"` // "base", where empty, is the base car
	As        string   `json:"as,omitzero"`        // one of [Names]; the first where empty
	Side      string   `json:"side,omitzero"`      // "left" or "right"; where empty, left, of svg both
	Step      *float64 `json:"step,omitzero"`      // that the shop works to, in the file's units; nil is the last decimal shown
	Paper     string   `json:"paper,omitzero"`     // of svg: "a4" or "letter"; where empty, letter for a study shown in inches

	Projection string `json:"projection,omitzero"` // one of [Projections]; where empty, the study's

	Version string `json:"-"` // of the program, as the file states it
}

// formats are the kinds of files.
var formats = []struct {
	name, mediaType string
	write           func(*subject, *Options) []byte
}{
	{"dxf", "image/vnd.dxf", func(of *subject, _ *Options) []byte { return dxf.Write(plotted(of.first()).drawing()) }},
	{"step", "model/step", func(of *subject, _ *Options) []byte { return step.Write(of.parts[0].model(of.version)) }},
	{"svg", "image/svg+xml", func(of *subject, o *Options) []byte { return writeSVG(printed(of, papers[o.Paper])) }},
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
	d = d.Recognised()
	of, err := subjectOf(ctx, d, &o)
	if err != nil {
		return nil, "", err
	}
	if o.Paper == "" {
		o.Paper = UsualPaper(d)
	}
	if _, ok := papers[o.Paper]; !ok {
		return nil, "", &engine.Error{Key: "paper", Message: fmt.Sprintf("%.40q is none of a4, letter", o.Paper)}
	}
	for _, f := range formats {
		if f.name == cmp.Or(o.As, formats[0].name) {
			return f.write(of, &o), f.mediaType, nil
		}
	}
	return nil, "", &engine.Error{Key: "as", Message: fmt.Sprintf("%.40q is none of %s", o.As, strings.Join(Names(), ", "))}
}

// UsualPaper returns the name of the paper of a sheet where none is asked for: that of the study's units.
func UsualPaper(d *study.Document) string {
	if d.Style().Units == study.Inch {
		return "letter"
	}
	return "a4"
}

// subjectOf returns what a drawing is of.
func subjectOf(ctx context.Context, d *study.Document, o *Options) (*subject, error) {
	parts, err := partsOf(ctx, d, o)
	if err != nil {
		return nil, err
	}
	loads, err := loadsOf(ctx, d, parts[0].car)
	return &subject{parts, loads, o.Version}, err
}

// first is the same of the first arm alone.
func (s *subject) first() *subject { return &subject{s.parts[:1], s.loads, s.version} }

// Projections are how the views may lie, the usual one first.
var Projections = []string{study.ThirdAngle, study.FirstAngle}

// partsOf returns the arm of a side, or both.
func partsOf(ctx context.Context, d *study.Document, o *Options) (list []*part, err error) {
	lies := cmp.Or(o.Projection, projectionOf(d))
	if !slices.Contains(Projections, lies) {
		return nil, &engine.Error{Key: "projection", Message: fmt.Sprintf("%.40q is none of %s", lies, strings.Join(Projections, ", "))}
	}
	found, err := engine.Arm(ctx, d, engine.ArmOptions{Candidate: o.Candidate, Step: o.Step})
	if err != nil {
		return nil, err
	}
	for _, p := range partsIn(d, found, lies) {
		if o.Side == "" || o.Side == p.Side {
			list = append(list, p)
		}
	}
	if len(list) == 0 {
		return nil, &engine.Error{Key: "side", Message: "is neither left nor right"}
	}
	return list, nil
}

// projectionOf returns how the views of a study's arms lie where nothing else is asked for.
func projectionOf(d *study.Document) string {
	if d.Arm != nil && d.Arm.Projection != "" {
		return d.Arm.Projection
	}
	return Projections[0]
}

// partsIn returns both arms of what the engine found, by a projection.
func partsIn(d *study.Document, found *engine.ArmResult, lies string) (list []*part) {
	for i := range found.Sides {
		p := partOf(d, &found.Sides[i], found.Candidate)
		p.step, p.firstAngle = found.Step, lies == study.FirstAngle
		list = append(list, p)
	}
	return list
}
