package study

import (
	"encoding/json"
	"strings"
	"testing"
)

// TestSchemaDescribesEveryKey: every key of every object of the schema says what it is, in
// its own words or in those of what it refers to, and no words are of a place that is none.
func TestSchemaDescribesEveryKey(t *testing.T) {
	var root object
	if err := json.Unmarshal(Schema(), &root); err != nil {
		t.Fatal(err)
	}
	defs := root["$defs"].(object)
	used := map[string]bool{}
	says := func(s object) string {
		words, _ := s["description"].(string)
		used[words] = true
		return words
	}
	var walk func(s object, place string)
	walk = func(s object, place string) {
		says(s)
		properties, _ := s["properties"].(object)
		for key, v := range properties {
			p, ok := v.(object)
			if !ok {
				continue // a condition forbids it
			}
			words := says(p)
			ref, _ := p["$ref"].(string)
			if target, ok := defs[strings.TrimPrefix(ref, "#/$defs/")].(object); ok && words == "" {
				words = says(target)
			}
			if !strings.HasSuffix(words, ".") {
				t.Errorf("%s.%s is described by %q, want a sentence", place, key, words)
			}
			walk(p, place+"."+key)
		}
		if items, ok := s["items"].(object); ok {
			walk(items, place)
		}
		forms, _ := s["oneOf"].([]any)
		for _, f := range forms {
			walk(f.(object), place)
		}
	}
	walk(root, "study")
	for name, d := range defs {
		walk(d.(object), name)
	}
	for place, words := range schemaWords {
		if !used[strings.ReplaceAll(words, "$travelling", travelling())] {
			t.Errorf("the words for %q are used nowhere", place)
		}
	}
}
