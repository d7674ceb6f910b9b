package strictjson

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

func TestParse(t *testing.T) {
	tree, err := Parse([]byte("\xef\xbb\xbf"+` {"a": [1, -2.5e1, "x\u00e9"], "b": {"c": true, "d": null}} `), Limits{})
	if err != nil {
		t.Fatal(err)
	}
	want := &Node{Kind: Object, Members: []Member{
		{Key: "a", Value: &Node{Kind: Array, Items: []*Node{
			{Kind: Number, Number: 1},
			{Kind: Number, Number: -25},
			{Kind: String, Text: "xé"},
		}}},
		{Key: "b", Value: &Node{Kind: Object, Members: []Member{
			{Key: "c", Value: &Node{Kind: Bool, Bool: true}},
			{Key: "d", Value: &Node{Kind: Null}},
		}}},
	}}
	ignoreOffsets := cmp.Options{cmpopts.IgnoreFields(Node{}, "Offset"), cmpopts.IgnoreFields(Member{}, "Offset")}
	if diff := cmp.Diff(want, tree.Root, ignoreOffsets); diff != "" {
		t.Errorf("Parse (-want +got):\n%s", diff)
	}
}

func TestParseOffsets(t *testing.T) {
	const text = "{ \"a\" : [ 10 , \"b\" ] ,\n\"c\":\ttrue}"
	tree, err := Parse([]byte(text), Limits{})
	if err != nil {
		t.Fatal(err)
	}
	list := tree.Root.Get("a")
	tests := []struct {
		name, start string
		offset      int
	}{
		{"key a", `"a"`, tree.Root.Members[0].Offset},
		{"list", `[ 10`, list.Offset},
		{"first item", `10`, list.Items[0].Offset},
		{"second item", `"b"`, list.Items[1].Offset},
		{"key c", `"c"`, tree.Root.Members[1].Offset},
		{"flag", `true`, tree.Root.Get("c").Offset},
	}
	for _, tt := range tests {
		if !strings.HasPrefix(text[tt.offset:], tt.start) {
			t.Errorf("%s starts at %q, want %q", tt.name, text[tt.offset:], tt.start)
		}
	}
}

func TestParseErrors(t *testing.T) {
	limits := Limits{Bytes: 60, Depth: 3, Values: 8, Magnitude: 1e6}
	tests := []struct{ name, text, want string }{
		{"empty", " \n", "input is empty"},
		{"too long", strings.Repeat(" ", 61), "input of 61 bytes is too long, want at most 60"},
		{"not text", "\"\xff\"", "input is not UTF-8 text"},
		{"missing comma", "{\n \"a\": 1 \"b\": 2}", "2:9: wrong JSON: invalid character '\"' after object key:value pair"},
		{"comma too many", "[1,]", "1:4: wrong JSON: invalid character ']' looking for beginning of value"},
		{"cut short", "{\"a\": [1", "1:8: wrong JSON: unexpected end of JSON input"},
		{"text behind", "{} x", "1:4: wrong JSON: invalid character 'x' after top-level value"},
		{"not a number", "[NaN]", "1:2: wrong JSON: invalid character 'N' looking for beginning of value"},
		{"key twice", "{\"a\": {\"b\": 1,\n\"b\": 2}}", "2:1: a.b: key stands twice; remove one"},
		{"beyond floating point", `{"a": [0, 1e999]}`, "1:11: a.1: the number 1e999 is too large, want at most 1e+06 either way"},
		{"beyond the magnitude", `[-1000001]`, "1:2: 0: the number -1000001 is too large, want at most 1e+06 either way"},
		{"too deep", `[[[[]]]]`, "1:4: 0.0.0: nested deeper than 3 levels"},
		{"too many", `[1,2,3,4,5,6,7,8]`, "1:16: 7: more than 8 values"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Parse([]byte(tt.text), limits)
			if err == nil || err.Error() != tt.want {
				t.Errorf("Parse(%q) = %v, want %s", tt.text, err, tt.want)
			}
		})
	}
}

func TestParseAtLimits(t *testing.T) {
	text := `[[[1000000, 2, 3, 4, 5]]]` // 8 values, 3 levels, 25 bytes
	if _, err := Parse([]byte(text), Limits{Bytes: 25, Depth: 3, Values: 8, Magnitude: 1e6}); err != nil {
		t.Errorf("Parse(%s) = %v, want no error at the limits", text, err)
	}
}
