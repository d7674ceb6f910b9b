package study

import "strings"

// ParseCatalogue reads a table of parts for the document's car: under a header,
// in any order, "slot", "name", and if wanted "price", "excludes" (names with |
// between them), "note"; every other column is the key or the label of a parameter, with
// "(mm)" or "(in)" if it is not in the file's units. Empty cells change nothing.
// The error is a [*CSVError] that names line and column.
func ParseCatalogue(data []byte, d *Document) ([]Part, error) {
	always := func([]column) bool { return true }
	t, err := parseTable(data, always)
	if err != nil {
		return nil, err
	}
	p := &partParser{table: t, slot: t.find("slot"), name: t.find("name", "part"), price: t.find("price", "cost"), excludes: t.find("excludes"), note: t.find("note")}
	if p.slot < 0 || p.name < 0 {
		return nil, &CSVError{Line: 1, Message: "want columns slot and name in the header"}
	}
	if p.changes, err = newChangeColumns(t, d, "slot", "name", "part", "price", "cost", "excludes", "note"); err != nil {
		return nil, err
	}
	parts := make([]Part, len(t.rows))
	for i := range t.rows {
		if parts[i], err = p.parse(&t.rows[i]); err != nil {
			return nil, err
		}
	}
	return parts, nil
}

// partParser reads rows of a catalogue.
type partParser struct {
	*table
	slot, name, price, excludes, note int
	changes                           *changeColumns
}

// parse reads one row.
func (p *partParser) parse(r *row) (Part, error) {
	part := Part{Slot: r.cell(p.slot), Name: r.cell(p.name), Note: r.cell(p.note)}
	if part.Slot == "" {
		return part, p.errorf(r, p.slot, "the part has no slot")
	}
	if part.Name == "" {
		return part, p.errorf(r, p.name, "the part has no name")
	}
	for _, name := range strings.Split(r.cell(p.excludes), "|") {
		if name = strings.TrimSpace(name); name != "" {
			part.Excludes = append(part.Excludes, name)
		}
	}
	if err := p.parsePrice(r, &part); err != nil {
		return part, err
	}
	changes, err := p.changes.parse(r)
	part.Changes = changes
	return part, err
}

// parsePrice reads the price, if there is one.
func (p *partParser) parsePrice(r *row, part *Part) error {
	if r.cell(p.price) == "" {
		return nil
	}
	x, err := p.number(r, p.price)
	if err == nil && !(x >= 0) {
		err = p.errorf(r, p.price, "a price of %g is none, want 0 or more", x)
	}
	part.Price = x
	return err
}

// FormatCatalogue writes parts as a table that [ParseCatalogue] reads.
func FormatCatalogue(parts []Part) []byte {
	var all []Changes
	for _, p := range parts {
		all = append(all, p.Changes)
	}
	keys := changeKeys(all)
	rows := [][]string{append([]string{"slot", "name", "price", "excludes", "note"}, keys...)}
	for _, p := range parts {
		cells := []string{p.Slot, p.Name, plainNumber(p.Price), strings.Join(p.Excludes, "|"), p.Note}
		rows = append(rows, append(cells, changeCells(p.Changes, keys)...))
	}
	return FormatTable(rows)
}
