package model

import (
	"fmt"
	"strings"

	"toewright/internal/study"
)

// sourceTags are what stands beside a number, by where it comes from.
var sourceTags = map[study.Source]string{
	study.FromTemplate: "template", study.FromFit: "fitted", study.FromTape: "tape", study.FromFile: "file", study.FromTyping: "typed",
}

// sourceOrder is that in which the sources of three numbers are told: what is not simply the
// car's own comes first.
var sourceOrder = []study.Source{study.FromTemplate, study.FromFit, study.FromTape, study.FromFile, study.FromTyping}

// SourceTag returns what stands beside the number, or the three numbers, at a path: where
// they come from, with the axes where that is not said of all. "" stands beside what was
// typed or read.
func SourceTag(d *study.Document, path string) string { return tagsOf(d, path, sourceOrder[:3]) }

// tagsOf says which of the numbers at a path come from some sources.
func tagsOf(d *study.Document, path string, sources []study.Source) string {
	of := map[study.Source][]string{}
	for axis := range 3 {
		source := d.Sources.At(path + "." + axisName(axis))
		of[source] = append(of[source], axisName(axis))
	}
	var tags []string
	for _, source := range sources {
		switch axes := of[source]; len(axes) {
		case 0:
		case 3:
			tags = append(tags, sourceTags[source])
		default:
			tags = append(tags, sourceTags[source]+" "+strings.Join(axes, ", "))
		}
	}
	return strings.Join(tags, "; ")
}

// From says where three numbers come from, by their path: by the source whose sign stands for
// them, that of what is least the car's own, and in words.
func From(d *study.Document, path string) (sign study.Source, text string) {
	if text = SourceTag(d, path); text == "" {
		text = tagsOf(d, path, sourceOrder)
	}
	for i := len(sourceOrder) - 1; i >= 0; i-- {
		if tagsOf(d, path, sourceOrder[i:i+1]) != "" {
			sign = sourceOrder[i]
		}
	}
	return sign, text
}

// Own says of the numbers at and under a path that they are the car's own as they stand.
func (s *Session) Own(path, label string) error {
	return s.edit("keep "+label, "", func(*study.Document) {}, func(d *study.Document) { d.SetSource(path, study.FromTyping) })
}

// A BorrowedList is a list of a study in which entries are a template's, or have usual
// values in them that nobody has typed.
type BorrowedList struct {
	Key      string // in the file, such as "readings"
	Of, From int    // From so many of Of entries
}

// listNames are what the entries of a list are called, one and more.
var listNames = map[string][2]string{
	"readings": {"set of readings", "sets of readings"}, "tolerances": {"tolerance", "tolerances"}, "catalogue": {"part", "parts"},
}

// BorrowedOf returns how many entries of a list have numbers in them that are no one's.
func BorrowedOf(d *study.Document, key string) BorrowedList {
	b := BorrowedList{Key: key, Of: map[string]int{"readings": len(d.Readings), "tolerances": len(d.Tolerances), "catalogue": len(d.Catalogue)}[key]}
	for i := range b.Of {
		if borrowedEntry(d, key, i) {
			b.From++
		}
	}
	return b
}

// borrowedEntry reports whether entry i of a list has numbers in it that are no one's. A set
// of readings is its reader's own once what the gauge showed is, whatever is usual about the
// gauge.
func borrowedEntry(d *study.Document, key string, i int) bool {
	path := entryPath(key, i)
	if key == "readings" {
		path += ".values"
	}
	return d.IsBorrowed(path)
}

func entryPath(key string, i int) string { return fmt.Sprintf("%s.%d", key, i) }

// String says it in a sentence, "" where all entries are the user's.
func (b BorrowedList) String() string {
	if b.From == 0 {
		return ""
	}
	names := listNames[b.Key]
	switch {
	case b.Of == 1:
		return fmt.Sprintf("The %s came with a template or is usual: it is not yours.", names[0])
	case b.From == b.Of:
		return fmt.Sprintf("All %d %s came with a template or are usual: none is yours.", b.Of, names[1])
	case b.From == 1:
		return fmt.Sprintf("1 of %d %s came with a template or is usual: it is not yours.", b.Of, names[1])
	}
	return fmt.Sprintf("%d of %d %s came with a template or are usual: they are not yours.", b.From, b.Of, names[1])
}

// RemoveBorrowed takes the entries out of a list that have numbers in them which are no
// one's.
func (s *Session) RemoveBorrowed(key string) error {
	gone := func(i int) bool { return borrowedEntry(s.doc, key, i) }
	return s.Edit("take out what is not your own", "", func(d *study.Document) {
		switch key {
		case "readings":
			d.Readings = without(d.Readings, gone)
		case "tolerances":
			d.Tolerances = without(d.Tolerances, gone)
		case "catalogue":
			d.Catalogue = without(d.Catalogue, gone)
		}
	})
}

// without returns the entries of a list whose index is not gone, nil for none.
func without[T any](list []T, gone func(int) bool) (rest []T) {
	for i, entry := range list {
		if !gone(i) {
			rest = append(rest, entry)
		}
	}
	return rest
}

// sourceGauge says where the numbers of a new reading's gauge come from that were not
// stated for it: from where those of the last reading before come, else nobody said.
func (s *Session) sourceGauge(d *study.Document, i int, base, repeatability bool) {
	for key, unstated := range map[string]bool{"base": base, "repeatability": repeatability} {
		source := study.FromTemplate
		if n := len(s.doc.Readings); n > 0 {
			source = s.doc.Sources.At(entryPath("readings", n-1) + "." + key)
		}
		if unstated {
			d.SetSource(entryPath("readings", i)+"."+key, source)
		}
	}
}

// ShortWarning says in a line of a drawing how much of the car is a template's, "" for
// nothing that its curve depends on.
func ShortWarning(d *study.Document) string {
	b := d.Borrowed()
	switch {
	case b.Decisive == 0:
		return ""
	case b.All():
		return "Invented example, no vehicle was measured for it: make no part by it."
	}
	return fmt.Sprintf("%d of %d deciding numbers are a template's: make no part by it.", b.Decisive, b.Deciding)
}
