package strictjson

import (
	"bytes"
	"encoding/json"
	"reflect"
	"testing"
)

// FuzzParse checks that the parser never panics, takes in nothing that
// encoding/json refuses, and that what it takes in prints and parses to itself.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{fullText, "[]", `{"a":{"a":{}}}`, "[1e5,-0,\"\\ud800\"]", "{\"a\":1,}", "\xef\xbb\xbf1"} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		tree, err := Parse(data, Limits{Bytes: 1 << 16, Depth: 20, Values: 1000, Magnitude: 1e9})
		if err != nil {
			return
		}
		if !json.Valid(bytes.TrimPrefix(data, byteOrderMark)) {
			t.Fatalf("Parse accepted %q, encoding/json does not", data)
		}
		var plain any
		if err := json.Unmarshal(bytes.TrimPrefix(data, byteOrderMark), &plain); err != nil || !reflect.DeepEqual(tree.Root.plain(), plain) {
			t.Fatalf("Parse read %q as %v, encoding/json as %v (%v)", data, tree.Root.plain(), plain, err)
		}
		text := Format(tree.Root)
		again, err := Parse(text, Limits{})
		if err != nil {
			t.Fatalf("Format gave %q, which does not parse: %v", text, err)
		}
		if twice := Format(again.Root); !bytes.Equal(text, twice) {
			t.Fatalf("Format gave %q, then %q", text, twice)
		}
	})
}

// plain returns what encoding/json makes of the value.
func (n *Node) plain() any {
	switch n.Kind {
	case Bool:
		return n.Bool
	case Number:
		return n.Number
	case String:
		return n.Text
	case Array:
		list := []any{}
		for _, item := range n.Items {
			list = append(list, item.plain())
		}
		return list
	case Object:
		object := map[string]any{}
		for _, m := range n.Members {
			object[m.Key] = m.Value.plain()
		}
		return object
	}
	return nil
}
