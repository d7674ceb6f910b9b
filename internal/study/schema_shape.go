package study

import (
	"reflect"
	"slices"
	"strings"

	"toewright/solver"
)

// shapeWriter writes the schema of an object whose keys follow from a kind of suspension.
type shapeWriter struct {
	*schemaWriter
	kind  *solver.Kind
	name  string // under which its words stand
	shape shape
}

// below returns the schema of what stands at a path.
func (v shapeWriter) below(path string) object {
	if i := slices.IndexFunc(v.shape, func(l leaf) bool { return l.path == path }); i >= 0 {
		return v.leaf(v.shape[i])
	}
	keys := v.shape.below(path)
	if isIndex(keys[0]) {
		return object{"type": "array", "items": v.below(under(path, keys[0])), "minItems": len(keys), "maxItems": len(keys)}
	}
	properties, required := object{}, []string{}
	for _, key := range keys {
		at := under(path, key)
		properties[key] = v.described(v.below(at), at)
		if v.required(at) {
			required = append(required, key)
		}
	}
	return closed(properties, required)
}

// required reports whether anything at a path must stand.
func (v shapeWriter) required(path string) bool {
	return slices.ContainsFunc(v.shape, func(l leaf) bool {
		return l.presence == required && (l.path == path || strings.HasPrefix(l.path, under(path, "")))
	})
}

// leaf returns the schema of one value.
func (v shapeWriter) leaf(l leaf) object {
	if _, ok := l.target.(*cornerForm); ok {
		return v.define(v.kind.Name+"-corner", func() object {
			f := &cornerForm{kind: v.kind}
			return shapeWriter{v.schemaWriter, v.kind, "corner", f.shape(make([]Vec3, len(v.kind.SidePoints)))}.below("")
		})
	}
	return v.of(reflect.TypeOf(l.target).Elem())
}

// described adds the words for a path: without the numbers of lists; for a hardpoint that
// has none of its own, its label; for a side, that of what it is a side of.
func (v shapeWriter) described(s object, path string) object {
	keys := slices.DeleteFunc(strings.Split(path, "."), isIndex)
	if described(s, v.name+"."+strings.Join(keys, ".")); s["description"] != nil {
		return s
	}
	for _, h := range slices.Concat(v.kind.SidePoints, v.kind.CommonPoints) {
		if h.Name == path {
			s["description"] = strings.ToUpper(h.Label[:1]) + h.Label[1:] + "."
			return s
		}
	}
	return described(s, "side."+keys[len(keys)-1])
}
