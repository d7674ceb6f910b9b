package report

import (
	"slices"
	"strings"
	"unicode"
)

// markup is HTML under construction. What comes from a study is only ever written
// as escaped text; tags and classes are constants of this package.
type markup struct{ text []byte }

// open begins an element; class may be empty.
func (m *markup) open(tag, class string) {
	m.text = append(m.text, "<"+tag...)
	if class != "" {
		m.text = append(m.text, ` class="`+class+`"`...)
	}
	m.text = append(m.text, '>')
}

// close ends an element, and the line where the element is a block.
func (m *markup) close(tag string) {
	m.text = append(m.text, "</"+tag+">"...)
	if !slices.Contains(inline, tag) {
		m.text = append(m.text, '\n')
	}
}

// inline are the elements within a line of the page's source.
var inline = []string{"bdi", "strong", "small", "th", "td", "dt", "dd"}

// escaper writes by their names the characters that mean something to HTML. Package
// html does the same, and brings 2,231 other names along.
var escaper = strings.NewReplacer("&", "&amp;", "'", "&#39;", "<", "&lt;", ">", "&gt;", `"`, "&#34;")

// write writes text.
func (m *markup) write(text string) { m.text = append(m.text, escaper.Replace(clean(text))...) }

// element writes an element that holds text.
func (m *markup) element(tag, class, text string) {
	m.open(tag, class)
	m.write(text)
	m.close(tag)
}

// name writes a name that a user gave. It cannot turn the order of what stands beside
// it around, whatever script it is in.
func (m *markup) name(text string) {
	m.open("bdi", "")
	m.write(text)
	m.text = append(m.text, "</bdi>"...)
}

// clean returns a text without characters that control rather than show: a line
// break or a tab becomes a blank.
func clean(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r), turnsText(r):
			return unicode.ReplacementChar
		}
		return r
	}, text)
}

// turnsText reports whether a character changes the direction of those after it.
func turnsText(r rune) bool { return r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 }
