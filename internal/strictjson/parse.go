package strictjson

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Tree is one parsed input. It keeps the input to tell line and column.
type Tree struct {
	Root *Node
	data []byte
	path string // path leads to the root where it is part of a larger tree.
}

// Under returns the tree of a value that stands at a path of t. Its errors tell place
// and path in t.
func (t *Tree) Under(path string, n *Node) *Tree { return &Tree{n, t.data, join(t.path, path)} }

// Text returns the root as it stands in the input.
func (t *Tree) Text() []byte {
	var text json.RawMessage
	_ = json.NewDecoder(bytes.NewReader(t.data[t.Root.Offset:])).Decode(&text) // which is valid
	return text
}

// byteOrderMark is what some editors put before UTF-8 text; it carries nothing.
var byteOrderMark = []byte("\xef\xbb\xbf")

// Parse reads one JSON value that fills the whole input. It returns an [*Error]
// for input over the limits, text that is not UTF-8, wrong syntax, repeated keys,
// and numbers that are not finite or over the magnitude.
func Parse(data []byte, limits Limits) (*Tree, error) {
	if exceeds(len(data), limits.Bytes) {
		return nil, &Error{Message: fmt.Sprintf("input of %d bytes is too long, want at most %d", len(data), limits.Bytes)}
	}
	t := &Tree{data: bytes.TrimPrefix(data, byteOrderMark)}
	if err := t.checkSyntax(); err != nil {
		return nil, err
	}
	p := parser{tree: t, text: string(t.data), limits: limits}
	root, err := p.value()
	if err != nil {
		return nil, err
	}
	t.Root = root
	return t, nil
}

// checkSyntax reports wrong syntax, so that the parser need not.
func (t *Tree) checkSyntax() error {
	if len(bytes.TrimSpace(t.data)) == 0 {
		return &Error{Message: "input is empty"}
	}
	if !utf8.Valid(t.data) {
		return &Error{Message: "input is not UTF-8 text"}
	}
	if json.Valid(t.data) {
		return nil
	}
	var raw json.RawMessage
	err := json.Unmarshal(t.data, &raw)
	var syntax *json.SyntaxError
	if errors.As(err, &syntax) {
		return t.errorAt(int(syntax.Offset)-1, "", "wrong JSON: "+syntax.Error())
	}
	return err
}

// errorAt builds an error for a byte offset.
func (t *Tree) errorAt(offset int, path, message string) *Error {
	line, column := place(t.data, offset)
	if t.path != "" {
		path = strings.TrimSuffix(join(t.path, path), ".")
	}
	return &Error{Path: path, Line: line, Column: column, Message: message}
}

// parser turns valid JSON into nodes.
type parser struct {
	tree   *Tree
	text   string // text is the input, of which texts and keys are parts.
	limits Limits
	at     int    // at is the next byte to be read.
	count  int    // count is the number of values so far.
	path   []step // path leads to the value that is read.
	room   []Node // room is what nodes are taken from.
}

// step is the key of a value in an object, or its place in a list.
type step struct {
	key   string
	index int
	keyed bool
}

// errorAt builds an error for the value that is read, which starts at offset.
func (p *parser) errorAt(offset int, message string) *Error {
	path := ""
	for _, s := range p.path {
		key := clip(s.key)
		if !s.keyed {
			key = strconv.Itoa(s.index)
		}
		path = join(path, key)
	}
	return p.tree.errorAt(offset, path, message)
}

// next moves to the next token and returns its first byte.
func (p *parser) next() byte {
	for {
		switch c := p.text[p.at]; c {
		case ' ', '\t', '\r', '\n', ',', ':':
			p.at++
		default:
			return c
		}
	}
}

// node returns a new node, which starts here.
func (p *parser) node() *Node {
	const some = 32
	if len(p.room) == 0 {
		p.room = make([]Node, some)
	}
	n := &p.room[0]
	p.room = p.room[1:]
	n.Offset = p.at
	return n
}

