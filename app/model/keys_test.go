package model

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"toewright/internal/study"
)

// schemaKeys lists the keys of the schema as [study.Document.Keys] writes them, those of
// values alone: an object's own key is that of what stands in it.
func schemaKeys(t *testing.T) []string {
	t.Helper()
	var s map[string]any
	if err := json.Unmarshal(study.Schema(), &s); err != nil {
		t.Fatal(err)
	}
	defs := s["$defs"].(map[string]any)
	var keys []string
	var walk func(n map[string]any, key string, seen []string) bool
	walk = func(n map[string]any, key string, seen []string) (inner bool) {
		if ref, ok := n["$ref"].(string); ok {
			name := strings.TrimPrefix(ref, "#/$defs/")
			if slices.Contains(seen, name) {
				return true
			}
			inner = walk(defs[name].(map[string]any), key, append(slices.Clone(seen), name))
		}
		properties, _ := n["properties"].(map[string]any)
		for name, v := range properties {
			if name == "left" || name == "right" {
				name = "side"
			}
			sub := name
			if key != "" {
				sub = key + "." + name
			}
			object, ok := v.(map[string]any)
			if !ok {
				continue // a condition
			}
			if !walk(object, sub, seen) && !slices.Contains(keys, sub) {
				keys = append(keys, sub)
			}
			inner = true
		}
		if items, ok := n["items"].(map[string]any); ok && walk(items, key+"[]", seen) {
			inner = true
		}
		for _, way := range []string{"oneOf", "anyOf", "allOf"} {
			list, _ := n[way].([]any)
			for _, v := range list {
				if walk(v.(map[string]any), key, seen) {
					inner = true
				}
			}
		}
		for _, way := range []string{"then", "else"} {
			if v, ok := n[way].(map[string]any); ok && key != "" && walk(v, key, seen) {
				inner = true
			}
		}
		return inner
	}
	walk(s, "", nil)
	slices.Sort(keys)
	return keys
}

// pointKeys lists the keys of all hardpoints of all kinds of car.
func pointKeys(t *testing.T) map[string]bool {
	t.Helper()
	index := regexp.MustCompile(`\.\d+`)
	keys := map[string]bool{}
	for _, template := range study.Templates() {
		d := template.Start()
		for _, p := range d.Points() {
			path := strings.NewReplacer(".left", ".side", ".right", ".side").Replace(d.PointPath(p))
			keys[index.ReplaceAllString(path, "[]")] = true
			keys[strings.TrimSuffix(index.ReplaceAllString(path, "[]"), "[]")] = true // of a list of two places
		}
	}
	return keys
}

// TestEveryKeyHasItsPlace ranges over the schema: each key has a field on the page, or is
// among those that the page says it keeps, and not both.
func TestEveryKeyHasItsPlace(t *testing.T) {
	keys, points := schemaKeys(t), pointKeys(t)
	if len(keys) < 120 || len(points) < 20 {
		t.Fatalf("%d keys and %d points: the schema is read wrongly", len(keys), len(points))
	}
	for _, key := range keys {
		field := points[key] || slices.ContainsFunc(keysWithField, func(k string) bool { return isKeyUnder(key, k) })
		kept := slices.ContainsFunc(keysUntouched, func(k struct{ key, name string }) bool { return isKeyUnder(key, k.key) })
		if field == kept {
			t.Errorf("%s: has a field: %t, is said to be kept: %t; want one of the two", key, field, kept)
		}
	}
	stands := func(key string) bool {
		return slices.ContainsFunc(keys, func(k string) bool { return isKeyUnder(k, key) })
	}
	for _, key := range keysWithField {
		if !stands(key) {
			t.Errorf("%s is no key of the schema", key)
		}
	}
	for _, k := range keysUntouched {
		if !stands(k.key) {
			t.Errorf("%s is no key of the schema", k.key)
		}
	}
}

