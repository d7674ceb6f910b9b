package plot

import (
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// The package draws what it is given: it knows neither the solver nor the page, so
// that both a component and the report can use it. Beside the way to write a number it
// imports the standard library alone, whose paths have no dot, and of that nothing of the
// browser.
func TestImportsOnlyTheStandardLibrary(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil || len(files) == 0 {
		t.Fatalf("no source files: %v", err)
	}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		source, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		for _, spec := range source.Imports {
			path, _ := strconv.Unquote(spec.Path.Value)
			root, _, _ := strings.Cut(path, "/")
			if strings.Contains(root, ".") || root == "toewright" && path != "toewright/internal/number" || path == "syscall/js" {
				t.Errorf("%s imports %s", file, path)
			}
		}
	}
}