// value reads the next value.
func (p *parser) value() (*Node, error) {
	first := p.next()
	n := p.node()
	p.count++
	if exceeds(p.count, p.limits.Values) {
		return nil, p.errorAt(n.Offset, fmt.Sprintf("more than %d values", p.limits.Values))
	}
	switch first {
	case '{', '[':
		return n, p.container(n, first)
	case '"':
		n.Kind, n.Text = String, p.quoted()
	case 't', 'f':
		n.Kind, n.Bool = Bool, first == 't'
		p.at += len(strconv.FormatBool(n.Bool))
	case 'n':
		p.at += len("null")
	default:
		return n, p.number(n)
	}
	return n, nil
}

// quoted reads a text.
func (p *parser) quoted() string {
	from := p.at
	for p.at++; p.text[p.at] != '"'; p.at++ {
		if p.text[p.at] == '\\' {
			return p.escaped(from)
		}
	}
	p.at++
	return p.text[from+1 : p.at-1]
}

// escaped reads a text from its start that has letters written as escapes.
func (p *parser) escaped(from int) (text string) {
	for ; p.text[p.at] != '"'; p.at++ {
		if p.text[p.at] == '\\' {
			p.at++
		}
	}
	p.at++
	_ = json.Unmarshal(p.tree.data[from:p.at], &text) // which is valid
	return text
}

// number fills a number node and refuses what is not finite or too large.
func (p *parser) number(n *Node) error {
	for p.at < len(p.text) && inNumber(p.text[p.at]) {
		p.at++
	}
	text := p.text[n.Offset:p.at]
	x, err := strconv.ParseFloat(text, 64)
	limit := p.limits.Magnitude
	if limit == 0 {
		limit = math.MaxFloat64
	}
	if err != nil || !(math.Abs(x) <= limit) {
		return p.errorAt(n.Offset, fmt.Sprintf("the number %s is too large, want at most %g either way", clip(text), limit))
	}
	n.Kind, n.Number = Number, x
	return nil
}

// inNumber reports whether c is part of a number.
func inNumber(c byte) bool {
	return c >= '0' && c <= '9' || c == '.' || c == '-' || c == '+' || c == 'e' || c == 'E'
}

// container fills a list or an object node up to its closing bracket.
func (p *parser) container(n *Node, open byte) error {
	if exceeds(len(p.path)+1, p.limits.Depth) {
		return p.errorAt(n.Offset, fmt.Sprintf("nested deeper than %d levels", p.limits.Depth))
	}
	fill := p.list
	if n.Kind = Array; open == '{' {
		n.Kind, fill = Object, p.object
	}
	p.at++
	p.path = append(p.path, step{})
	err := fill(n)
	p.at++
	p.path = p.path[:len(p.path)-1]
	return err
}

// usualItems and usualMembers are what most lists and objects of a study have at least: the
// coordinates of a point, a setting or two.
const usualItems, usualMembers = 3, 4

// list reads the items of a list.
func (p *parser) list(n *Node) error {
	for p.next() != ']' {
		p.path[len(p.path)-1] = step{index: len(n.Items)}
		item, err := p.value()
		if err != nil {
			return err
		}
		if n.Items == nil {
			n.Items = make([]*Node, 0, usualItems)
		}
		n.Items = append(n.Items, item)
	}
	return nil
}

// fewKeys is how many keys of an object are compared one by one.
const fewKeys = 16

// object reads the members of an object and refuses a key that comes twice.
func (p *parser) object(n *Node) error {
	var seen map[string]bool // beyond fewKeys
	for p.next() != '}' {
		offset := p.at
		key := p.quoted()
		p.path[len(p.path)-1] = step{key: key, keyed: true}
		if seen[key] || seen == nil && n.Get(key) != nil {
			return p.errorAt(offset, "key stands twice; remove one")
		}
		value, err := p.value()
		if err != nil {
			return err
		}
		if n.Members == nil {
			n.Members = make([]Member, 0, usualMembers)
		}
		n.Members = append(n.Members, Member{Key: key, Offset: offset, Value: value})
		seen = n.keys(seen)
	}
	return nil
}

// keys returns the keys of an object that has many, the last of which is not among seen;
// nil of one that has few.
func (n *Node) keys(seen map[string]bool) map[string]bool {
	switch {
	case len(n.Members) <= fewKeys:
		return nil
	case seen == nil:
		seen = map[string]bool{}
		for _, m := range n.Members {
			seen[m.Key] = true
		}
	}
	seen[n.Members[len(n.Members)-1].Key] = true
	return seen
}

// join adds a key to a path.
func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}
