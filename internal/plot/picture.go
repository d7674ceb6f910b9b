package plot

import "slices"

// Mark is one piece of a picture: a path, or where Text is not empty a text. Class
// is one or more of those of the [Stylesheet].
type Mark struct {
	Class  string
	Path   Path
	Text   string
	Anchor Anchor
	Size   float64 // of the text
}

// Picture is a list of marks, drawn in order, on a paper of Width by Height.
type Picture struct {
	Width, Height float64
	Marks         []Mark
}

// Draw adds a copy of a path, so that its buffer may be used again; an empty one is
// left out.
func (p *Picture) Draw(class string, path Path) {
	if len(path) > 0 {
		p.Marks = append(p.Marks, Mark{Class: class, Path: slices.Clone(path)})
	}
}

// Write adds a text; an empty one is left out.
func (p *Picture) Write(class string, at Anchor, size float64, text string) {
	if text != "" {
		p.Marks = append(p.Marks, Mark{Class: class, Text: text, Anchor: at, Size: size})
	}
}

// Dimension adds a dimension with its figure.
func (p *Picture) Dimension(d *Dimension, size float64, figure string) {
	p.Draw("thin", d.Lines)
	p.Draw("head", d.Heads)
	p.Write("figure", d.Text, size, figure)
}
