package jsonplan

import (
	"encoding/json"
	"reflect"
	"strings"
)

// field is one key of an object.
type field struct {
	index []int
	key   string // with quotes and colon, behind a comma
	omit  func(reflect.Value) bool
	*node
}

// structure returns what writes a structure.
func structure(of reflect.Type, known map[reflect.Type]*node) func(t *text, v reflect.Value) error {
	fields, ok := fieldsOf(of, nil, known)
	if !ok || twice(fields) {
		return leave
	}
	return func(t *text, v reflect.Value) error {
		t.add("{")
		from := 1 // of a key: the first stands behind no comma
		for i := range fields {
			f := &fields[i]
			x := v.Field(f.index[0])
			for _, k := range f.index[1:] {
				x = x.Field(k)
			}
			if f.omit != nil && f.omit(x) {
				continue
			}
			t.add(f.key[from:])
			from = 0
			if err := f.write(t, x); err != nil {
				return err
			}
		}
		t.add("}")
		return nil
	}
}

// fieldsOf returns the keys of a structure that stands at a place of another: those of one
// that is embedded stand among the others. It returns false for a structure with what is
// left to encoding/json.
func fieldsOf(t reflect.Type, at []int, known map[reflect.Type]*node) (out []field, ok bool) {
	for i := range t.NumField() {
		f := t.Field(i)
		tag := f.Tag.Get("json")
		name, options, _ := strings.Cut(tag, ",")
		index := append(at[:len(at):len(at)], i)
		switch {
		case tag == "-", !f.IsExported() && !f.Anonymous:
			continue
		case f.Anonymous && name == "":
			if f.Type.Kind() != reflect.Struct || marshals(f.Type) {
				return nil, false
			}
			inner, ok := fieldsOf(f.Type, index, known)
			if !ok {
				return nil, false
			}
			out = append(out, inner...)
			continue
		case !f.IsExported():
			return nil, false
		case name == "":
			name = f.Name
		}
		omit, ok := omission(options, f.Type)
		if !ok {
			return nil, false
		}
		key, err := json.Marshal(name)
		if err != nil || strings.ContainsAny(name, `\"'`) {
			return nil, false
		}
		out = append(out, field{index, "," + string(key) + ":", omit, plan(f.Type, known)})
	}
	return out, true
}

// omission returns when a field is left out, nil for never. It returns false for options
// that are left to encoding/json.
func omission(options string, t reflect.Type) (omit func(reflect.Value) bool, ok bool) {
	switch options {
	case "":
		return nil, true
	case "omitzero":
		return reflect.Value.IsZero, !t.Implements(zeroer) && !reflect.PointerTo(t).Implements(zeroer)
	case "omitempty":
		switch t.Kind() {
		case reflect.Slice, reflect.Map, reflect.String, reflect.Array:
			return func(v reflect.Value) bool { return v.Len() == 0 }, true
		case reflect.Bool, reflect.Int, reflect.Float64, reflect.Pointer, reflect.Interface:
			return reflect.Value.IsZero, true
		}
	}
	return nil, false
}

// twice reports whether two fields have one key: which of them counts, encoding/json says.
func twice(fields []field) bool {
	seen := map[string]bool{}
	for _, f := range fields {
		if seen[f.key] {
			return true
		}
		seen[f.key] = true
	}
	return false
}
