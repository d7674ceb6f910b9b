package strictjson

import "testing"

func TestTreeErrorf(t *testing.T) {
	tree, err := Parse([]byte("{\"a\": [1, {\"b.c\": 2,\n \"b\": {\"d\": 3}}]}"), Limits{})
	if err != nil {
		t.Fatal(err)
	}
	tests := []struct{ name, path, want string }{
		{"list item", "a.0", "1:8: a.0: bad 7"},
		{"key with a dot", "a.1.b.c", "1:19: a.1.b.c: bad 7"},
		{"key without", "a.1.b.d", "2:13: a.1.b.d: bad 7"},
		{"missing key", "a.1.b.e", "2:7: a.1.b.e: bad 7"},
		{"beyond the list", "a.9", "1:7: a.9: bad 7"},
		{"the whole", "", "1:1: bad 7"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := tree.Errorf(tt.path, "bad %d", 7).Error(); got != tt.want {
				t.Errorf("Errorf(%q) = %q, want %q", tt.path, got, tt.want)
			}
		})
	}
}
