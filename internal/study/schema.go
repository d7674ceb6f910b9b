package study

import (
	"cmp"
	"encoding/json"
	"reflect"
	"strings"

	"toewright/internal/strictjson"
	"toewright/solver"
)

// Schema returns the study file's JSON Schema (draft 2020-12), made of the types of this
// package and their rules. It takes all that [Decode] takes; Decode alone knows which
// parameters a car has.
func Schema() []byte {
	w := &schemaWriter{defs: object{}}
	root := w.object(reflect.TypeFor[Document](), "study")
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["$id"] = "urn:toewright:study:1"
	root["title"] = "Toewright study"
	root["$defs"] = w.defs
	text, err := json.MarshalIndent(root, "", "  ")
	if err != nil {
		panic(err) // Nothing here comes from a caller.
	}
	return append(text, '\n')
}

// object is a JSON object.
type object = map[string]any

// schemaWriter writes schemas of types; each struct is defined once, by the name of its
// type.
type schemaWriter struct{ defs object }

// define returns a reference to what a schema of this name is, and makes it where it is
// not there yet.
func (w *schemaWriter) define(name string, make func() object) object {
	if _, ok := w.defs[name]; !ok {
		w.defs[name] = nil // for one that holds itself
		w.defs[name] = make()
	}
	return object{"$ref": "#/$defs/" + name}
}

// object returns the schema of a struct, whose words stand under a name.
func (w *schemaWriter) object(t reflect.Type, name string) object {
	properties, required := object{}, []string{}
	for _, f := range strictjson.Fields(t) {
		properties[f.Key] = ruled(described(w.field(f, name), name+"."+f.Key), name+"."+f.Key)
		if f.Required {
			required = append(required, f.Key)
		}
	}
	return ruled(described(closed(properties, required), name), name)
}

// closed is an object of these keys and no others.
func closed(properties object, required []string) object {
	out := object{"type": "object", "additionalProperties": false, "properties": properties}
	if len(required) > 0 {
		out["required"] = required
	}
	return out
}

// described adds the words for a place, where there are any, to its schema.
func described(s object, place string) object {
	if words := cmp.Or(schemaWords[place], armWords(place)); words != "" {
		s["description"] = strings.ReplaceAll(words, "$travelling", travelling())
	}
	return s
}

// field returns the schema of what stands at a key.
func (w *schemaWriter) field(f strictjson.Field, name string) object {
	if special, ok := specialKeys[f.Key]; ok {
		return w.special(special)
	}
	if name+"."+f.Key == "study.format" {
		return object{"const": Format}
	}
	if f.OneOf != nil {
		return object{"enum": f.OneOf}
	}
	s := w.of(f.Type)
	if f.Positive || f.NotNegative {
		delete(s, "minimum")
		s[map[bool]string{true: "exclusiveMinimum", false: "minimum"}[f.Positive]] = 0
	}
	return s
}

// of returns the schema of a type.
func (w *schemaWriter) of(t reflect.Type) object {
	if own, ok := ownForms()[t]; ok {
		return w.special(own)
	}
	switch t.Kind() {
	case reflect.Pointer:
		return w.of(t.Elem())
	case reflect.Struct:
		name := lowerFirst(t.Name())
		return w.define(name, func() object { return w.object(t, name) })
	case reflect.Slice:
		return object{"type": "array", "items": w.of(t.Elem())}
	case reflect.Array:
		return object{"type": "array", "items": w.of(t.Elem()), "minItems": t.Len(), "maxItems": t.Len()}
	case reflect.Map:
		return object{"type": "object", "additionalProperties": w.of(t.Elem())}
	case reflect.Float64:
		return bounded("number")
	case reflect.Int:
		return bounded("integer")
	case reflect.Bool:
		return object{"type": "boolean"}
	}
	return object{"type": "string"}
}

// bounded is a number of no more than the magnitude that files may have.
func bounded(kind string) object {
	return object{"type": kind, "minimum": -limits.Magnitude, "maximum": limits.Magnitude}
}

func lowerFirst(name string) string { return strings.ToLower(name[:1]) + name[1:] }

// special is a form that no type says: its name among the definitions, and what it is.
type special struct {
	name string
	form func(*schemaWriter) object
}

func (w *schemaWriter) special(s special) object {
	return w.define(s.name, func() object { return described(s.form(w), s.name) })
}

// specialKeys are the keys whose texts say more than that they are texts.
var specialKeys = map[string]special{
	"parameter": parameterForm,
	"hold": {"hold", func(*schemaWriter) object {
		return object{"type": "array", "items": object{"enum": []string{"toe", "camber", "caster"}}}
	}},
}

var parameterForm = special{"parameter", func(*schemaWriter) object {
	return object{"type": "string", "pattern": `^[a-z][A-Za-z]*(\.[A-Za-z0-9]+)*(@left|@right)?$`}
}}

// ownForms returns the forms of types that read themselves, or that are named for their
// words.
func ownForms() map[reflect.Type]special {
	return map[reflect.Type]special{
		reflect.TypeFor[Suspension](): {"suspension", (*schemaWriter).suspension},
		reflect.TypeFor[Vec3]():       {"vector", func(w *schemaWriter) object { return w.of(reflect.TypeFor[[3]float64]()) }},
		reflect.TypeFor[Fraction]():   {"fraction", func(*schemaWriter) object { return object{"enum": []any{false, true, 16, 32, 64}} }},
		reflect.TypeFor[Sources](): {"sources", func(*schemaWriter) object {
			return object{"type": "object", "additionalProperties": object{"enum": knownSources}}
		}},
		reflect.TypeFor[Changes](): {"changes", func(w *schemaWriter) object {
			return object{"type": "object", "propertyNames": w.special(parameterForm), "additionalProperties": bounded("number")}
		}},
		reflect.TypeFor[Stiffness](): {"stiffness", func(*schemaWriter) object {
			return object{"type": "object", "additionalProperties": object{"type": "number", "exclusiveMinimum": 0}}
		}},
		reflect.TypeFor[bothSides](): {"leftRightNumber", func(*schemaWriter) object {
			both := closed(object{"left": described(bounded("number"), "side.left"), "right": described(bounded("number"), "side.right")}, []string{"left", "right"})
			return object{"oneOf": []object{bounded("number"), both}}
		}},
		reflect.TypeFor[sideForm](): {"side", func(*schemaWriter) object { return object{"enum": []Side{Left, Right}} }},
	}
}

// suspension is one of the forms of the kinds that can be solved.
func (w *schemaWriter) suspension() object {
	var names []string
	var forms []object
	for _, kind := range solver.Kinds() {
		names = append(names, kind.Name)
		forms = append(forms, w.define(kind.Name, func() object { return w.kind(kind) }))
	}
	return object{
		"type": "object", "required": []string{"type"}, "oneOf": forms,
		"properties": object{"type": described(object{"enum": names}, "suspension.type")},
	}
}

// kind is a suspension of one kind.
func (w *schemaWriter) kind(kind *solver.Kind) object {
	s := &Suspension{}
	v := shapeWriter{w, kind, "suspension", s.cornersShape(&cornerForm{kind: kind}, &cornerForm{kind: kind})}
	if isAxle(kind) {
		v = shapeWriter{w, kind, "axle", newAxleForm(kind).shape(s, kind)}
	}
	out := v.below("")
	out["properties"].(object)["type"] = described(object{"const": kind.Name}, "suspension.type")
	return described(out, kind.Name)
}
