package strictjson

import (
	"bytes"
	"encoding/json"
	"testing"
)

// FuzzParse checks that the parser never panics, takes in nothing that
// encoding/json refuses, and that what it takes in prints and parses to itself.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{fullText, "[]", `{"a":{"a":{}}}`, "[1e5,-0,\"\\ud800\"]", "{\"a\":1,}", "\xef\xbb\xbf1"} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		tree, err := Parse(data, Limits{Bytes: 1 << 16, Depth: 20, Values: 1000, Magnitude: 1e9})
		if err != nil {
			return
		}
		if !json.Valid(bytes.TrimPrefix(data, byteOrderMark)) {
			t.Fatalf("Parse accepted %q, encoding/json does not", data)
		}
		text := Format(tree.Root)
		again, err := Parse(text, Limits{})
		if err != nil {
			t.Fatalf("Format gave %q, which does not parse: %v", text, err)
		}
		if twice := Format(again.Root); !bytes.Equal(text, twice) {
			t.Fatalf("Format gave %q, then %q", text, twice)
		}
	})
}
