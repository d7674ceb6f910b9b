package strictjson

import "strconv"

// Kind is the JSON type of a [Node].
type Kind uint8

// The JSON types.
const (
	Null Kind = iota
	Bool
	Number
	String
	Array
	Object
)

// Node is one JSON value with its place in the input.
type Node struct {
	Kind    Kind
	Offset  int      // Offset is the byte where the value starts.
	Bool    bool     // Bool is the value of a Bool node.
	Number  float64  // Number is the value of a Number node, always finite when parsed.
	Text    string   // Text is the value of a String node.
	Items   []*Node  // Items are the elements of an Array node.
	Members []Member // Members are the pairs of an Object node, in the order of the input.
}

// Member is one pair of a JSON object.
type Member struct {
	Key    string
	Offset int // Offset is the byte where the key starts.
	Value  *Node
}

// Get returns the value of an object's key, or nil where there is none.
func (n *Node) Get(key string) *Node {
	for i := range n.Members {
		if n.Members[i].Key == key {
			return n.Members[i].Value
		}
	}
	return nil
}

// Set gives an object's key a value, in place of the old one or behind all others.
func (n *Node) Set(key string, value *Node) {
	for i := range n.Members {
		if n.Members[i].Key == key {
			n.Members[i].Value = value
			return
		}
	}
	n.Members = append(n.Members, Member{Key: key, Value: value})
}

// describe says what the node is in the words of an error message.
func (n *Node) describe() string {
	switch n.Kind {
	case Bool:
		return strconv.FormatBool(n.Bool)
	case Number:
		return "the number " + formatNumber(n.Number)
	case String:
		return "the text " + strconv.Quote(clip(n.Text))
	case Array:
		return "a list of " + strconv.Itoa(len(n.Items))
	case Object:
		return "an object"
	default:
		return "null"
	}
}

// maxQuoted is the most characters of the input that a message repeats.
const maxQuoted = 40

// clip shortens text to maxQuoted characters for an error message.
func clip(text string) string {
	count := 0
	for i := range text {
		if count == maxQuoted {
			return text[:i] + "..."
		}
		count++
	}
	return text
}
