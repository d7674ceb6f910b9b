package jsonplan

import (
	"encoding/json"
	"math"
	"reflect"
	"strconv"

	"toewright/internal/engine"
)

// appendFloat writes a float64 as ES6 does, which encoding/json follows: with an exponent
// below 1e-6 and from 1e21 on, a negative one without a leading zero.
func appendFloat(t *text, v reflect.Value) error {
	x := v.Float()
	size := math.Abs(x)
	switch {
	case !(size <= math.MaxFloat64): // also NaN
		_, err := json.Marshal(x)
		return err
	case isPlain(size):
		t.number(x)
		return nil
	case size >= 1e-6 && size < 1e21:
		t.b = strconv.AppendFloat(t.b, x, 'f', -1, 64)
		return nil
	}
	b := strconv.AppendFloat(t.b, x, 'e', -1, 64)
	if n := len(b); b[n-4] == 'e' && b[n-3] == '-' && b[n-2] == '0' {
		b[n-2] = b[n-1]
		b = b[:n-1]
	}
	t.b = b
	return nil
}

// appendNumber writes a figure as [engine.Number.MarshalJSON] does.
func appendNumber(t *text, v reflect.Value) error {
	x := v.Float()
	switch {
	case !engine.Number(x).Valid():
		t.add("null")
	case isPlain(math.Abs(x)):
		t.number(x)
	default:
		t.b = strconv.AppendFloat(t.b, x, 'g', -1, 64)
	}
	return nil
}

func appendBool(t *text, v reflect.Value) error {
	t.b = strconv.AppendBool(t.b, v.Bool())
	return nil
}

func appendInt(t *text, v reflect.Value) error {
	t.b = strconv.AppendInt(t.b, v.Int(), 10)
	return nil
}

// appendString writes a text; one with letters that are written otherwise than they stand is
// left to encoding/json.
func appendString(t *text, v reflect.Value) error {
	s := v.String()
	for i := range len(s) {
		if c := s[i]; c < ' ' || c > '~' || c == '"' || c == '\\' || c == '<' || c == '>' || c == '&' {
			own, err := json.Marshal(s)
			t.b = append(t.b, own...)
			return err
		}
	}
	t.add(`"`)
	t.add(s)
	t.add(`"`)
	return nil
}
