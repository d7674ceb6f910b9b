package main

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"strings"
)

// picture returns the drawing as pixels of a square of the given size.
func picture(strokes []stroke, size int) image.Image {
	img := image.NewNRGBA(image.Rect(0, 0, size, size))
	scale := float64(side) / float64(size)
	for y := range size {
		for x := range size {
			p := point{(float64(x) + 0.5) * scale, (float64(y) + 0.5) * scale}
			c := paper
			for _, s := range strokes {
				c = blend(c, s.colour, min(max(0.5-s.distance(p)/scale, 0), 1))
			}
			img.SetNRGBA(x, y, c)
		}
	}
	return img
}

// blend lays a part of the colour over an opaque ground.
func blend(ground, over color.NRGBA, part float64) color.NRGBA {
	mix := func(a, b uint8) uint8 { return uint8(float64(a) + part*(float64(b)-float64(a)) + 0.5) }
	return color.NRGBA{mix(ground.R, over.R), mix(ground.G, over.G), mix(ground.B, over.B), 0xff}
}

// vector returns the drawing as an SVG document.
func vector(strokes []stroke) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d">`+"\n", side, side)
	fmt.Fprintf(&b, `<path fill="%s" d="M0 0H%dV%dH0z"/>`+"\n", hex(paper), side, side)
	b.WriteString(`<g fill="none" stroke-linecap="round" stroke-linejoin="round">` + "\n")
	for _, s := range strokes {
		fmt.Fprintf(&b, `<path stroke="%s" stroke-width="%g" d="%s"/>`+"\n", hex(s.colour), s.width, path(s.points))
	}
	b.WriteString("</g>\n</svg>\n")
	return b.Bytes()
}

// path returns the points as path data. One point is drawn twice, as a line of no
// length shows its round ends.
func path(points []point) string {
	if len(points) == 1 {
		points = append(points, points[0])
	}
	var b strings.Builder
	for i, p := range points {
		fmt.Fprintf(&b, "%c%.1f %.1f", "ML"[min(i, 1)], p.x, p.y)
	}
	return b.String()
}

func hex(c color.NRGBA) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }
