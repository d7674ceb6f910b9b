// Package jsonplan writes values as encoding/json does, to the byte, by plans that are made
// once of their types. An answer is lists of numbers: encoding/json calls a method for each
// that may be null and checks what comes of it, which takes four times as long.
//
// What a plan does not know, such as a map, is left to encoding/json.
package jsonplan

import (
	"encoding"
	"encoding/json"
	"reflect"
	"sync"

	"toewright/internal/engine"
)

// node is the plan of one type.
type node struct {
	write func(t *text, v reflect.Value) error
}

var (
	plans   sync.Map // of [reflect.Type], *node
	making  sync.Mutex
	numbers = reflect.TypeFor[engine.Number]()

	marshaler     = reflect.TypeFor[json.Marshaler]()
	textMarshaler = reflect.TypeFor[encoding.TextMarshaler]()
	zeroer        = reflect.TypeFor[interface{ IsZero() bool }]()
)

// Append appends v as JSON. Its errors are those of [json.Marshal].
func Append(b []byte, v any) ([]byte, error) {
	t := texts.Get().(*text)
	defer texts.Put(t)
	return t.append(b, v)
}

// append appends v to b.
func (t *text) append(b []byte, v any) ([]byte, error) {
	if v == nil {
		return append(b, "null"...), nil
	}
	t.b = b
	clear(t.written[:])
	x := reflect.ValueOf(v)
	err := planOf(x.Type()).write(t, x)
	b, t.b = t.b, nil
	return b, err
}

// planOf returns the plan of a type, made when it is first asked for.
func planOf(t reflect.Type) *node {
	if n, ok := plans.Load(t); ok {
		return n.(*node)
	}
	making.Lock()
	defer making.Unlock()
	known := map[reflect.Type]*node{}
	n := plan(t, known)
	for t, n := range known { // whole now, also where one holds the other
		plans.Store(t, n)
	}
	return n
}

// plan returns the plan of a type, and adds it to known with those that it needs.
func plan(t reflect.Type, known map[reflect.Type]*node) *node {
	if n, ok := known[t]; ok {
		return n
	}
	n := &node{}
	known[t] = n
	switch kind := t.Kind(); {
	case t == numbers:
		n.write = appendNumber
	case marshals(t) || kind == reflect.Pointer && marshals(t.Elem()):
		n.write = leave
	case kind == reflect.Float64:
		n.write = appendFloat
	case kind == reflect.String:
		n.write = appendString
	case kind == reflect.Bool:
		n.write = appendBool
	case kind == reflect.Int:
		n.write = appendInt
	case kind == reflect.Pointer:
		n.write = pointer(plan(t.Elem(), known))
	case kind == reflect.Interface:
		n.write = appendAny
	case kind == reflect.Array, kind == reflect.Slice && t.Elem().Kind() != reflect.Uint8:
		n.write = list(t, plan(t.Elem(), known))
	case kind == reflect.Struct:
		n.write = structure(t, known)
	default:
		n.write = leave
	}
	return n
}

// marshals reports whether values of a type write themselves.
func marshals(t reflect.Type) bool {
	p := reflect.PointerTo(t)
	return t != numbers && t.Kind() != reflect.Interface && (p.Implements(marshaler) || p.Implements(textMarshaler))
}

// leave leaves a value to encoding/json, which asks where it stands for methods of pointers.
func leave(t *text, v reflect.Value) error {
	if v.CanAddr() {
		v = v.Addr()
	}
	own, err := json.Marshal(v.Interface())
	t.b = append(t.b, own...)
	return err
}

// pointer returns what writes null for nil, and else what is pointed at.
func pointer(at *node) func(t *text, v reflect.Value) error {
	return func(t *text, v reflect.Value) error {
		if v.IsNil() {
			t.add("null")
			return nil
		}
		return at.write(t, v.Elem())
	}
}

// appendAny writes what an interface holds.
func appendAny(t *text, v reflect.Value) error {
	if v.IsNil() {
		t.add("null")
		return nil
	}
	return planOf(v.Elem().Type()).write(t, v.Elem())
}

// list returns what writes a slice, nil as null, or an array.
func list(of reflect.Type, each *node) func(t *text, v reflect.Value) error {
	slice := of.Kind() == reflect.Slice
	return func(t *text, v reflect.Value) error {
		if slice && v.IsNil() {
			t.add("null")
			return nil
		}
		t.add("[")
		for i := range v.Len() {
			if i > 0 {
				t.add(",")
			}
			if err := each.write(t, v.Index(i)); err != nil {
				return err
			}
		}
		t.add("]")
		return nil
	}
}
