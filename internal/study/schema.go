package study

import (
	"bytes"
	_ "embed"
	"slices"
	"strings"
)

//go:embed schema.json
var schema []byte

// Schema returns the study file's JSON Schema (draft 2020-12). It takes all that
// [Decode] takes; Decode alone knows which parameters a car has. What stands in a list of
// the program is written into it from that list.
func Schema() []byte {
	out := slices.Clone(schema)
	for mark, words := range map[string][]string{
		"LIMIT-KINDS": LimitKey("").Words(), "CLEAR-PARTS": ClearKey("").Words(),
	} {
		out = bytes.ReplaceAll(out, []byte(`"`+mark+`"`), []byte(`"`+strings.Join(words, `", "`)+`"`))
	}
	return bytes.ReplaceAll(out, []byte("LIMIT-TRAVELS"), []byte(travelling()))
}
