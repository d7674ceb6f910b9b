package api

import (
	"reflect"
	"strings"

	"toewright/internal/engine"
)

// schemas derives JSON Schemas from Go types by their json tags.
type schemas struct {
	defined object // of the structs met so far, by name
}

// of returns the schema of what a value, or a pointer to one, is.
func (s *schemas) of(value any) object {
	t := reflect.TypeOf(value)
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	return s.ofType(t)
}

var numberType = reflect.TypeFor[engine.Number]()

func (s *schemas) ofType(t reflect.Type) object {
	if t == numberType {
		return object{"type": []string{"number", "null"}}
	}
	switch t.Kind() {
	case reflect.Pointer:
		return object{"anyOf": []object{s.ofType(t.Elem()), {"type": "null"}}}
	case reflect.Struct:
		return s.ofStruct(t)
	case reflect.Slice:
		return object{"type": "array", "items": s.ofType(t.Elem())}
	case reflect.Array:
		return object{"type": "array", "items": s.ofType(t.Elem()), "minItems": t.Len(), "maxItems": t.Len()}
	case reflect.Map:
		return object{"type": "object", "additionalProperties": s.ofType(t.Elem())}
	}
	return object{"type": scalar(t.Kind())}
}

// scalar returns the JSON type of a kind that is not a composite.
func scalar(k reflect.Kind) string {
	switch k {
	case reflect.Bool:
		return "boolean"
	case reflect.Int:
		return "integer"
	case reflect.Float64:
		return "number"
	}
	return "string"
}

// ofStruct defines a struct's schema once and refers to it.
func (s *schemas) ofStruct(t reflect.Type) object {
	if _, ok := s.defined[t.Name()]; !ok {
		properties, required := object{}, []string{}
		s.defined[t.Name()] = nil // for a type that holds itself
		s.addFields(t, properties, &required)
		s.defined[t.Name()] = object{"type": "object", "properties": properties, "required": required}
	}
	return reference(t.Name())
}

// addFields adds those of embedded structs as their own, as encoding/json does.
func (s *schemas) addFields(t reflect.Type, properties object, required *[]string) {
	for i := range t.NumField() {
		f := t.Field(i)
		name, flags, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case name == "-":
			continue
		case f.Anonymous && name == "":
			s.addFields(f.Type, properties, required)
			continue
		}
		properties[name] = s.ofType(f.Type)
		if flags == "" {
			*required = append(*required, name)
		}
	}
}
