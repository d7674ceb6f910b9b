package study

import (
	"slices"

	"toewright/internal/strictjson"
)

// Keys lists the keys that the document's file has, each once, in the order of the file:
// "search.variables[].min", with "side" in the place of left and right.
func (d *Document) Keys() (keys []string) {
	n, err := strictjson.Unbind(*d, "")
	if err != nil {
		return nil
	}
	add := func(key string) {
		if !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	eachKey(n, "", add)
	return keys
}

func eachKey(n *strictjson.Node, key string, add func(string)) {
	if key != "" {
		add(key)
	}
	for _, m := range n.Members {
		name := m.Key
		if name == string(Left) || name == string(Right) {
			name = "side"
		}
		eachKey(m.Value, below(key, name), add)
	}
	for _, item := range n.Items {
		if item.Kind == strictjson.Object {
			eachKey(item, key+"[]", add)
		}
	}
}
