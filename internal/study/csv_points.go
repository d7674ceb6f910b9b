package study

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"toewright/internal/number"
	"toewright/internal/spelling"
	"toewright/solver"
)

// PointTable is what a table of points says of a car, and what it leaves as it stood.
type PointTable struct {
	Taken []TakenPoint // in the order of the table
	Kept  []KeptPoint  // in the order of [Document.Points]
	Datum *Datum       // how its own axes lie in the car's; nil where they are the car's
}

// TakenPoint is a point that a table places.
type TakenPoint struct {
	PlacedPoint
	Line int // Line counts from 1, the header included.
}

// KeptPoint is a point that a table does not speak of.
type KeptPoint struct {
	PlacedPoint
	Mirrored bool // it becomes the mirror image of the left one, as others of the right side are stated
}

// Points returns the points that the table places.
func (t *PointTable) Points() []PlacedPoint {
	points := make([]PlacedPoint, len(t.Taken))
	for i := range t.Taken {
		points[i] = t.Taken[i].PlacedPoint
	}
	return points
}

// has reports whether the table places a point.
func (t *PointTable) has(p PlacedPoint) bool {
	return slices.ContainsFunc(t.Taken, func(q TakenPoint) bool { return q.Name == p.Name && q.Side == p.Side })
}

// keep lists the points of a car that the table leaves as they stood.
func (t *PointTable) keep(d *Document) {
	after := d
	if d.Suspension.Right == nil && slices.ContainsFunc(t.Taken, func(p TakenPoint) bool { return p.Side == Right }) {
		after = d.Clone()
		for _, p := range t.Points() {
			after.SetPoint(p)
		}
	}
	for _, p := range after.Points() {
		if !t.has(p) {
			t.Kept = append(t.Kept, KeptPoint{p, p.Side == Right && d.Suspension.Right == nil})
		}
	}
}

// pointColumns are the columns of a table of points by the words that may stand above each.
var pointColumns = [][]string{{"point", "name", "hardpoint", "joint", "key"}, {"side"}, {"x"}, {"y"}, {"z"}}

// ParsePoints reads a table of points of the document's car in its units. Columns may
// stand in any order under a header: "point" (or "name"), "x", "y", "z", each perhaps with
// "(mm)" or "(in)", and "side" if wanted; without a header they are point, x, y, z. A point
// is known by its key or its label, in any spelling of letters and spaces. Where no side is
// given, the sign of y tells it. A table that has three or more of the study's marks among
// its rows, by their names, is turned and moved to where they stand in the car. The error is a [*CSVError] that names line and column.
func ParsePoints(data []byte, d *Document) (*PointTable, error) {
	t, err := parseTable(data, isPointHeader, "point", "x", "y", "z")
	if err != nil {
		return nil, err
	}
	if err := t.checkTitles(pointColumns); err != nil {
		return nil, err
	}
	for _, axis := range []string{"x", "y", "z"} {
		if t.find(axis) < 0 {
			return nil, &CSVError{Line: 1, Message: "want a column " + axis + " in the header"}
		}
	}
	p := newPointParser(t, d)
	out := &PointTable{}
	if out.Datum, err = p.datum(); err != nil {
		return nil, err
	}
	p.own = out.Datum
	for i := range t.rows {
		if _, ok := p.mark(&t.rows[i]); ok {
			continue
		}
		point, err := p.parse(&t.rows[i])
		if err != nil {
			return nil, err
		}
		if out.has(point) {
			return nil, t.errorf(&t.rows[i], p.name, "the %s stands twice", d.PointName(point))
		}
		out.Taken = append(out.Taken, TakenPoint{point, t.rows[i].line})
	}
	if err := p.checkSigns(out.Points()); err != nil {
		return nil, err
	}
	out.keep(d)
	return out, nil
}

// checkTitles refuses a column whose title is none of the words, a second column for one
// of the same, and a table without the first.
func (t *table) checkTitles(columns [][]string) error {
	for i, c := range t.header {
		k := slices.IndexFunc(columns, func(words []string) bool { return slices.Contains(words, c.word) })
		if c.title == "" {
			continue
		}
		if k < 0 {
			message := "no column of a table of points; want " + firstWords(columns)
			if near := spelling.Nearest(c.word, slices.Concat(columns...)); near != "" {
				message += "; did you mean " + near + "?"
			}
			return t.titleError(i, message)
		}
		if first := t.find(columns[k]...); first < i {
			return t.titleError(i, fmt.Sprintf("the column stands twice; the other is %q", t.header[first].title))
		}
	}
	if t.find(columns[0]...) < 0 {
		return &CSVError{Line: 1, Message: "want a column " + columns[0][0] + " in the header"}
	}
	return nil
}

// firstWords lists the columns by the first word of each.
func firstWords(columns [][]string) string {
	words := make([]string, len(columns))
	for i := range columns {
		words[i] = columns[i][0]
	}
	return strings.Join(words, ", ")
}

// checkSigns refuses a point whose sign of y alone puts it on the other side than the most,
// where that side has no such point: a slip would give the car a side that nobody meant.
func (p *pointParser) checkSigns(points []PlacedPoint) error {
	alone := map[Side][]int{}
	for i, a := range points {
		if a.Side != "" && !slices.ContainsFunc(points, func(b PlacedPoint) bool { return b.Name == a.Name && b.Side != a.Side }) {
			alone[a.Side] = append(alone[a.Side], i)
		}
	}
	few := Right
	if len(alone[Left]) < len(alone[Right]) {
		few = Left
	}
	for _, i := range alone[few] {
		if r := &p.rows[i]; len(alone[Left])*len(alone[Right]) > 0 && p.bySign(r) {
			return p.errorf(r, p.places[1], "%g makes this a point of the %s side, while most stand on the other: correct the sign, or state the side in a column side",
				points[i].Place[1], few)
		}
	}
	return nil
}

