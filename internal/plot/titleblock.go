package plot

// Field is one field of a title block: a small label with its value below. Part is
// its share of the row's width; zero counts as one.
type Field struct {
	Label, Value string
	Part         float64
}

func (f Field) part() float64 {
	if f.Part > 0 {
		return f.Part
	}
	return 1
}

// TitleBlock adds a title block that fills the area: rows of one height, each with
// its fields, lines between them. Values are of the text size, made smaller where
// one would be wider than its field; labels are six tenths of size.
func (p *Picture) TitleBlock(area Rect, rows [][]Field, size float64) {
	lines := Path{}.Rect(area)
	height := area.Height() / float64(max(len(rows), 1))
	for i, row := range rows {
		band := Box(area.Min.X, area.Min.Y+height*float64(i), area.Width(), height)
		if i > 0 {
			lines = lines.Polyline(band.Min, Point{band.Max.X, band.Min.Y})
		}
		lines = p.titleRow(lines, band, row, size)
	}
	p.Draw("frame", lines)
}

// titleRow adds the texts of a row and appends the lines between its fields.
func (p *Picture) titleRow(lines Path, band Rect, row []Field, size float64) Path {
	parts := 0.0
	for _, f := range row {
		parts += f.part()
	}
	x := band.Min.X
	for i, f := range row {
		box := Box(x, band.Min.Y, band.Width()*f.part()/parts, band.Height())
		if i > 0 {
			lines = lines.Polyline(box.Min, Point{box.Min.X, box.Max.Y})
		}
		p.titleField(box, f, size)
		x = box.Max.X
	}
	return lines
}

// wideFont is the room for a bold and wide font beyond what [TextWidth] estimates.
const wideFont = 1.2

func (p *Picture) titleField(box Rect, f Field, size float64) {
	const labelPart, margin = 0.6, 0.4 // of the text's size
	inner := box.Inset(size*margin, size*margin, size*margin, size*margin)
	label := Anchor{At: Point{inner.Min.X, inner.Min.Y + size*labelPart*capHeight}}
	p.Write("label", label, size*labelPart, f.Label)
	valueSize := size
	if width := TextWidth(f.Value, size) * wideFont; width > inner.Width() {
		valueSize = size * inner.Width() / width
	}
	p.Write("title", Anchor{At: Point{inner.Min.X, inner.Max.Y}}, valueSize, f.Value)
}
