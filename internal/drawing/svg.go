package drawing

import (
	"fmt"
	"strings"

	"toewright/internal/drawing/dxf"
	"toewright/internal/plot"
)

// svgStyles are the lines of each layer: legible in black and white.
var svgStyles = map[string]string{
	outline:   `stroke-width="0.5"`,
	centre:    `stroke-width="0.18" stroke-dasharray="6 0.75 1.5 0.75"`,
	original:  `stroke-width="0.25" stroke-dasharray="3 0.75"`,
	dimension: `stroke-width="0.18"`,
	words:     `stroke-width="0.25"`,
}

// svgMargin is about the drawing, mm.
const svgMargin = 10.0

// writeSVG returns a drawing as a picture that prints at 1:1.
func writeSVG(d *dxf.Drawing, title string) []byte {
	lo, hi := dxf.Extent(d.Entities)
	w, h := hi.X-lo.X+2*svgMargin, hi.Y-lo.Y+2*svgMargin
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%.2fmm" height="%.2fmm" viewBox="0 0 %.2f %.2f">`+"\n<title>%s</title>\n", w, h, w, h, plot.AppendEscaped(nil, title))
	fmt.Fprintf(&b, `<rect width="%.2f" height="%.2f" fill="white"/>`+"\n", w, h)
	s := svg{&b, svgMargin - lo.X, svgMargin + hi.Y}
	for _, l := range d.Layers {
		fmt.Fprintf(&b, `<g id="%s" fill="none" stroke="black" font-family="sans-serif" %s>`+"\n", l.Name, svgStyles[l.Name])
		for _, e := range d.Entities {
			s.entity(l.Name, e)
		}
		b.WriteString("</g>\n")
	}
	b.WriteString("</svg>\n")
	return []byte(b.String())
}

// svg writes entities with y downward.
type svg struct {
	*strings.Builder
	left, top float64
}

func (s svg) x(p dxf.Point) float64 { return s.left + p.X }
func (s svg) y(p dxf.Point) float64 { return s.top - p.Y }

// markRadius is that of the dot of a point, mm.
const markRadius = 0.3

// entity writes an entity if it is on a layer.
func (s svg) entity(layer string, e dxf.Entity) {
	switch e := e.(type) {
	case dxf.Line:
		if e.Layer == layer {
			fmt.Fprintf(s, `<line x1="%.4f" y1="%.4f" x2="%.4f" y2="%.4f"/>`+"\n", s.x(e.From), s.y(e.From), s.x(e.To), s.y(e.To))
		}
	case dxf.Circle:
		if e.Layer == layer {
			fmt.Fprintf(s, `<circle cx="%.4f" cy="%.4f" r="%.4f"/>`+"\n", s.x(e.Centre), s.y(e.Centre), e.Radius)
		}
	case dxf.Mark:
		if e.Layer == layer {
			fmt.Fprintf(s, `<circle cx="%.4f" cy="%.4f" r="%g" fill="black" stroke="none"/>`+"\n", s.x(e.At), s.y(e.At), markRadius)
		}
	case dxf.Polyline:
		if e.Layer == layer {
			s.polyline(&e)
		}
	case dxf.Text:
		if e.Layer == layer {
			anchor := [...]string{"start", "middle", "end"}[e.Align]
			fmt.Fprintf(s, `<text x="%.4f" y="%.4f" font-size="%.2f" text-anchor="%s" fill="black" stroke="none">%s</text>`+"\n",
				s.x(e.At), s.y(e.At), e.Height*1.35, anchor, plot.AppendEscaped(nil, e.Value))
		}
	}
}

func (s svg) polyline(p *dxf.Polyline) {
	kind := "polyline"
	if p.Closed {
		kind = "polygon"
	}
	var points []string
	for _, v := range p.Points {
		points = append(points, fmt.Sprintf("%.4f,%.4f", s.x(v), s.y(v)))
	}
	fmt.Fprintf(s, `<%s points="%s"/>`+"\n", kind, strings.Join(points, " "))
}
