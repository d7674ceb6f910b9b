package api

import (
	"io"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"toewright/internal/calls"
)

// describedURL is the name under which the tests know the document.
const describedURL = "mem:///openapi.json"

func compiler(t *testing.T) (*jsonschema.Compiler, map[string]any) {
	t.Helper()
	_, text := get(t, New(Config{Version: "v1"}), base+"openapi.json")
	document, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(describedURL, document); err != nil {
		t.Fatal(err)
	}
	return c, document.(map[string]any)
}

// schema compiles a schema of the document.
func schema(t *testing.T, c *jsonschema.Compiler, name string) *jsonschema.Schema {
	t.Helper()
	s, err := c.Compile(describedURL + "#/components/schemas/" + name)
	if err != nil {
		t.Fatalf("schema %s: %v", name, err)
	}
	return s
}

func TestAnswersFitTheirSchemas(t *testing.T) {
	c, _ := compiler(t)
	tests := []struct{ path, name string }{
		{"sweep", "SweepResult"},
		{"compare", "CompareResult"},
		{"search", "SearchResult"},
		{"sweep?motion=up", "Error"},
	}
	for name, text := range map[string]string{
		"ChangeSet": `{"name": "a", "changes": {"camber": -1}, "hold": ["toe"]}`,
		"Envelope":  `{"study": {"digest": "sha256-0"}, "changes": {}}`,
		"Study":     saloon,
	} {
		v, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		if err := schema(t, c, name).Validate(v); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, tt := range tests {
		r := post(t, New(Config{}), tt.path, saloon)
		body, err := io.ReadAll(r.Body)
		if err != nil {
			t.Fatal(err)
		}
		answer, err := jsonschema.UnmarshalJSON(strings.NewReader(string(body)))
		if err != nil {
			t.Fatal(err)
		}
		if err := schema(t, c, tt.name).Validate(answer); err != nil {
			t.Errorf("%s: %v", tt.path, err)
		}
	}
}

func TestSchemasRefuseOtherThings(t *testing.T) {
	c, _ := compiler(t)
	tests := []struct{ name, document string }{
		{"SweepResult", `{"units": "mm"}`},
		{"SearchResult", `{"best": 3}`},
		{"Error", `{"error": "text"}`},
		{"Study", `{"format": "toewright/1"}`},
		{"ChangeSet", `{"change": {}}`},
		{"Envelope", `{"changes": {}}`},
		{"Envelope", `{"study": {"digest": 3}}`},
	}
	for _, tt := range tests {
		v, err := jsonschema.UnmarshalJSON(strings.NewReader(tt.document))
		if err != nil {
			t.Fatal(err)
		}
		if schema(t, c, tt.name).Validate(v) == nil {
			t.Errorf("schema %s takes %s", tt.name, tt.document)
		}
	}
}

func TestDocumentListsEveryCall(t *testing.T) {
	_, document := compiler(t)
	paths := document["paths"].(map[string]any)
	for _, c := range calls.Public() {
		path, ok := paths[base+c.Name].(map[string]any)
		if !ok {
			t.Errorf("no path for %s", c.Name)
			continue
		}
		operation := path["post"].(map[string]any)
		options := len(c.New().Options)
		if got := len(operation["parameters"].([]any)); got != options || got == 0 {
			t.Errorf("%s lists %d options, want %d", c.Name, got, options)
		}
		if got := len(operation["responses"].(map[string]any)); got != 1+len(refusals) {
			t.Errorf("%s lists %d answers, want %d", c.Name, got, 1+len(refusals))
		}
	}
}
