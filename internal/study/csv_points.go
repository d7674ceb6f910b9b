package study

import (
	"slices"
	"strings"

	"toewright/internal/strictjson"
	"toewright/solver"
)

// ParsePoints reads a table of points of the document's car and returns them in
// its units. Columns may stand in any order under a header: "point" (or "name"),
// "x", "y", "z", each perhaps with "(mm)" or "(in)", and "side" if wanted; without
// a header they are point, x, y, z. A point is known by its key or its label, in
// any spelling of letters and spaces. Where no side is given, the sign of y tells
// it. The error is a [*CSVError] that names line and column.
func ParsePoints(data []byte, d *Document) ([]PlacedPoint, error) {
	t, err := parseTable(data, isPointHeader, "point", "x", "y", "z")
	if err != nil {
		return nil, err
	}
	p := newPointParser(t, d)
	var points []PlacedPoint
	for i := range t.rows {
		point, err := p.parse(&t.rows[i])
		if err != nil {
			return nil, err
		}
		if slices.ContainsFunc(points, func(q PlacedPoint) bool { return q.Name == point.Name && q.Side == point.Side }) {
			return nil, t.errorf(&t.rows[i], p.name, "%s%s stands twice", point.Side.prefix(), point.Name)
		}
		points = append(points, point)
	}
	return points, p.checkSigns(points)
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
			return p.errorf(r, p.places[1], "%g makes this a point of the %s side, while most stand on the other: mend the sign, or state the side in a column side",
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

// isPointHeader reports whether a line names the three coordinates.
func isPointHeader(columns []column) bool {
	t := table{header: columns}
	return t.find("x") >= 0 && t.find("y") >= 0 && t.find("z") >= 0
}

// pointParser reads rows of a table of points.
type pointParser struct {
	*table
	doc        *Document
	name, side int
	places     [3]int
	words      map[string]PlacedPoint // words are the points by each of their names.
	spellings  []string               // spellings are the keys, for suggestions.
}

// newPointParser finds the columns and lists the names of the document's points.
func newPointParser(t *table, d *Document) *pointParser {
	p := &pointParser{
		table: t, doc: d,
		name:   max(t.find("point", "name", "hardpoint", "joint", "key"), 0),
		side:   t.find("side"),
		places: [3]int{t.find("x"), t.find("y"), t.find("z")},
		words:  map[string]PlacedPoint{},
	}
	kind, err := solver.KindByName(d.Suspension.Type)
	if err != nil {
		return p
	}
	p.addSided(kind)
	for _, h := range append(slices.Clone(kind.CommonPoints), solver.GearPoints...) {
		p.add(h, PlacedPoint{Name: h.Name}, h.Name, h.Label)
	}
	return p
}

// addSided lists the points of the sides: by key and label alone, with a side
// behind or before, and with the side inside the key.
func (p *pointParser) addSided(kind *solver.Kind) {
	for _, h := range kind.SidePoints {
		p.add(h, PlacedPoint{Name: h.Name, Side: either}, h.Name, h.Label)
		for _, s := range sides {
			p.add(h, PlacedPoint{Name: h.Name, Side: s}, h.Name+string(s), string(s)+h.Name,
				h.Label+string(s), string(s)+h.Label, sidedPath(h.Name, s))
		}
	}
}

// either is the side of a point whose row does not tell it in words.
const either Side = "either"

// add lists a point under names.
func (p *pointParser) add(h solver.Hardpoint, point PlacedPoint, names ...string) {
	for _, name := range names {
		p.words[plainWord(name)] = point
	}
	p.spellings = append(p.spellings, h.Name)
}

// parse reads one row.
func (p *pointParser) parse(r *row) (PlacedPoint, error) {
	point, ok := p.words[plainWord(r.cell(p.name))]
	if !ok {
		return point, p.unknown(r)
	}
	for i, column := range p.places {
		x, err := p.length(r, column, p.doc.Units)
		if err != nil {
			return point, err
		}
		point.Place[i] = x
	}
	if point.Side == "" {
		return point, nil
	}
	side, err := p.sideOf(r, point)
	point.Side = side
	return point, err
}

// unknown makes the error about a name that no point has.
func (p *pointParser) unknown(r *row) error {
	name := r.cell(p.name)
	message := "%.40q is no point of a " + p.doc.Suspension.Type
	if near := strictjson.Nearest(name, p.spellings); near != "" {
		message += "; did you mean " + near + "?"
	}
	return p.errorf(r, p.name, message, name)
}

// sideOf tells the side of a point: by its column, by its name, or by y.
func (p *pointParser) sideOf(r *row, point PlacedPoint) (Side, error) {
	switch text := strings.ToLower(r.cell(p.side)); {
	case text == "left" || text == "l":
		return Left, nil
	case text == "right" || text == "r":
		return Right, nil
	case text != "":
		return "", p.errorf(r, p.side, "%.40q is no side, want left or right", text)
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
