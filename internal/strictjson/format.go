package strictjson

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"
)

const (
	// maxLine is the longest line, in bytes, that a list or object may fill.
	maxLine = 100
	// maxInline is the deepest nesting that is printed on one line: a table row or a
	// point, but not a list of lists of lists.
	maxInline = 2
)

// Format prints a node as JSON text with a line end behind it. Lists and objects
// stand on one line where they are short and shallow, so that a point or a
// reading is one line; all else is indented by two spaces.
func Format(n *Node) []byte {
	var p printer
	p.print(n, 0, 0)
	p.WriteByte('\n')
	return p.Bytes()
}

// printer collects the text.
type printer struct{ bytes.Buffer }

// print writes a node whose line already holds indent and used bytes.
func (p *printer) print(n *Node, indent, used int) {
	if n.Kind != Array && n.Kind != Object {
		p.scalar(n)
		return
	}
	if depth(n) <= maxInline {
		var line printer
		line.inline(n)
		if indent+used+line.Len() <= maxLine {
			p.Write(line.Bytes())
			return
		}
	}
	p.spread(n, indent)
}

// spread writes a list or object with each element on lines of its own.
func (p *printer) spread(n *Node, indent int) {
	open, end := brackets(n)
	p.WriteByte(open)
	for i := range count(n) {
		if i > 0 {
			p.WriteByte(',')
		}
		p.newline(indent + 2)
		value, used := p.key(n, i)
		p.print(value, indent+2, used)
	}
	if count(n) > 0 {
		p.newline(indent)
	}
	p.WriteByte(end)
}

// inline writes a node on one line.
func (p *printer) inline(n *Node) {
	if n.Kind != Array && n.Kind != Object {
		p.scalar(n)
		return
	}
	open, end := brackets(n)
	p.WriteByte(open)
	for i := range count(n) {
		if i > 0 {
			p.WriteString(", ")
		}
		value, _ := p.key(n, i)
		p.inline(value)
	}
	p.WriteByte(end)
}

// key writes the key of an object's i-th member, if n is an object, and returns
// the i-th value and the bytes written.
func (p *printer) key(n *Node, i int) (*Node, int) {
	if n.Kind == Array {
		return n.Items[i], 0
	}
	before := p.Len()
	p.text(n.Members[i].Key)
	p.WriteString(": ")
	return n.Members[i].Value, p.Len() - before
}

// scalar writes a value that holds no others.
func (p *printer) scalar(n *Node) {
	switch n.Kind {
	case Number:
		p.WriteString(formatNumber(n.Number))
	case String:
		p.text(n.Text)
	case Bool:
		p.WriteString(strconv.FormatBool(n.Bool))
	default:
		p.WriteString("null")
	}
}

// text writes a JSON string; letters of all scripts and <, >, & stand as they are.
func (p *printer) text(s string) {
	e := json.NewEncoder(p)
	e.SetEscapeHTML(false)
	if err := e.Encode(s); err != nil {
		panic(err) // a string always encodes, and a Buffer takes all
	}
	p.Truncate(p.Len() - 1) // the line end that Encode adds
}

// newline starts a line.
func (p *printer) newline(indent int) {
	p.WriteByte('\n')
	for range indent {
		p.WriteByte(' ')
	}
}

// brackets returns the brackets of a list or object.
func brackets(n *Node) (open, end byte) {
	if n.Kind == Array {
		return '[', ']'
	}
	return '{', '}'
}

// count returns the number of values directly in a list or object.
func count(n *Node) int { return len(n.Items) + len(n.Members) }

// depth returns 0 for a scalar, else 1 more than the deepest value inside.
func depth(n *Node) int {
	if n.Kind != Array && n.Kind != Object {
		return 0
	}
	deepest := 0
	for _, item := range n.Items {
		deepest = max(deepest, depth(item))
	}
	for _, m := range n.Members {
		deepest = max(deepest, depth(m.Value))
	}
	return deepest + 1
}

// formatNumber prints the shortest decimal that reads back as x, without an
// exponent for sizes that occur in a workshop.
func formatNumber(x float64) string {
	if a := math.Abs(x); a != 0 && (a < 1e-6 || a >= 1e15) {
		return strconv.FormatFloat(x, 'e', -1, 64)
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}
