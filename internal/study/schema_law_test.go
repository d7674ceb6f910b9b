package study

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
)

// wrongs are put in the place of every value: some fit some places.
var wrongs = []any{nil, "text", true, -1.5, 0.0, 2e9, []any{}, object{}}

// mutants calls each with texts that differ from a document in one place: a value that is
// another, a key that is missing, one that is not known. Of a list of numbers or of
// objects the first item stands for all.
func mutants(doc any, each func(place string)) {
	var walk func(node any, place string)
	try := func(place string, old any, set func(any)) {
		for _, wrong := range wrongs {
			set(wrong)
			each(fmt.Sprintf("%s = %v", place, wrong))
		}
		set(old)
		walk(old, place)
	}
	walk = func(node any, place string) {
		switch n := node.(type) {
		case object:
			for _, key := range slices.Sorted(maps.Keys(n)) {
				old := n[key]
				try(place+"."+key, old, func(v any) { n[key] = v })
				delete(n, key)
				each(place + " without " + key)
				n[key] = old
			}
			n["unheardOf"] = 1
			each(place + " with an unheard-of key")
			delete(n, "unheardOf")
		case []any:
			if len(n) > 0 {
				try(place+".0", n[0], func(v any) { n[0] = v })
			}
		}
	}
	walk(doc, "study")
}

// formErrors are how Decode speaks of what is wrong in form.
var formErrors = []string{"unknown key", "missing", "want a ", "want an ", "want true", "want more than", "want 0 or more"}

// TestSchemaAndDecodeAgree: of every study with one place spoilt the schema takes what
// Decode takes, and refuses what Decode refuses for its form.
func TestSchemaAndDecodeAgree(t *testing.T) {
	s := compiledSchema(t)
	texts, kinds := map[string][]byte{"small": []byte(smallText)}, map[string]bool{}
	for _, template := range Templates() {
		kind := template.Document().Suspension.Type
		if kinds[kind] {
			continue
		}
		kinds[kind] = true
		text, err := Encode(template.Document())
		if err != nil {
			t.Fatal(err)
		}
		texts[template.Key] = text
	}
	for name, text := range texts {
		t.Run(name, func(t *testing.T) {
			var doc object
			if err := json.Unmarshal(text, &doc); err != nil {
				t.Fatal(err)
			}
			mutants(doc, func(place string) {
				spoilt, err := json.Marshal(doc)
				if err != nil {
					t.Fatal(err)
				}
				_, refused := Decode(spoilt)
				against := validate(t, s, spoilt)
				if refused == nil && against != nil {
					t.Errorf("%s: Decode takes it, the schema does not: %v", place, against)
				}
				if refused != nil && against == nil && slices.ContainsFunc(formErrors, func(w string) bool { return strings.Contains(refused.Error(), w) }) {
					t.Errorf("%s: the schema takes it, Decode does not: %v", place, refused)
				}
			})
		})
	}
}