// TestFieldsAreOfThePage: for every key that is said to have a field, page or model set
// its value somewhere.
func TestFieldsAreOfThePage(t *testing.T) {
	var code strings.Builder
	for _, folder := range []string{".", "../ui"} {
		files, err := filepath.Glob(filepath.Join(folder, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range files {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if !strings.HasSuffix(file, "_test.go") {
				code.Write(text)
			}
		}
	}
	for _, key := range keysWithField {
		name := key[strings.LastIndexAny(key, ".")+1:]
		if name == "side" || name == "sources" || strings.Contains(key, "values") {
			continue // of the key above, of every edit, of the keypad
		}
		goName := strings.ToUpper(name[:1]) + strings.TrimSuffix(name[1:], "[]")
		for from, to := range map[string]string{"StudAxes": "StudAxis", "Sd": "SD", "SlopeSd": "SlopeSD", "Of": "Of", "Springs": "Spring"} {
			if goName == from {
				goName = to
			}
		}
		// set by itself, in a literal, or through its address
		if !regexp.MustCompile(`\.` + goName + `\b(\[[^\]]*\])?(, [\w.]+)* [*+-]?= |\.` + goName + ` = |\b` + goName + `: |&[\w.()*]+\.` + goName + `\b`).MatchString(code.String()) {
			t.Errorf("%s: nothing sets %s", key, goName)
		}
	}
}

// TestUntouchedIsKept edits a study that has all the keys without a field, and finds them
// as they were, and said to be kept.
func TestUntouchedIsKept(t *testing.T) {
	text, err := os.ReadFile("../../testdata/kept/studies/everything.json")
	if err != nil {
		t.Fatal(err)
	}
	d, err := study.Decode(text)
	if err != nil {
		t.Fatal(err)
	}
	s := Open(d)
	before := keptValues(t, s.Document())
	if names := KeptUntouched(s.Document()); len(names) < 10 {
		t.Errorf("said to be kept: %q", names)
	}
	if names := KeptUntouched(study.Templates()[0].Start()); len(names) > 0 {
		t.Errorf("of a new study: %q", names)
	}
	for _, p := range PointRows(s.Document(), study.Left) {
		if p.at != nil {
			continue // arm face and mounts are looked at below
		}
		if err := s.SetPlace(p, 0, p.Place[0]+0.5); err != nil {
			t.Fatal(err)
		}
	}
	for _, edit := range []func() error{
		func() error { return s.Edit("name", "", func(d *study.Document) { d.Name = "another" }) },
		func() error { return s.EditYield(func(y *study.Yield) { y.Limit = 0.2 }) },
		func() error { return s.EditSearch("f", "", func(f *study.Search) { f.Minimise = "peak" }) },
		func() error { return s.SetDisplay("units", func(v *study.Display) { v.Units = study.Inch }) },
		func() error { return s.EditAdvise(func(a *study.Advise) { a.Step = 2 }) },
	} {
		if err := edit(); err != nil {
			t.Fatal(err)
		}
	}
	for key, value := range keptValues(t, s.Document()) {
		if before[key] != value {
			t.Errorf("%s was %s, and is %s", key, before[key], value)
		}
		delete(before, key)
	}
	if len(before) > 0 {
		t.Errorf("gone: %v", before)
	}
}

// keptValues returns what a study has at the top-level keys and corners without a field.
func keptValues(t *testing.T, d *study.Document) map[string]string {
	t.Helper()
	values := map[string]string{}
	add := func(key string, v any) {
		text, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		values[key] = string(text)
	}
	add("priors", d.Priors)
	add("damper", d.Suspension.Left.Damper)
	add("armFace", d.Suspension.Left.ArmFace)
	add("tie rod", d.TieRod)
	for _, k := range d.Candidates {
		add("note of "+k.Name, k.Note)
	}
	if f := d.Search; f != nil {
		add("weights", f.Weights)
		add("target right", f.TargetRight)
		add("seed", f.Seed)
		add("scenarios", f.Scenarios)
	}
	if d.Yield != nil {
		add("yield", []any{d.Yield.Figure, d.Yield.Candidate, d.Yield.Cars, d.Yield.Seed})
	}
	for _, r := range d.Readings {
		add("zero", r.Zero)
		add("note", r.Note)
	}
	add("tolerances", d.Tolerances)
	add("catalogue", d.Catalogue)
	if d.Advise != nil {
		add("advise", []any{d.Advise.Min, d.Advise.Max})
	}
	return values
}
