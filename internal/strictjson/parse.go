package strictjson

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strconv"
	"unicode/utf8"
)

// Tree is one parsed input. It keeps the input to tell line and column.
type Tree struct {
	Root *Node
	data []byte
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
	p := parser{tree: t, limits: limits, tokens: json.NewDecoder(bytes.NewReader(t.data))}
	p.tokens.UseNumber()
	root, err := p.value("", 0)
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
	return &Error{Path: path, Line: line, Column: column, Message: message}
}

// parser turns the tokens of valid JSON into nodes.
type parser struct {
	tree   *Tree
	limits Limits
	tokens *json.Decoder
	count  int // count is the number of values so far.
}

// value reads the next value, whose path and depth are given.
func (p *parser) value(path string, depth int) (*Node, error) {
	offset := p.next()
	p.count++
	if exceeds(p.count, p.limits.Values) {
		return nil, p.tree.errorAt(offset, path, fmt.Sprintf("more than %d values", p.limits.Values))
	}
	token, err := p.tokens.Token()
	if err != nil {
		return nil, p.tree.errorAt(offset, path, err.Error())
	}
	n := &Node{Offset: offset}
	switch v := token.(type) {
	case json.Delim:
		return n, p.container(n, v, path, depth+1)
	case json.Number:
		return n, p.number(n, v, path)
	case string:
		n.Kind, n.Text = String, v
	case bool:
		n.Kind, n.Bool = Bool, v
	}
	return n, nil
}

// next returns the offset at which the next token starts.
func (p *parser) next() int {
	at := int(p.tokens.InputOffset())
	for at < len(p.tree.data) && bytes.IndexByte([]byte(" \t\r\n,:"), p.tree.data[at]) >= 0 {
		at++
	}
	return at
}

// number fills a number node and refuses what is not finite or too large.
func (p *parser) number(n *Node, v json.Number, path string) error {
	x, err := strconv.ParseFloat(string(v), 64)
	limit := p.limits.Magnitude
	if limit == 0 {
		limit = math.MaxFloat64
	}
	if err != nil || !(math.Abs(x) <= limit) {
		message := fmt.Sprintf("the number %s is too large, want at most %g either way", clip(string(v)), limit)
		return p.tree.errorAt(n.Offset, path, message)
	}
	n.Kind, n.Number = Number, x
	return nil
}

// container fills a list or an object node up to its closing bracket.
func (p *parser) container(n *Node, open json.Delim, path string, depth int) error {
	if exceeds(depth, p.limits.Depth) {
		return p.tree.errorAt(n.Offset, path, fmt.Sprintf("nested deeper than %d levels", p.limits.Depth))
	}
	fill := p.list
	if n.Kind = Array; open == '{' {
		n.Kind, fill = Object, p.object
	}
	if err := fill(n, path, depth); err != nil {
		return err
	}
	_, err := p.tokens.Token() // the closing bracket
	return err
}

// list reads the items of a list.
func (p *parser) list(n *Node, path string, depth int) error {
	for p.tokens.More() {
		item, err := p.value(join(path, strconv.Itoa(len(n.Items))), depth)
		if err != nil {
			return err
		}
		n.Items = append(n.Items, item)
	}
	return nil
}

// object reads the members of an object and refuses a key that comes twice.
func (p *parser) object(n *Node, path string, depth int) error {
	seen := map[string]bool{}
	for p.tokens.More() {
		offset := p.next()
		token, err := p.tokens.Token()
		if err != nil {
			return err
		}
		key := token.(string)
		if seen[key] {
			return p.tree.errorAt(offset, join(path, clip(key)), "key stands twice; remove one")
		}
		seen[key] = true
		value, err := p.value(join(path, clip(key)), depth)
		if err != nil {
			return err
		}
		n.Members = append(n.Members, Member{Key: key, Offset: offset, Value: value})
	}
	return nil
}

// join adds a key to a path.
func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}
