package strictjson

import (
	"fmt"
	"math"
	"reflect"
	"slices"
)

// Unbinder is a value with a JSON form of its own, the counterpart of [Binder].
type Unbinder interface {
	// UnbindNode returns the node; path names the value in errors.
	UnbindNode(path string) (*Node, error)
}

// Unbind turns a Go value into a node, such that binding the node gives the value
// back. Struct fields marked omitzero are left out when zero (a nil list, not an
// empty one), keys of maps are sorted. It returns an error that names the field
// for a number that is not finite, which JSON cannot hold; path is that of the
// value itself, "" for a whole document.
func Unbind(value any, path string) (*Node, error) {
	return unbind(reflect.ValueOf(value), path)
}

// unbind turns v into a node; the path is for errors.
func unbind(v reflect.Value, path string) (*Node, error) {
	if u, ok := v.Interface().(Unbinder); ok {
		return u.UnbindNode(path)
	}
	switch v.Kind() {
	case reflect.Pointer:
		return unbind(v.Elem(), path)
	case reflect.Struct:
		return unbindStruct(v, path)
	case reflect.Slice, reflect.Array:
		return unbindItems(v, path)
	case reflect.Map:
		return unbindMap(v, path)
	case reflect.Float64:
		return numberNode(v.Float(), path)
	case reflect.Int:
		return &Node{Kind: Number, Number: float64(v.Int())}, nil
	case reflect.String:
		return &Node{Kind: String, Text: v.String()}, nil
	case reflect.Bool:
		return &Node{Kind: Bool, Bool: v.Bool()}, nil
	default:
		panic("strictjson: cannot unbind " + v.Type().String())
	}
}

// numberNode returns the node of a number, or an error that names the path if the
// number is NaN or infinite.
func numberNode(x float64, path string) (*Node, error) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil, &Error{Path: path, Message: fmt.Sprintf("%v is not a number that can be stored", x)}
	}
	return &Node{Kind: Number, Number: x}, nil
}

// unbindItems turns a slice or array into a list.
func unbindItems(v reflect.Value, path string) (*Node, error) {
	n := &Node{Kind: Array, Items: make([]*Node, v.Len())}
	for i := range v.Len() {
		item, err := unbind(v.Index(i), join(path, fmt.Sprint(i)))
		if err != nil {
			return nil, err
		}
		n.Items[i] = item
	}
	return n, nil
}

// unbindMap turns a map into an object with sorted keys.
func unbindMap(v reflect.Value, path string) (*Node, error) {
	keys := make([]string, 0, v.Len())
	for _, k := range v.MapKeys() {
		keys = append(keys, k.String())
	}
	slices.Sort(keys)
	n := &Node{Kind: Object}
	for _, key := range keys {
		value, err := unbind(v.MapIndex(reflect.ValueOf(key)), join(path, key))
		if err != nil {
			return nil, err
		}
		n.Members = append(n.Members, Member{Key: key, Value: value})
	}
	return n, nil
}

// unbindStruct turns a struct into an object, its keys in the order of the fields.
func unbindStruct(v reflect.Value, path string) (*Node, error) {
	n := &Node{Kind: Object}
	for _, f := range fieldsOf(v.Type()) {
		fv := v.Field(f.index)
		if f.omit && fv.IsZero() {
			continue
		}
		value, err := unbind(fv, join(path, f.key))
		if err != nil {
			return nil, err
		}
		n.Members = append(n.Members, Member{Key: f.key, Value: value})
	}
	return n, nil
}
