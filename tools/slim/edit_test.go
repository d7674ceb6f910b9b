package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestChanges(t *testing.T) {
	const methods = `package p

import (
	"fmt"
	"strings"
)

type T struct{}

func (T) Stays() string { return strings.ToLower("A") }

func (T) Goes() { fmt.Println() }
`
	for _, tt := range []struct {
		name   string
		change func([]byte) ([]byte, error)
		text   string
		want   string // empty for an error
	}{
		{"replace once", replace("b", "B"), "a b c", "a B c"},
		{"replace what is not there", replace("b", "B"), "a c", ""},
		{"replace twice", replace("b", "B"), "b b", ""},
		{"drop a line", dropLines("two", "three"), "one\ntwo;\n three\nfour\n", "one\nfour\n"},
		{"drop a line that is not there", dropLines("five"), "one\n", ""},
		{"drop two lines", dropLines("t"), "two\nthree\n", ""},
		{"leave a method out", leaveOut("T", "Goes"), methods,
			"package p\n\nimport (\n\t\"strings\"\n)\n\ntype T struct{}\n\nfunc (T) Stays() string { return strings.ToLower(\"A\") }\n"},
		{"leave out a method that is not there", leaveOut("T", "Came"), methods, ""},
		{"leave out a method of another type", leaveOut("S", "Goes"), methods, ""},
		{"leave out of what is no Go", leaveOut("T", "Goes"), "b", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got, err := tt.change([]byte(tt.text))
			if (err == nil) != (tt.want != "") {
				t.Fatalf("error %v, want one: %t", err, tt.want == "")
			}
			if squeezed(string(got)) != squeezed(tt.want) {
				t.Errorf("the text became %q, want %q", got, tt.want)
			}
		})
	}
}

// squeezed returns a text without its empty lines.
func squeezed(text string) string {
	var kept []string
	for line := range strings.Lines(text) {
		if strings.TrimSpace(line) != "" {
			kept = append(kept, line)
		}
	}
	return strings.Join(kept, "")
}

func TestApplyKeepsTheFileOnAnError(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "letter.txt")
	if err := os.WriteFile(file, []byte("a c"), 0o666); err != nil {
		t.Fatal(err)
	}
	err := edit{"letter.txt", replace("b", "B")}.apply(dir)
	if err == nil || !strings.Contains(err.Error(), "letter.txt") {
		t.Errorf("apply = %v, want an error that names the file", err)
	}
	if got, _ := os.ReadFile(file); string(got) != "a c" {
		t.Errorf("the file holds %q", got)
	}
}
