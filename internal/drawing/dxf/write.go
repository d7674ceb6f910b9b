package dxf

import (
	"fmt"
	"strconv"
	"strings"
)

// Write returns the file of a drawing. Group codes and sections are those of the DXF
// reference of release 12.
func Write(d *Drawing) []byte {
	w := &writer{}
	if d.Remark != "" {
		w.group(999, encode(d.Remark))
	}
	w.header(d)
	w.tables(d)
	w.section("BLOCKS", func() {})
	w.section("ENTITIES", func() {
		for _, e := range d.Entities {
			e.write(w)
		}
	})
	w.group(0, "EOF")
	return []byte(w.text.String())
}

// writer collects pairs of group code and value.
type writer struct{ text strings.Builder }

func (w *writer) group(code int, value string) { fmt.Fprintf(&w.text, "%3d\n%s\n", code, value) }

// number writes the shortest decimal that reads back as x.
func (w *writer) number(code int, x float64) { w.group(code, decimal(x)) }

func decimal(x float64) string {
	text := strconv.FormatFloat(x+0, 'f', -1, 64)
	if !strings.Contains(text, ".") {
		text += ".0"
	}
	return text
}

// point writes the coordinates of a point from a group code on; the height over the paper
// is 0.
func (w *writer) point(code int, p Point) {
	w.number(code, p.X)
	w.number(code+10, p.Y)
	w.number(code+20, 0)
}

func (w *writer) section(name string, body func()) {
	w.group(0, "SECTION")
	w.group(2, name)
	body()
	w.group(0, "ENDSEC")
}

func (w *writer) header(d *Drawing) {
	lo, hi := Extent(d.Entities)
	w.section("HEADER", func() {
		w.group(9, "$ACADVER")
		w.group(1, "AC1009") // release 12
		for _, v := range []struct {
			name string
			at   Point
		}{{"$EXTMIN", lo}, {"$EXTMAX", hi}} {
			w.group(9, v.name)
			w.point(10, v.at)
		}
		w.group(9, "$LUNITS")
		w.group(70, "2") // decimal
	})
}

func (w *writer) tables(d *Drawing) {
	w.section("TABLES", func() {
		w.table("LTYPE", len(lineTypes), func() {
			for _, t := range lineTypes {
				w.lineType(t.name, t.words, t.dashes)
			}
		})
		w.table("LAYER", len(d.Layers), func() {
			for _, l := range d.Layers {
				w.group(0, "LAYER")
				w.group(2, l.Name)
				w.group(70, "0")
				w.group(62, strconv.Itoa(l.Colour))
				w.group(6, string(l.Lines))
			}
		})
		w.table("STYLE", 1, w.style)
	})
}

func (w *writer) table(name string, entries int, body func()) {
	w.group(0, "TABLE")
	w.group(2, name)
	w.group(70, strconv.Itoa(entries))
	body()
	w.group(0, "ENDTAB")
}

// lineTypes are the dashes of each type, mm; gaps are negative. Their shares are those of
// ISO 128-20 for lines of 0.25 mm.
var lineTypes = []struct {
	name   LineType
	words  string
	dashes []float64
}{
	{Continuous, "Solid line", nil},
	{Dashed, "Dashed __ __ __", []float64{3, -0.75}},
	{Chain, "Chain ____ _ ____", []float64{6, -0.75, 1.5, -0.75}},
	{Phantom, "Chain, two dots ____ _ _ ____", []float64{6, -0.75, 0.75, -0.75, 0.75, -0.75}},
}

func (w *writer) lineType(name LineType, words string, dashes []float64) {
	w.group(0, "LTYPE")
	w.group(2, string(name))
	w.group(70, "0")
	w.group(3, words)
	w.group(72, "65") // the only alignment there is, the letter A
	w.group(73, strconv.Itoa(len(dashes)))
	total := 0.0
	for _, x := range dashes {
		total += max(x, -x)
	}
	w.number(40, total)
	for _, x := range dashes {
		w.number(49, x)
	}
}

// narrowed is the width of letters by that of the font, whose capitals are as wide as high.
const narrowed = 0.8

func (w *writer) style() {
	w.group(0, "STYLE")
	w.group(2, "STANDARD")
	w.group(70, "0")
	w.number(40, 0) // height is each text's own
	w.number(41, narrowed)
	w.number(50, 0) // slant
	w.group(71, "0")
	w.number(42, 2.5)
	w.group(3, "txt")
	w.group(4, "")
}

func (w *writer) start(kind, layer string) {
	w.group(0, kind)
	w.group(8, layer)
}

// lines writes the line type of an entity that does not have its layer's.
func (w *writer) lines(t LineType) {
	if t != "" {
		w.group(6, string(t))
	}
}

func (l Line) write(w *writer) {
	w.start("LINE", l.Layer)
	w.lines(l.Lines)
	w.point(10, l.From)
	w.point(11, l.To)
}

func (c Circle) write(w *writer) {
	w.start("CIRCLE", c.Layer)
	w.lines(c.Lines)
	w.point(10, c.Centre)
	w.number(40, c.Radius)
}

func (m Mark) write(w *writer) {
	w.start("POINT", m.Layer)
	w.point(10, m.At)
}

func (p Polyline) write(w *writer) {
	w.start("POLYLINE", p.Layer)
	w.lines(p.Lines)
	w.group(66, "1") // vertices follow
	w.point(10, Point{})
	closed := "0"
	if p.Closed {
		closed = "1"
	}
	w.group(70, closed)
	for _, v := range p.Points {
		w.start("VERTEX", p.Layer)
		w.point(10, v)
	}
	w.start("SEQEND", p.Layer)
}

func (t Text) write(w *writer) {
	w.start("TEXT", t.Layer)
	w.point(10, t.At)
	w.number(40, t.Height)
	w.group(1, encode(t.Value))
	if t.Turn != 0 {
		w.number(50, t.Turn)
	}
	if t.Align != Left {
		w.group(72, strconv.Itoa(int(t.Align)))
		w.point(11, t.At)
	}
}

// encode returns a text in ASCII on one line.
func encode(text string) string {
	var b strings.Builder
	for _, r := range text {
		switch {
		case r == 'Ø' || r == '⌀':
			b.WriteString("%%c")
		case r == '°':
			b.WriteString("%%d")
		case r == '±':
			b.WriteString("%%p")
		case r < ' ':
			b.WriteByte(' ')
		case r > '~':
			fmt.Fprintf(&b, "\\U+%04X", r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
