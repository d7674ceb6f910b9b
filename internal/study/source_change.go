package study

import (
	"strings"

	"toewright/internal/strictjson"
)

// Attribute says of every number in which the document differs from the one it was made
// from that it comes from a source; of the others, what that one said. With the source
// "" a changed number keeps the source that it had: the points were only moved to another
// datum. Entries of lists are followed as they move.
func (d *Document) Attribute(from *Document, source Source) {
	if d.Suspension.Right != nil && from.Suspension.Right == nil {
		from = from.Clone()
		from.stateRight()
		from.MirrorSources(Left)
	}
	was, err := newNumberTree(from)
	is, err2 := newNumberTree(d)
	if err != nil || err2 != nil {
		return
	}
	a := attribution{source: source, before: from.Sources, now: map[string]Source{}}
	a.compare(child{node: is.root}, child{node: was.root})
	d.Sources = from.Sources.stated(is.pack(from.other(), func(path string) Source { return a.now[path] }))
}

// SetSource says where the numbers at and under a path come from.
func (d *Document) SetSource(path string, source Source) {
	d.resource(func(p string) Source {
		if Within(p, path) {
			return source
		}
		return d.Sources.At(p)
	})
}

// MirrorSources says of every number of the other side what is said of its twin on one.
func (d *Document) MirrorSources(of Side) {
	other := Right
	if of == Right {
		other = Left
	}
	d.resource(func(path string) Source {
		keys := strings.Split(path, ".")
		for i, key := range keys {
			if key == string(other) {
				keys[i] = string(of)
				return d.Sources.At(strings.Join(keys, "."))
			}
		}
		return d.Sources.At(path)
	})
}

// resource asks anew for the source of every number.
func (d *Document) resource(source func(path string) Source) {
	if t, err := newNumberTree(d); err == nil {
		d.Sources = d.Sources.stated(t.pack(d.other(), source))
	}
}

// stated returns the sources that take the place of others. Where a study has stated its
// sources it goes on to, be there nothing left to state: see [Document.Recognised].
func (s Sources) stated(next Sources) Sources {
	if s != nil && next == nil {
		return Sources{}
	}
	return next
}

// other returns the source of the numbers that no key speaks of.
func (d *Document) other() Source { return d.Sources.At(AnyNumber) }

// attribution compares a study with the one that it was made from.
type attribution struct {
	source Source
	before Sources
	now    map[string]Source // now are the sources of the numbers, by path
}

// compare finds the sources of the numbers in a value. Its former self has no node where
// there was none; one number may have become two, one for each side.
func (a *attribution) compare(is, was child) {
	if is.node.Kind == strictjson.Number {
		a.now[is.path] = a.of(is.node, was)
		return
	}
	former := formerly(is.node, was)
	for i, c := range children(is.node, is.path) {
		a.compare(c, former(i, c.key))
	}
}

// formerly returns what finds the former self of each value within one.
func formerly(is *strictjson.Node, was child) func(i int, key string) child {
	if was.node == nil || was.node.Kind == strictjson.Number {
		return func(int, string) child { return was }
	}
	list := children(was.node, was.path)
	switch {
	case is.Kind == strictjson.Object:
		return func(_ int, key string) child { return keyed(list, key) }
	case len(list) == len(is.Items):
		return func(i int, _ string) child { return list[i] }
	}
	pairs := alike(is.Items, list)
	return func(i int, _ string) child { return pairs[i] }
}

// of returns the source of a number.
func (a *attribution) of(n *strictjson.Node, was child) Source {
	switch {
	case was.node == nil || was.node.Kind != strictjson.Number:
		if a.source == "" {
			return FromFile
		}
		return a.source
	case a.source == "" || was.node.Number == n.Number:
		return a.before.At(was.path)
	}
	return a.source
}

// keyed returns the child of a key.
func keyed(list []child, key string) child {
	for _, c := range list {
		if c.key == key {
			return c
		}
	}
	return child{}
}

// alike pairs the entries of a list with former ones that are alike, in the order of
// both; an entry that is new gets none.
func alike(items []*strictjson.Node, former []child) []child {
	by := map[string][]child{}
	for _, c := range former {
		text := string(strictjson.Format(c.node))
		by[text] = append(by[text], c)
	}
	pairs := make([]child, len(items))
	for i, item := range items {
		text := string(strictjson.Format(item))
		if list := by[text]; len(list) > 0 {
			pairs[i], by[text] = list[0], list[1:]
		}
	}
	return pairs
}
