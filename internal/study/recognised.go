package study

import "bytes"

// Recognised returns the document with its sources where a file of an older version, which
// states none, was begun from a template: numbers that are still the template's are known
// by being the same, if at least half of those are that the toe curve depends on. Any
// other document is returned as it is.
func (d *Document) Recognised() *Document {
	if d.Sources != nil {
		return d
	}
	var best *Document
	most := 0.5
	for _, t := range templates {
		if !bytes.Contains(t.Text(), []byte(`"type": "`+d.Suspension.Type+`"`)) {
			continue // without reading it: the page waits
		}
		from := t.Document()
		if from.Units != d.Units {
			continue
		}
		next := d.Clone()
		next.Attribute(from, FromFile)
		if b := next.Borrowed(); b.Decisive > 0 && float64(b.Decisive) >= most*float64(b.Deciding) {
			best, most = next, float64(b.Decisive)/float64(b.Deciding)
		}
	}
	if best == nil {
		return d
	}
	return best
}
