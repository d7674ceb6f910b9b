package strictjson

import (
	"reflect"
	"strings"
	"sync"
)

// Field says what a key of a struct takes, for those who describe it.
type Field struct {
	Key                             string
	Type                            reflect.Type
	Required, Positive, NotNegative bool     // as the rules of these names
	OneOf                           []string // the words that it takes; nil where it takes any value of its type
}

// Fields lists the keys that [Tree.Bind] knows of a struct, in its order.
func Fields(t reflect.Type) []Field {
	var list []Field
	for _, f := range fieldsOf(t) {
		r := f.rules
		list = append(list, Field{f.key, t.Field(f.index).Type, r.required, r.positive, r.notNegative, r.oneOf})
	}
	return list
}

// field is one struct field that has a key.
type field struct {
	key   string
	index int
	omit  bool // omit says that the zero value is not written.
	rules rules
}

// listed are the fields of each type that was asked for, of [reflect.Type] []field.
var listed sync.Map

// fieldsOf lists the fields with a json tag, in their order. The list is shared.
func fieldsOf(t reflect.Type) []field {
	fields, ok := listed.Load(t)
	if !ok {
		fields, _ = listed.LoadOrStore(t, listFields(t))
	}
	return fields.([]field)
}

func listFields(t reflect.Type) []field {
	fields := make([]field, 0, t.NumField())
	for i := range t.NumField() {
		key, options, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		if key == "" || key == "-" {
			continue
		}
		r := parseRules(t.Field(i).Tag.Get("rule"))
		if w, ok := reflect.Zero(t.Field(i).Type).Interface().(worded); ok {
			r.oneOf = w.Words()
		}
		fields = append(fields, field{key, i, options == "omitzero", r})
	}
	return fields
}

// worded is a type of texts that must be one of a list of words, as with the rule oneof.
type worded interface{ Words() []string }

// findField returns the field of a key, nil where there is none.
func findField(fields []field, key string) *field {
	for i := range fields {
		if fields[i].key == key {
			return &fields[i]
		}
	}
	return nil
}

// keysOf lists the keys of fields.
func keysOf(fields []field) []string {
	keys := make([]string, len(fields))
	for i, f := range fields {
		keys[i] = f.key
	}
	return keys
}
