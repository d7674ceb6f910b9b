package ui

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestNoRefusalIsDropped reads the package: what [bench.change] returns is told beside the field
// that it was typed in, or by [bench.tell]; a method that returns it hands this duty on to those
// who call it, and nobody lets it drop.
func TestNoRefusalIsDropped(t *testing.T) {
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	set := token.NewFileSet()
	var files []*ast.File
	var owed []string // methods that take the context of an event and return an error
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		file, err := parser.ParseFile(set, name, text, 0)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, file)
		for _, d := range file.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && isNamed(f.Type.Results, "error") && takesContext(f.Type.Params) {
				owed = append(owed, f.Name.Name)
			}
		}
	}
	if !slices.Contains(owed, "change") || len(owed) < 10 {
		t.Errorf("methods that may refuse are %q, want change and those that end in it", owed)
	}
	owes := func(e ast.Expr) bool {
		call, ok := e.(*ast.CallExpr)
		if !ok || len(call.Args) == 0 {
			return false
		}
		method, ok := call.Fun.(*ast.SelectorExpr)
		if !ok || !slices.Contains(owed, method.Sel.Name) {
			return false
		}
		first, ok := call.Args[0].(*ast.Ident)
		return ok && first.Name == "ctx"
	}
	for _, file := range files {
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ExprStmt:
				if owes(n.X) {
					t.Errorf("%s: nobody is told what is refused: use edit, undoable or tell", set.Position(n.Pos()))
				}
			case *ast.AssignStmt:
				if name, ok := n.Lhs[0].(*ast.Ident); ok && name.Name == "_" && owes(n.Rhs[0]) {
					t.Errorf("%s: nobody is told what is refused", set.Position(n.Pos()))
				}
			}
			return true
		})
	}
}

// isNamed reports whether a list of results is one of a name.
func isNamed(list *ast.FieldList, name string) bool {
	if list == nil || len(list.List) != 1 {
		return false
	}
	id, ok := list.List[0].Type.(*ast.Ident)
	return ok && id.Name == name
}

// takesContext reports whether the first of some parameters is named ctx.
func takesContext(list *ast.FieldList) bool {
	return len(list.List) > 0 && len(list.List[0].Names) > 0 && list.List[0].Names[0].Name == "ctx"
}
