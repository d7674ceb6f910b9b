package study

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"toewright/internal/spelling"
	"toewright/internal/strictjson"
)

// sourced are the sections of a file whose numbers have a source. What else stands in it
// is a question, such as a search, or a way to show it.
var sourced = []string{"vehicle", "suspension", "steering", "tieRod", "tolerances", "readings", "series", "catalogue", "loads", "stiffness", "arm", "measured"}

// numberTree is a study as far as its numbers have a source.
type numberTree struct{ root *strictjson.Node }

// newNumberTree returns the tree of a document. The error is that of [Encode].
func newNumberTree(d *Document) (*numberTree, error) {
	bare := *d
	bare.Sources = nil
	n, err := strictjson.Unbind(bare, "")
	if err != nil {
		return nil, err
	}
	return numberTreeOf(n), nil
}

// numberTreeOf returns the tree of a study's node.
func numberTreeOf(study *strictjson.Node) *numberTree {
	t := &numberTree{&strictjson.Node{Kind: strictjson.Object}}
	for _, key := range sourced {
		section := study.Get(key)
		switch {
		case section == nil:
		case key == "suspension":
			t.root.Members = append(t.root.Members, section.Members...)
		default:
			t.root.Set(key, section)
		}
	}
	return t
}

// Within reports whether a number's path is at or under another.
func Within(path, of string) bool { return path == of || strings.HasPrefix(path, of+".") }

// each calls f with every number and its path, in the order of the file.
func (t *numberTree) each(f func(path string, value float64)) { eachNumber(t.root, "", f) }

func eachNumber(n *strictjson.Node, path string, f func(string, float64)) {
	if n.Kind == strictjson.Number {
		f(path, n.Number)
	}
	for _, c := range children(n, path) {
		eachNumber(c.node, c.path, f)
	}
}

// child is a value within another.
type child struct {
	key  string
	path string
	node *strictjson.Node
}

// children lists the values within a value. The three numbers of a place are x, y and z.
func children(n *strictjson.Node, path string) []child {
	list := make([]child, 0, len(n.Members)+len(n.Items))
	for _, m := range n.Members {
		list = append(list, child{m.Key, below(path, m.Key), m.Value})
	}
	for i, item := range n.Items {
		key := strconv.Itoa(i)
		if len(n.Items) == 3 && item.Kind == strictjson.Number {
			key = "xyz"[i : i+1]
		}
		list = append(list, child{key, below(path, key), item})
	}
	return list
}

// below returns the path of a key within the value at a path.
func below(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// covers reports whether a key speaks of any number.
func (t *numberTree) covers(key string) bool { return covers(t.root, key) }

func covers(n *strictjson.Node, key string) bool {
	if key == "" {
		return hasNumber(n)
	}
	for _, c := range children(n, "") {
		if rest, ok := strings.CutPrefix(key, c.key); ok && (rest == "" || rest[0] == '.') && covers(c.node, strings.TrimPrefix(rest, ".")) {
			return true
		}
	}
	return false
}

// hasNumber reports whether a value is a number or has one in it.
func hasNumber(n *strictjson.Node) (found bool) {
	eachNumber(n, "", func(string, float64) { found = true })
	return found
}

// unknown says what is wrong with a key that speaks of none.
func (t *numberTree) unknown(key string) string {
	message := `is the path of no number of this study, such as "left.lowerBallJoint" or "vehicle.wheelbase"`
	paths := map[string]bool{}
	t.each(func(path string, _ float64) {
		for p := path; p != ""; p = above(p) {
			paths[p] = true
		}
	})
	if near := spelling.Nearest(key, slices.Sorted(maps.Keys(paths))); near != "" {
		message += "; did you mean " + near + "?"
	}
	return message
}

// pack returns the shortest sources that say of every number what source says. Where
// other is a source, AnyNumber stands for it as long as any number has it.
func (t *numberTree) pack(other Source, source func(path string) Source) Sources {
	p := packer{source: source, out: Sources{}, other: other}
	for _, c := range children(t.root, "") {
		p.emit(c)
	}
	if p.used {
		p.out[AnyNumber] = other
	}
	if len(p.out) == 0 {
		return nil
	}
	return p.out
}

// packer collects the keys of sources.
type packer struct {
	source func(path string) Source
	out    Sources
	other  Source // other is that of numbers without a key
	used   bool   // used is whether there are such
}

// emit adds the keys that a value needs: one, where all its numbers have one source.
func (p *packer) emit(c child) {
	s, uniform := p.common(c)
	switch {
	case uniform && s == "":
	case uniform && s == p.other:
		p.used = s != FromFile || p.used
	case uniform:
		p.out[c.path] = s
	default:
		for _, sub := range children(c.node, c.path) {
			p.emit(sub)
		}
	}
}

// common returns the source that all numbers of a value have, "" where it has none.
func (p *packer) common(c child) (s Source, uniform bool) {
	uniform = true
	eachNumber(c.node, c.path, func(path string, _ float64) {
		own := p.source(path)
		uniform = uniform && (s == "" || s == own)
		s = own
	})
	return s, uniform
}
