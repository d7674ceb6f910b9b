package plot

import (
	"unicode/utf8"
)

// Document is a picture as a file of its own: an SVG with its style in it, to be
// kept, sent or printed. Title and Description are what a screen reader says.
type Document struct {
	Title, Description string
	Paper              Paper
	Picture            Picture
}

// Append appends the file.
func (d Document) Append(dst []byte) []byte {
	dst = d.appendHead(dst)
	dst = append(dst, "<style>\n"+Stylesheet(d.Paper)+"</style>\n"...)
	size := Rect{Max: Point{d.Picture.Width, d.Picture.Height}}
	dst = Mark{Class: "paper", Path: Path{}.Rect(size)}.append(dst)
	return appendEnd(d.Picture.AppendMarks(dst))
}

// AppendInline appends the picture as an element of a page that has the
// [Stylesheet] itself, on the page's own ground. After its marks come empty groups of
// the ids given, into which marks may be put later.
func (d Document) AppendInline(dst []byte, groups ...string) []byte {
	dst = d.Picture.AppendMarks(d.appendHead(dst))
	for _, id := range groups {
		dst = append(dst, `<g id="`+id+`"></g>`...)
	}
	return appendEnd(dst)
}

// appendHead appends the start of the element and what a screen reader says.
func (d Document) appendHead(dst []byte) []byte {
	width, height := string(Path(nil).number(d.Picture.Width)), string(Path(nil).number(d.Picture.Height))
	dst = append(dst, `<svg xmlns="http://www.w3.org/2000/svg" role="img" width="`+width+`" height="`+height+
		`" viewBox="0 0 `+width+` `+height+`">`+"\n"...)
	dst = appendElement(dst, "title", d.Title)
	return appendElement(dst, "desc", d.Description)
}

// AppendMarks appends the marks alone, to stand in an element that is on the page
// already.
func (p Picture) AppendMarks(dst []byte) []byte {
	for _, m := range p.Marks {
		dst = m.append(dst)
	}
	return dst
}

// AppendGroup appends the picture as a group that stands at a place of another.
func (p Picture) AppendGroup(dst []byte, at Point) []byte {
	dst = append(dst, `<g transform="translate(`...)
	dst = append(Path(dst).point(at), ")\">\n"...)
	return append(p.AppendMarks(dst), "</g>\n"...)
}

func appendEnd(dst []byte) []byte { return append(dst, "</svg>\n"...) }

func appendElement(dst []byte, name, text string) []byte {
	if text == "" {
		return dst
	}
	dst = append(dst, "<"+name+">"...)
	dst = AppendEscaped(dst, text)
	return append(dst, "</"+name+">\n"...)
}

// append appends the mark as an element.
func (m Mark) append(dst []byte) []byte {
	if m.Text != "" {
		return m.appendText(dst)
	}
	dst = append(dst, `<path class="`...)
	dst = AppendEscaped(dst, m.Class)
	dst = append(dst, `" d="`...)
	dst = append(dst, m.Path...)
	return append(dst, "\"/>\n"...)
}

func (m Mark) appendText(dst []byte) []byte {
	dst = append(dst, `<text class="`...)
	dst = AppendEscaped(dst, m.Class)
	dst = append(dst, `" font-size="`...)
	dst = Path(dst).number(m.Size)
	dst = append(dst, `" text-anchor="`+m.Anchor.Align.String()+`" x="`...)
	dst = Path(dst).number(m.Anchor.At.X)
	dst = append(dst, `" y="`...)
	dst = Path(dst).number(m.Anchor.At.Y)
	if m.Anchor.Turn != 0 {
		dst = append(dst, `" transform="rotate(`...)
		dst = Path(dst).number(m.Anchor.Turn)
		dst = append(Path(append(dst, ' ')).point(m.Anchor.At), ')')
	}
	dst = append(dst, `">`...)
	dst = AppendEscaped(dst, m.Text)
	return append(dst, "</text>\n"...)
}

// AppendEscaped appends text for XML: markup is escaped, and what XML 1.0 cannot
// hold becomes the replacement character.
func AppendEscaped(dst []byte, text string) []byte {
	for _, r := range text {
		switch {
		case r == '<':
			dst = append(dst, "&lt;"...)
		case r == '&':
			dst = append(dst, "&amp;"...)
		case r == '"':
			dst = append(dst, "&#34;"...)
		case r == '>':
			dst = append(dst, "&gt;"...)
		case r < ' ' && r != '\t' && r != '\n' || r == 0xfffe || r == 0xffff:
			dst = utf8.AppendRune(dst, utf8.RuneError)
		default:
			dst = utf8.AppendRune(dst, r)
		}
	}
	return dst
}
