//go:build unix

package main

import (
	"go/ast"
	"go/token"
	"strings"
)

// words are packages and functions that take words for a reader.
var words = map[string]bool{"fmt": true, "errors": true, "panic": true, "problemf": true, "wrongf": true}

// isNoBehaviour reports whether a node is code whose change does not count: a text for
// the reader, what is returned beside an error, a hint of how much memory to take, a type, a constant, which is no statement.
func isNoBehaviour(n ast.Node, above []ast.Node) bool {
	switch n := n.(type) {
	case *ast.ArrayType, *ast.FuncType, *ast.FieldList:
		return true
	case *ast.GenDecl:
		return n.Tok != token.VAR
	}
	if r, ok := above[len(above)-1].(*ast.ReturnStmt); ok && besideError(n, r) {
		return true
	}
	call, ok := above[len(above)-1].(*ast.CallExpr)
	if !ok || n == call.Fun {
		return false
	}
	return takesWords(call) || calledName(call) == "make" && len(call.Args) == 3 && n == call.Args[2]
}

// takesWords reports whether a call takes words for a reader.
func takesWords(call *ast.CallExpr) bool {
	return words[calledName(call)] || strings.HasSuffix(lastName(call.Fun), "rrorf")
}

// besideError reports whether a result is returned with an error, so that nobody is to
// look at it.
func besideError(n ast.Node, r *ast.ReturnStmt) bool {
	last, ok := r.Results[len(r.Results)-1].(*ast.Ident)
	return ok && last.Name == "err" && n != last
}

// calledName returns the function called, or its package where it has one.
func calledName(call *ast.CallExpr) string {
	switch f := call.Fun.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		if p, ok := f.X.(*ast.Ident); ok {
			return p.Name
		}
	}
	return ""
}
