//go:build unix

package main

import (
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// module is a small module whose tests see half of what it does.
var module = map[string]string{
	"go.mod": "module m\n\ngo 1.24\n",
	"p/p.go": `package p

func seen(a, b int) int { return a + b }

func unseen(a, b int) int { return a - b }

func seenToo(n *int) {
	*n = 4
}
`,
	"p/p_test.go": `package p

import "testing"

func TestSeen(t *testing.T) {
	n := 0
	if seenToo(&n); n != 4 || seen(1, 2) != 3 || unseen(0, 0) != 0 {
		t.Error("wrong")
	}
}
`,
	"q/q.go":      "package q\n",
	"q/q_test.go": "package q\n\nimport (\n\t_ \"m/p\"\n\t\"testing\"\n)\n\nfunc TestNothing(t *testing.T) {}\n",
}

// inModule makes the module and goes there.
func inModule(t *testing.T, files map[string]string) {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	t.Chdir(dir)
}

func TestCheck(t *testing.T) {
	inModule(t, module)
	c := check{seed: 1, count: 100}
	got, err := c.runSuite(t.Context(), &suite{folder: "p", slow: "^$", users: []string{"q"}})
	if err != nil {
		t.Fatal(err)
	}
	if len(got) != 3 {
		t.Errorf("%d mutants, want one of each of three statements", len(got))
	}
	for _, v := range got {
		if lives := v.by == ""; lives != (v.function == "unseen") {
			t.Errorf("%s: %s", v.id(), v.fate())
		}
	}
}

func TestCheckWantsTestsThatPass(t *testing.T) {
	files := maps.Clone(module)
	files["q/q_test.go"] = "package q\n\nimport (\n\t_ \"m/p\"\n\t\"testing\"\n)\n\nfunc TestBroken(t *testing.T) { t.Fail() }\n"
	inModule(t, files)
	c := check{seed: 1, count: 1}
	_, err := c.runSuite(t.Context(), &suite{folder: "p", slow: "^$", users: []string{"q"}})
	if err == nil || !strings.Contains(err.Error(), "TestBroken") {
		t.Errorf("a module with a broken test: %v, want an error that names it", err)
	}
}
