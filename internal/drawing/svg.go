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

// writeSVG returns a sheet as a picture that prints at its scale.
func writeSVG(sh *sheet) []byte {
	d, w, h := sh.drawing(), sh.paper.wide, sh.paper.high
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%gmm" height="%gmm" viewBox="0 0 %g %g">`+"\n<title>%s</title>\n", w, h, w, h, plot.AppendEscaped(nil, sh.title()))
	fmt.Fprintf(&b, `<rect width="%g" height="%g" fill="white"/>`+"\n", w, h)
	writeLayers(&b, d.Entities, h, "id")
	b.WriteString("</svg>\n")
	return []byte(b.String())
}

// writeLayers writes entities, the layers' names as an attribute, with y downward from a height.
func writeLayers(b *strings.Builder, list []dxf.Entity, high float64, name string) {
	s := svg{b, 0, high}
	for _, l := range layers {
		fmt.Fprintf(b, `<g %s="%s" fill="none" stroke="black" font-family="Arial, Liberation Sans, sans-serif" %s>`+"\n", name, l.Name, svgStyles[l.Name])
		for _, e := range list {
			s.entity(l.Name, e)
		}
		b.WriteString("</g>\n")
	}
}

// title names the sheet.
func (s *sheet) title() string {
	if len(s.parts) > 1 {
		return "left and right steering arm, " + s.parts[0].car
	}
	return s.parts[0].title
}

// dashes are those of an entity's own line type.
func dashes(t dxf.LineType) string {
	switch t {
	case dxf.Phantom:
		return ` stroke-dasharray="6 0.9 0.9 0.9 0.9 0.9"`
	case dxf.Dashed: // hidden edges
		return ` stroke-width="0.25" stroke-dasharray="1.5 0.75"`
	}
	return ""
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

// fontByCapital is the size of a font by the height of its capitals.
const fontByCapital = 1.39

// entity writes an entity if it is on a layer.
func (s svg) entity(layer string, e dxf.Entity) {
	switch e := e.(type) {
	case dxf.Line:
		if e.Layer == layer {
			fmt.Fprintf(s, `<line x1="%.4f" y1="%.4f" x2="%.4f" y2="%.4f"%s/>`+"\n", s.x(e.From), s.y(e.From), s.x(e.To), s.y(e.To), dashes(e.Lines))
		}
	case dxf.Circle:
		if e.Layer == layer {
			fmt.Fprintf(s, `<circle cx="%.4f" cy="%.4f" r="%.4f"%s/>`+"\n", s.x(e.Centre), s.y(e.Centre), e.Radius, dashes(e.Lines))
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
			turn := ""
			if e.Turn != 0 {
				turn = fmt.Sprintf(` transform="rotate(%g %.4f %.4f)"`, -e.Turn, s.x(e.At), s.y(e.At))
			}
			fmt.Fprintf(s, `<text x="%.4f" y="%.4f" font-size="%.2f" text-anchor="%s" fill="black" stroke="none"%s>%s</text>`+"\n",
				s.x(e.At), s.y(e.At), e.Height*fontByCapital, anchor, turn, plot.AppendEscaped(nil, e.Value))
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
	fill := ""
	if p.Filled {
		fill = ` fill="black"`
	}
	fmt.Fprintf(s, `<%s points="%s"%s%s/>`+"\n", kind, strings.Join(points, " "), fill, dashes(p.Lines))
}
