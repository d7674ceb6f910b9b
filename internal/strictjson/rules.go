package strictjson

import (
	"fmt"
	"reflect"
	"strings"

	"toewright/internal/spelling"
)

// rules are the conditions that a struct field's rule tag sets on its value:
//
//	required      the key must stand
//	positive      the number must be more than 0
//	notnegative   the number must be 0 or more
//	oneof=a|b     the text must be one of these; a type with a method Words() []string
//	              states them itself
type rules struct {
	required, positive, notNegative bool
	oneOf                           []string
}

// parseRules reads a field's rule tag. A rule that does not exist is a bug in
// the program, and panics.
func parseRules(tag string) rules {
	var r rules
	for _, word := range strings.FieldsFunc(tag, func(c rune) bool { return c == ',' }) {
		name, list, _ := strings.Cut(word, "=")
		switch name {
		case "required":
			r.required = true
		case "positive":
			r.positive = true
		case "notnegative":
			r.notNegative = true
		case "oneof":
			r.oneOf = strings.Split(list, "|")
		default:
			panic("strictjson: no such rule: " + word)
		}
	}
	return r
}

// check returns what is wrong with a bound value, or "".
func (r rules) check(v reflect.Value) string {
	if v.Kind() == reflect.Pointer {
		v = v.Elem()
	}
	switch {
	case r.positive && !(numberOf(v) > 0):
		return fmt.Sprintf("want more than 0, got %s", formatNumber(numberOf(v)))
	case r.notNegative && !(numberOf(v) >= 0):
		return fmt.Sprintf("want 0 or more, got %s", formatNumber(numberOf(v)))
	case r.oneOf != nil:
		return checkWord(v.String(), r.oneOf)
	}
	return ""
}

// numberOf returns the value of a number's field.
func numberOf(v reflect.Value) float64 {
	if v.CanInt() {
		return float64(v.Int())
	}
	return v.Float()
}

// checkWord returns what is wrong with a text that must be one of the words, or "".
func checkWord(text string, words []string) string {
	for _, word := range words {
		if text == word {
			return ""
		}
	}
	message := fmt.Sprintf("want %s, got %q", alternatives(words), clip(text))
	if near := spelling.Nearest(text, words); near != "" && len(words) > 2 {
		message += fmt.Sprintf("; did you mean %q?", near)
	}
	return message
}

// alternatives lists words as "a", "b" or "c".
func alternatives(words []string) string {
	var b strings.Builder
	for i, word := range words {
		switch {
		case i == 0:
		case i == len(words)-1:
			b.WriteString(" or ")
		default:
			b.WriteString(", ")
		}
		fmt.Fprintf(&b, "%q", word)
	}
	return b.String()
}
