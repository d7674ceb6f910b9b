package drawing

import (
	"fmt"
	"strings"

	"toewright/internal/drawing/dxf"
	"toewright/internal/engine"
	"toewright/internal/plot"
	"toewright/internal/study"
)

// AppendInline appends the views of a study's arms as pictures within a page of HTML, each of
// class "views": both, or the left one where the right is its mirror image, each at the largest
// scale at which it is no larger than a width and a height, mm. What is larger at 1:5 is printed
// smaller than to scale, which no bench sheet claims to be.
func AppendInline(dst []byte, d *study.Document, found *engine.ArmResult, wide, high float64) []byte {
	s := &sheet{subject: &subject{parts: partsIn(d, found, projectionOf(d))}}
	s.fitting.mirrored = s.subject.mirrored()
	var b strings.Builder
	for i, p := range s.shown() {
		var list []dxf.Entity
		var w, h float64
		for _, z := range scales[:smallestInline] {
			if list, w, h = p.block(z.by, s.hand(i)); w <= wide && h <= high {
				break
			}
		}
		by := min(1, wide/w)
		fmt.Fprintf(&b, `<svg class="views" width="%.2fmm" height="%.2fmm" viewBox="-1 -1 %.2f %.2f"><title>%s</title>`+"\n", by*(w+2), by*(h+2), w+2, h+2, plot.AppendEscaped(nil, p.title))
		writeLayers(&b, list, h, "class")
		b.WriteString("</svg>\n")
	}
	return append(dst, b.String()...)
}

// smallestInline is how many of the scales are tried: down to 1:5.
const smallestInline = 3
