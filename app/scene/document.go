package scene

import (
	"fmt"

	"toewright/internal/plot"
)

// Document is a frame as a file of its own: an SVG on white paper with its style in it.
// Title and Description are what a screen reader says.
type Document struct {
	Title, Description string
	Size               Size
	Foot               plot.Picture // what stands below the drawing
}

// Height is that of the whole file, in CSS pixels.
func (d *Document) Height() float64 { return d.Size.Height + d.Foot.Height }

// Append appends the file with what a frame shows. The handles are left out: paper
// cannot be dragged.
func (d *Document) Append(dst []byte, out *Output) []byte {
	dst = fmt.Appendf(dst, `<svg xmlns="http://www.w3.org/2000/svg" role="img" width="%g" height="%g" viewBox="0 0 %[1]g %[2]g">`+"\n",
		d.Size.Width, d.Height())
	dst = append(plot.AppendEscaped(append(dst, "<title>"...), d.Title), "</title>\n<desc>"...)
	dst = append(plot.AppendEscaped(dst, d.Description), "</desc>\n<style>\n"...)
	dst = append(dst, fileColours+plot.Stylesheet(plot.White)+Stylesheet()...)
	dst = fmt.Appendf(dst, "</style>\n"+`<path class="paper" d="M0 0h%gv%gh-%[1]gz"/>`+"\n"+`<g class="%[3]s">`+"\n",
		d.Size.Width, d.Height(), out.Class())
	dst = append(appendNodes(dst, out), "</g>\n"...)
	dst = d.Foot.AppendGroup(dst, plot.Point{Y: d.Size.Height})
	return append(dst, "</svg>\n"...)
}

// appendNodes appends the nodes that show something, in their groups.
func appendNodes(dst []byte, out *Output) []byte {
	group := ""
	for i, n := range nodes.list {
		if n.group != group {
			if group != "" {
				dst = append(dst, "</g>\n"...)
			}
			dst, group = append(n.open(dst), '\n'), n.group
		}
		dst = n.appendShown(dst, Slot(i), out)
	}
	return append(dst, "</g>\n"...)
}

// appendShown appends a node with what it shows, nothing for one that is empty but a
// clip: its group refers to it.
func (n node) appendShown(dst []byte, s Slot, out *Output) []byte {
	switch t, p := out.Text(s), out.Path(s); {
	case n.kind == clipNode:
		return fmt.Appendf(dst, `<clipPath id="%s"><path d="%s"/></clipPath>`+"\n", n.clipID(), p)
	case n.kind == pathNode && len(p) > 0:
		return fmt.Appendf(dst, `<path class="%s" d="%s"/>`+"\n", n.class, p)
	case n.kind == textNode && t.Content != "":
		dst = fmt.Appendf(dst, `<text class="%s" text-anchor="%s" x="%.2f" y="%.2f"`, n.class, t.Align, t.At.X, t.At.Y)
		if t.Turn != 0 {
			dst = fmt.Appendf(dst, ` transform="rotate(%.2f %.2f %.2f)"`, t.Turn, t.At.X, t.At.Y)
		}
		return append(plot.AppendEscaped(append(dst, '>'), t.Content), "</text>\n"...)
	}
	return dst
}
