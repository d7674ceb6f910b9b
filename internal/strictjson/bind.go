package strictjson

import (
	"fmt"
	"math"
	"reflect"
	"strconv"

	"toewright/internal/spelling"
)

// Binder is a value with a JSON form of its own.
type Binder interface {
	// BindNode fills the value from a node and returns an error made by the scope.
	BindNode(s Scope, n *Node) error
}

// Bind fills the value that target points at from the whole tree. It returns an
// [*Error] for the first key that is unknown, missing, of the wrong type or
// against its field's rules.
//
// Structs take objects by their json tags, every key of which must be known;
// slices take lists, arrays take lists of just their length, maps of strings take
// objects of any keys, pointers take what they point at. Null fits nothing.
func (t *Tree) Bind(target any) error {
	return Scope{tree: t}.Bind(t.Root, target)
}

// Scope is a place in the tree: it makes errors that name it.
type Scope struct {
	tree *Tree
	up   *Scope // nil at the root
	key  string
}

// In returns the scope of a key below.
func (s Scope) In(key string) Scope { return Scope{s.tree, &s, key} }

// path returns the keys that lead to s. It is made when an error asks for it: most have none.
func (s *Scope) path() string {
	if s.up == nil {
		return ""
	}
	return join(s.up.path(), clip(s.key))
}

// Errorf makes an error about a node in this scope.
func (s Scope) Errorf(n *Node, format string, args ...any) error {
	return s.tree.errorAt(n.Offset, s.path(), fmt.Sprintf(format, args...))
}

// Unknown makes the error about a member whose key is none of the known ones.
func (s Scope) Unknown(m Member, known []string) error {
	message := "unknown key"
	if near := spelling.Nearest(m.Key, known); near != "" {
		message += "; did you mean " + near + "?"
	}
	at := s.In(m.Key)
	return s.tree.errorAt(m.Offset, at.path(), message)
}

// Want makes the error about a node of the wrong type.
func (s Scope) Want(n *Node, what string) error {
	return s.Errorf(n, "want %s, got %s", what, n.describe())
}

// Bind fills the value that target points at from a node in this scope.
func (s Scope) Bind(n *Node, target any) error {
	return s.bind(n, reflect.ValueOf(target).Elem())
}

// bind fills v, by the kind of its type.
func (s Scope) bind(n *Node, v reflect.Value) error {
	if b, ok := v.Addr().Interface().(Binder); ok {
		return b.BindNode(s, n)
	}
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		return s.bind(n, v.Elem())
	case reflect.Struct:
		return s.bindStruct(n, v)
	case reflect.Slice:
		return s.bindSlice(n, v)
	case reflect.Array:
		return s.bindArray(n, v)
	case reflect.Map:
		return s.bindMap(n, v)
	default:
		return s.bindScalar(n, v)
	}
}

// bindScalar fills a number, a text or a flag.
func (s Scope) bindScalar(n *Node, v reflect.Value) error {
	switch v.Kind() {
	case reflect.Float64:
		if n.Kind != Number {
			return s.Want(n, "a number")
		}
		v.SetFloat(n.Number)
	case reflect.Int:
		if n.Kind != Number || n.Number != math.Trunc(n.Number) {
			return s.Want(n, "a whole number")
		}
		v.SetInt(int64(n.Number))
	case reflect.String:
		if n.Kind != String {
			return s.Want(n, "a text")
		}
		v.SetString(n.Text)
	case reflect.Bool:
		if n.Kind != Bool {
			return s.Want(n, "true or false")
		}
		v.SetBool(n.Bool)
	default:
		panic("strictjson: cannot bind " + v.Type().String())
	}
	return nil
}

// bindSlice fills a slice, never nil, from a list of any length.
func (s Scope) bindSlice(n *Node, v reflect.Value) error {
	if n.Kind != Array {
		return s.Want(n, "a list")
	}
	v.Set(reflect.MakeSlice(v.Type(), len(n.Items), len(n.Items)))
	return s.bindItems(n, v)
}

// bindArray fills an array from a list of just its length.
func (s Scope) bindArray(n *Node, v reflect.Value) error {
	if n.Kind != Array || len(n.Items) != v.Len() {
		return s.Want(n, fmt.Sprintf("a list of %d numbers", v.Len()))
	}
	return s.bindItems(n, v)
}

// bindItems fills each element of a slice or array.
func (s Scope) bindItems(n *Node, v reflect.Value) error {
	for i, item := range n.Items {
		if err := s.In(strconv.Itoa(i)).bind(item, v.Index(i)); err != nil {
			return err
		}
	}
	return nil
}

// bindMap fills a map, never nil, whose keys are strings.
func (s Scope) bindMap(n *Node, v reflect.Value) error {
	if n.Kind != Object {
		return s.Want(n, "an object")
	}
	v.Set(reflect.MakeMapWithSize(v.Type(), len(n.Members)))
	for _, m := range n.Members {
		value := reflect.New(v.Type().Elem()).Elem()
		if err := s.In(m.Key).bind(m.Value, value); err != nil {
			return err
		}
		v.SetMapIndex(reflect.ValueOf(m.Key), value)
	}
	return nil
}

// bindStruct fills a struct's fields by their keys.
func (s Scope) bindStruct(n *Node, v reflect.Value) error {
	if n.Kind != Object {
		return s.Want(n, "an object")
	}
	fields := fieldsOf(v.Type())
	for _, m := range n.Members {
		f := findField(fields, m.Key)
		if f == nil {
			return s.Unknown(m, keysOf(fields))
		}
		if err := s.In(m.Key).bindField(m.Value, v.Field(f.index), f.rules); err != nil {
			return err
		}
	}
	for i := range fields {
		if f := &fields[i]; f.rules.required && n.Get(f.key) == nil {
			return s.In(f.key).Errorf(n, "missing")
		}
	}
	return nil
}

// bindField fills one field and checks its rules.
func (s Scope) bindField(n *Node, v reflect.Value, r rules) error {
	if err := s.bind(n, v); err != nil {
		return err
	}
	if wrong := r.check(v); wrong != "" {
		return s.Errorf(n, "%s", wrong)
	}
	return nil
}
