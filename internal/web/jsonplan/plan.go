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
	write func(b []byte, v reflect.Value) ([]byte, error)
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
	if v == nil {
		return append(b, "null"...), nil
	}
	x := reflect.ValueOf(v)
	return planOf(x.Type()).write(b, x)
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
		n.write = func(b []byte, v reflect.Value) ([]byte, error) { return appendFloat(b, v.Float()) }
	case kind == reflect.String:
		n.write = func(b []byte, v reflect.Value) ([]byte, error) { return appendString(b, v.String()) }
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
func leave(b []byte, v reflect.Value) ([]byte, error) {
	if v.CanAddr() {
		v = v.Addr()
	}
	text, err := json.Marshal(v.Interface())
	return append(b, text...), err
}

// pointer returns what writes null for nil, and else what is pointed at.
func pointer(at *node) func(b []byte, v reflect.Value) ([]byte, error) {
	return func(b []byte, v reflect.Value) ([]byte, error) {
		if v.IsNil() {
			return append(b, "null"...), nil
		}
		return at.write(b, v.Elem())
	}
}

// appendAny writes what an interface holds.
func appendAny(b []byte, v reflect.Value) ([]byte, error) {
	if v.IsNil() {
		return append(b, "null"...), nil
	}
	return planOf(v.Elem().Type()).write(b, v.Elem())
}

// list returns what writes a slice, nil as null, or an array.
func list(t reflect.Type, each *node) func(b []byte, v reflect.Value) ([]byte, error) {
	slice := t.Kind() == reflect.Slice
	return func(b []byte, v reflect.Value) (_ []byte, err error) {
		if slice && v.IsNil() {
			return append(b, "null"...), nil
		}
		b = append(b, '[')
		for i := range v.Len() {
			if i > 0 {
				b = append(b, ',')
			}
			if b, err = each.write(b, v.Index(i)); err != nil {
				return b, err
			}
		}
		return append(b, ']'), nil
	}
}
