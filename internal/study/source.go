package study

import (
	"maps"
	"slices"
	"strings"

	"toewright/internal/strictjson"
)

// Source says where a number of a study comes from.
type Source string

// The sources of numbers.
const (
	FromTyping   Source = "typed"    // FromTyping: entered by hand on the page.
	FromFile     Source = "file"     // FromFile: stood in a file or a table that was taken; what no key speaks of did.
	FromTape     Source = "tape"     // FromTape: located by what a tape measured.
	FromFit      Source = "fitted"   // FromFit: what a fit of gauge readings found.
	FromTemplate Source = "template" // FromTemplate: invented, to begin with; no car was measured for it.
)

// knownSources are the words that a file may use.
var knownSources = []Source{FromTyping, FromFile, FromTape, FromFit, FromTemplate}

// AnyNumber is the key of [Sources] that stands for every number no other key speaks of.
const AnyNumber = "*"

// Sources says where the numbers of a study come from, by their paths: that of a
// coordinate ("left.lowerBallJoint.z"), of a point ("steering.pitmanPivot") or of
// anything else that has numbers in it ("vehicle", "readings.0"). A path is that of the
// value in the file, without "suspension." before it. A longer path goes before a
// shorter one.
type Sources map[string]Source

// At returns the source of the number at a path.
func (s Sources) At(path string) Source {
	for p := path; p != ""; p = above(p) {
		if source, ok := s[p]; ok {
			return source
		}
	}
	if source, ok := s[AnyNumber]; ok {
		return source
	}
	return FromFile
}

// has reports whether any number may have a source.
func (s Sources) has(source Source) bool {
	for _, own := range s {
		if own == source {
			return true
		}
	}
	return false
}

// above returns the path of what a value stands in, "" for the study.
func above(path string) string { return path[:max(strings.LastIndexByte(path, '.'), 0)] }

// BindNode fills the sources, of which each must be a known word.
func (s *Sources) BindNode(sc strictjson.Scope, n *strictjson.Node) error {
	var words map[string]string
	if err := sc.Bind(n, &words); err != nil {
		return err
	}
	*s = Sources{}
	for _, m := range n.Members {
		word := Source(words[m.Key])
		if !slices.Contains(knownSources, word) {
			return sc.In(m.Key).Errorf(m.Value, `%.40q is not a source of a number, want "typed", "file", "tape", "fitted" or "template"`, word)
		}
		(*s)[m.Key] = word
	}
	return nil
}

// speaks reports whether any key is of certain numbers.
func (s Sources) speaks() bool {
	_, any := s[AnyNumber]
	return len(s) > 1 || len(s) == 1 && !any
}

// sourceProblem refuses keys that speak of no number of the study.
func (d *Document) sourceProblem() *problem {
	if !d.Sources.speaks() {
		return nil
	}
	tree, err := newNumberTree(d)
	if err != nil {
		return nil // Encode says it better
	}
	for _, key := range slices.Sorted(maps.Keys(d.Sources)) {
		if key != AnyNumber && !tree.covers(key) {
			return problemf("sources."+key, "%s", tree.unknown(key))
		}
	}
	return nil
}

// withoutDangling takes the keys from a study's node whose numbers are gone.
func withoutDangling(n *strictjson.Node) {
	sources := n.Get("sources")
	if sources == nil || len(sources.Members) == 0 || len(sources.Members) == 1 && sources.Members[0].Key == AnyNumber {
		return
	}
	tree := numberTreeOf(n)
	sources.Members = slices.DeleteFunc(sources.Members, func(m strictjson.Member) bool {
		return m.Key != AnyNumber && !tree.covers(m.Key)
	})
}
