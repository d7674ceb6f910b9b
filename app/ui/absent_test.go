package ui

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// TestChildrenKeepTheirNumbers reads the package: no child of an element may come and go without
// keeping its number. A list stands behind all else in its element, or is many; in a table, which
// takes no element between its own, what stands behind a list is no field.
func TestChildrenKeepTheirNumbers(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil || len(files) == 0 {
		t.Fatalf("%d files, error %v", len(files), err)
	}
	seen := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		set := token.NewFileSet()
		tree, err := parser.ParseFile(set, file, text, 0)
		if err != nil {
			t.Fatal(err)
		}
		elsed := map[ast.Expr]bool{} // what an Else follows
		ast.Inspect(tree, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.FuncDecl:
				returnsChild(t, set, n.Type, n.Body)
			case *ast.FuncLit:
				returnsChild(t, set, n.Type, n.Body)
			case *ast.CallExpr:
				switch name, of := called(n); {
				case name == "Else" || name == "ElseIf" && elsed[n]:
					elsed[of] = true
				case (name == "If" || name == "ElseIf") && !elsed[n]:
					t.Errorf("%s: a condition without Else: use only", set.Position(n.Pos()))
				case name == "Body":
					seen++
					if isTable(of) {
						break
					}
					for i, child := range n.Args[:max(0, len(n.Args)-1)] {
						if isList(child) {
							t.Errorf("%s: child %d of %d is a list: use many, or put it last", set.Position(child.Pos()), i+1, len(n.Args))
						}
					}
				}
			}
			return true
		})
	}
	if seen < 300 {
		t.Errorf("%d elements with children seen, want the page's", seen)
	}
}

// called returns the name of the method or function that is called, and of what it is.
func called(n *ast.CallExpr) (string, ast.Expr) {
	if s, ok := n.Fun.(*ast.SelectorExpr); ok {
		return s.Sel.Name, s.X
	}
	return "", nil
}

// isTable reports whether an element is a part of a table or of a list.
func isTable(e ast.Expr) bool {
	call, ok := e.(*ast.CallExpr)
	if !ok {
		return false
	}
	name, of := called(call)
	return slices.Contains([]string{"Tr", "TBody", "Ul"}, name) || of != nil && isTable(of)
}

// isList reports whether a child is app.Range with its Slice or Map.
func isList(child ast.Expr) bool {
	call, ok := child.(*ast.CallExpr)
	if !ok {
		return false
	}
	name, of := called(call)
	return name == "Range" || of != nil && isList(of)
}

// returnsChild refuses a function whose result is a child and can be none.
func returnsChild(t *testing.T, set *token.FileSet, kind *ast.FuncType, body *ast.BlockStmt) {
	if body == nil || kind.Results == nil || len(kind.Results.List) != 1 {
		return
	}
	if result, ok := kind.Results.List[0].Type.(*ast.SelectorExpr); !ok || result.Sel.Name != "UI" {
		return
	}
	ast.Inspect(body, func(n ast.Node) bool {
		if _, ok := n.(*ast.FuncLit); ok {
			return false
		}
		if r, ok := n.(*ast.ReturnStmt); ok {
			if name, ok := r.Results[0].(*ast.Ident); ok && name.Name == "nil" {
				t.Errorf("%s: a child that is not there: return nothing()", set.Position(r.Pos()))
			}
		}
		return true
	})
}
