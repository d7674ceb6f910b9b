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
func appendFloat(b []byte, x float64) ([]byte, error) {
	size := math.Abs(x)
	switch {
	case !(size <= math.MaxFloat64): // also NaN
		_, err := json.Marshal(x)
		return b, err
	case size == 0 || size >= 1e-6 && size < 1e21:
		return strconv.AppendFloat(b, x, 'f', -1, 64), nil
	}
	b = strconv.AppendFloat(b, x, 'e', -1, 64)
	if n := len(b); b[n-4] == 'e' && b[n-3] == '-' && b[n-2] == '0' {
		b[n-2] = b[n-1]
		b = b[:n-1]
	}
	return b, nil
}

// appendNumber writes a figure as [engine.Number.MarshalJSON] does.
func appendNumber(b []byte, v reflect.Value) ([]byte, error) {
	x := v.Float()
	if !engine.Number(x).Valid() {
		return append(b, "null"...), nil
	}
	return strconv.AppendFloat(b, x, 'g', -1, 64), nil
}

func appendBool(b []byte, v reflect.Value) ([]byte, error) {
	return strconv.AppendBool(b, v.Bool()), nil
}

func appendInt(b []byte, v reflect.Value) ([]byte, error) {
	return strconv.AppendInt(b, v.Int(), 10), nil
}

// appendString writes a text; one with letters that are written otherwise than they stand is
// left to encoding/json.
func appendString(b []byte, s string) ([]byte, error) {
	for i := range len(s) {
		if c := s[i]; c < ' ' || c > '~' || c == '"' || c == '\\' || c == '<' || c == '>' || c == '&' {
			text, err := json.Marshal(s)
			return append(b, text...), err
		}
	}
	b = append(b, '"')
	b = append(b, s...)
	return append(b, '"'), nil
}
