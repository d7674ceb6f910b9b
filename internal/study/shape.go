package study

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"toewright/internal/strictjson"
)

// leaf is one value inside a nested JSON object, by its path: "links.0.inner" is
// key inner of the first item of list links.
type leaf struct {
	path   string
	target any // target points at the Go value.
	presence
}

// presence says when a leaf stands in the file.
type presence uint8

const (
	required presence = iota // must be read, is always written
	written                  // may be missing when read, is always written
	optional                 // may be missing, is written unless zero
)

// shape is the JSON form of an object whose keys depend on its type.
type shape []leaf

// bind fills the leaves' targets from an object. It returns which paths stood in
// it, or the error about the first key that is unknown, wrong or missing.
func (sh shape) bind(sc strictjson.Scope, n *strictjson.Node) (map[string]bool, error) {
	seen := map[string]bool{}
	if err := sh.walk(sc, n, "", seen); err != nil {
		return nil, err
	}
	for _, l := range sh {
		if l.presence == required && !seen[l.path] {
			return nil, sc.In(l.path).Errorf(n, "missing")
		}
	}
	return seen, nil
}

// walk descends into a node whose path is a prefix of leaves' paths.
func (sh shape) walk(sc strictjson.Scope, n *strictjson.Node, path string, seen map[string]bool) error {
	if i := slices.IndexFunc(sh, func(l leaf) bool { return l.path == path }); i >= 0 {
		seen[path] = true
		return sc.Bind(n, sh[i].target)
	}
	known := sh.below(path)
	if isIndex(known[0]) {
		return sh.walkList(sc, n, path, len(known), seen)
	}
	if n.Kind != strictjson.Object {
		return sc.Want(n, "an object")
	}
	for _, m := range n.Members {
		if !slices.Contains(known, m.Key) {
			return sc.Unknown(m, known)
		}
		if err := sh.walk(sc.In(m.Key), m.Value, under(path, m.Key), seen); err != nil {
			return err
		}
	}
	return nil
}

// walkList descends into a list of a fixed count.
func (sh shape) walkList(sc strictjson.Scope, n *strictjson.Node, path string, count int, seen map[string]bool) error {
	if n.Kind != strictjson.Array || len(n.Items) != count {
		return sc.Want(n, "a list of "+strconv.Itoa(count))
	}
	for i, item := range n.Items {
		key := strconv.Itoa(i)
		if err := sh.walk(sc.In(key), item, under(path, key), seen); err != nil {
			return err
		}
	}
	return nil
}

// below lists the keys that follow a path, each once, in the order of the leaves.
func (sh shape) below(path string) []string {
	keys := make([]string, 0, len(sh))
	before := under(path, "")
	for _, l := range sh {
		rest, ok := strings.CutPrefix(l.path, before)
		if !ok {
			continue
		}
		key, _, _ := strings.Cut(rest, ".")
		if !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	return keys
}

// under adds a key to a path; an empty key gives the prefix of all paths below.
func under(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// isIndex reports whether a key is that of a list.
func isIndex(key string) bool { return key[0] >= '0' && key[0] <= '9' }

// unbind builds the object from the leaves' targets.
func (sh shape) unbind(path string) (*strictjson.Node, error) {
	root := &strictjson.Node{Kind: strictjson.Object}
	for _, l := range sh {
		value := reflect.ValueOf(l.target).Elem()
		if l.presence == optional && value.IsZero() {
			continue
		}
		n, err := strictjson.Unbind(value.Interface(), under(path, l.path))
		if err != nil {
			return nil, err
		}
		insert(root, strings.Split(l.path, "."), n)
	}
	return root, nil
}

// insert puts a value at a path below an object or list, which it extends.
func insert(parent *strictjson.Node, path []string, value *strictjson.Node) {
	if len(path) > 1 {
		child := childAt(parent, path[0])
		if child == nil {
			child = &strictjson.Node{Kind: strictjson.Object}
			if isIndex(path[1]) {
				child.Kind = strictjson.Array
			}
		}
		insert(child, path[1:], value)
		value = child
	}
	if parent.Kind == strictjson.Object {
		parent.Set(path[0], value)
	} else if childAt(parent, path[0]) == nil {
		parent.Items = append(parent.Items, value)
	}
}

// childAt returns the value at a key of an object or an index of a list, or nil.
func childAt(n *strictjson.Node, key string) *strictjson.Node {
	if n.Kind == strictjson.Object {
		return n.Get(key)
	}
	if i, err := strconv.Atoi(key); err == nil && i < len(n.Items) {
		return n.Items[i]
	}
	return nil
}
