package strictjson

import (
	"fmt"
	"strconv"
	"strings"
)

// Errorf makes an error about the value that path names, with its place in the
// input. Where nothing stands at the path the place is that of the nearest value
// above it.
func (t *Tree) Errorf(path, format string, args ...any) error {
	return t.errorAt(t.find(path).Offset, path, fmt.Sprintf(format, args...))
}

// find returns the node that path names, or the nearest one above it. A key may
// itself have dots in it.
func (t *Tree) find(path string) *Node {
	n := t.Root
	for path != "" {
		next, rest := n.step(path)
		if next == nil {
			break
		}
		n, path = next, rest
	}
	return n
}

// step returns the value of the first key of a path, and the rest of the path.
func (n *Node) step(path string) (*Node, string) {
	for i := range n.Members {
		if rest, ok := cutKey(path, n.Members[i].Key); ok {
			return n.Members[i].Value, rest
		}
	}
	first, rest, _ := strings.Cut(path, ".")
	if i, err := strconv.Atoi(first); err == nil && i >= 0 && i < len(n.Items) {
		return n.Items[i], rest
	}
	return nil, path
}

// cutKey returns what follows a key at the start of a path.
func cutKey(path, key string) (rest string, ok bool) {
	if path == key {
		return "", true
	}
	return strings.CutPrefix(path, key+".")
}