// bySign reports whether nothing but the sign of y tells the side of a row.
func (p *pointParser) bySign(r *row) bool {
	return r.cell(p.side) == "" && p.words[plainWord(r.cell(p.name))].Side == either
}

// prefix returns the side as it stands before a noun, with a space behind it.
func (s Side) prefix() string {
	if s == "" {
		return ""
	}
	return string(s) + " "
}

// isPointHeader reports whether a line names a coordinate.
func isPointHeader(columns []column) bool {
	t := table{header: columns}
	return t.find("x", "y", "z") >= 0
}

// pointParser reads rows of a table of points.
type pointParser struct {
	*table
	doc        *Document
	name, side int
	places     [3]int
	words      map[string]PlacedPoint // words are the points by each of their names.
	known      []string               // known are the labels, each once, in the order of the car.
	own        *Datum                 // own are the table's axes; nil for the car's.
	labels     map[string]string      // labels are those of the points by their names.
}

// newPointParser finds the columns and lists the names of the document's points.
func newPointParser(t *table, d *Document) *pointParser {
	p := &pointParser{
		table: t, doc: d,
		name:   t.find(pointColumns[0]...),
		side:   t.find("side"),
		places: [3]int{t.find("x"), t.find("y"), t.find("z")},
		words:  map[string]PlacedPoint{},
		labels: d.PointLabels(),
	}
	kind, err := solver.KindByName(d.Suspension.Type)
	if err != nil {
		return p
	}
	p.addSided(kind)
	for _, h := range kind.CommonPoints {
		p.add(PlacedPoint{Name: h.Name}, h.Name, h.Label)
	}
	for _, point := range d.gearPoints() {
		p.add(PlacedPoint{Name: point.Name}, point.Name, p.labels[point.Name])
	}
	return p
}

// addSided lists the points of the sides: by key and label alone, with a side
// behind or before, and with the side inside the key.
func (p *pointParser) addSided(kind *solver.Kind) {
	for _, h := range kind.SidePoints {
		p.add(PlacedPoint{Name: h.Name, Side: either}, h.Name, h.Label)
		for _, s := range sides {
			p.add(PlacedPoint{Name: h.Name, Side: s}, h.Name+string(s), string(s)+h.Name,
				h.Label+string(s), string(s)+h.Label, sidedPath(h.Name, s))
		}
	}
}

// either is the side of a point whose row does not tell it in words.
const either Side = "either"

// add lists a point under names.
func (p *pointParser) add(point PlacedPoint, names ...string) {
	for _, name := range names {
		p.words[plainWord(name)] = point
	}
	if label := p.labels[point.Name]; !slices.Contains(p.known, label) {
		p.known = append(p.known, label)
	}
}

// parse reads one row.
func (p *pointParser) parse(r *row) (PlacedPoint, error) {
	point, ok := p.words[plainWord(r.cell(p.name))]
	if !ok {
		return point, p.unknown(r)
	}
	var err error
	if point.Place, err = p.place(r); err != nil {
		return point, err
	}
	if p.own != nil {
		point.Place = p.own.Moved(point.Place)
	}
	if point.Side == "" {
		return point, nil
	}
	side, err := p.sideOf(r, point)
	point.Side = side
	return point, err
}

// place reads the place of a row, in the table's axes and file units.
func (p *pointParser) place(r *row) (v Vec3, err error) {
	for i, column := range p.places {
		if v[i], err = p.length(r, column, p.doc.Units); err != nil {
			return v, err
		}
	}
	return v, nil
}

// unknown makes the error about a name that no point has.
func (p *pointParser) unknown(r *row) error {
	name := r.cell(p.name)
	message := fmt.Sprintf("%q is not a point of this car", number.Clip(name))
	if near := spelling.Nearest(plainWord(name), slices.Sorted(maps.Keys(p.words))); near != "" {
		message += "; did you mean " + p.labels[p.words[near].Name] + "?"
	}
	return p.errorf(r, p.name, "%s (it has: %s)", message, strings.Join(p.known, "; "))
}

// sideOf tells the side of a point: by its column, by its name, or by y.
func (p *pointParser) sideOf(r *row, point PlacedPoint) (Side, error) {
	switch text := strings.ToLower(r.cell(p.side)); {
	case text == "left" || text == "l":
		return Left, nil
	case text == "right" || text == "r":
		return Right, nil
	case text != "":
		return "", p.errorf(r, p.side, "%.40q is not a side, want left or right", text)
	case point.Side != either:
		return point.Side, nil
	case point.Place[1] < 0:
		return Right, nil
	}
	return Left, nil
}

// FormatPoints writes the document's points as a table that [ParsePoints] reads.
func FormatPoints(d *Document) []byte {
	unit := " (" + string(d.Units) + ")"
	rows := [][]string{{"point", "side", "x" + unit, "y" + unit, "z" + unit}}
	for _, p := range d.Points() {
		rows = append(rows, []string{p.Name, string(p.Side), plainNumber(p.Place[0]), plainNumber(p.Place[1]), plainNumber(p.Place[2])})
	}
	return FormatTable(rows)
}
