package study

import (
	_ "embed"
	"slices"
)

//go:embed schema.json
var schema []byte

// Schema returns the study file's JSON Schema (draft 2020-12). It takes all that
// [Decode] takes; Decode alone knows which parameters a car has.
func Schema() []byte { return slices.Clone(schema) }
