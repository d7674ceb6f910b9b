//go:build unix

package main

import (
	"go/ast"
	"go/token"
	"slices"
	"strings"
)

// drop leaves a statement out; of an if, what it does.
func drop(p *place) []edit {
	if !inList(p) {
		return nil
	}
	switch n := p.node.(type) {
	case *ast.AssignStmt:
		if n.Tok != token.DEFINE {
			return replaced(n, "")
		}
	case *ast.ExprStmt, *ast.IncDecStmt, *ast.DeferStmt:
		return replaced(n, "")
	case *ast.BranchStmt:
		if n.Label == nil {
			return replaced(n, "")
		}
	case *ast.IfStmt:
		return replaced(n.Body, "{}")
	}
	return nil
}

// early leaves the function with zeros before a loop, a switch or a return; inside of
// a loop it goes to the next turn.
func early(p *place) []edit {
	if !inList(p) {
		return nil
	}
	var head token.Pos
	switch n := p.node.(type) {
	case *ast.ForStmt:
		head = n.Body.Lbrace
	case *ast.RangeStmt:
		head = n.Body.Lbrace
	case *ast.SwitchStmt:
		head = n.Body.Lbrace
	case *ast.ReturnStmt:
		return zerosReturned(p, n)
	default:
		return nil
	}
	code := "return " + zeros(p, results(p))
	if inLoop(p) {
		code = "continue"
	}
	return []edit{{p.node.Pos(), head, code + "; " + p.textTo(head)}}
}

// zeroLiterals are ways to write a zero.
var zeroLiterals = []string{"nil", "false", "0", `""`}

// zerosReturned returns zeros where other values are returned.
func zerosReturned(p *place, n *ast.ReturnStmt) []edit {
	if !slices.ContainsFunc(n.Results, func(e ast.Expr) bool { return !isZero(p, e) }) {
		return nil
	}
	return replaced(n, "return "+zeros(p, results(p)))
}

// isZero reports whether an expression is a zero: one of the literals, or a struct
// without a field set.
func isZero(p *place, e ast.Expr) bool {
	if c, ok := e.(*ast.CompositeLit); ok {
		_, named := c.Type.(*ast.Ident)
		return named && len(c.Elts) == 0
	}
	return slices.Contains(zeroLiterals, p.text(e))
}

// inList reports whether a node is a statement among others.
func inList(p *place) bool {
	switch p.parent().(type) {
	case *ast.BlockStmt, *ast.CaseClause, *ast.CommClause:
		_, ok := p.node.(ast.Stmt)
		return ok
	}
	return false
}

// inLoop reports whether the innermost function or loop around a place is a loop.
func inLoop(p *place) bool {
	for i := len(p.above) - 1; i >= 0; i-- {
		switch p.above[i].(type) {
		case *ast.ForStmt, *ast.RangeStmt:
			return true
		case *ast.FuncLit, *ast.FuncDecl:
			return false
		}
	}
	return false
}

// results returns the results of the innermost function around a place.
func results(p *place) *ast.FieldList {
	for i := len(p.above) - 1; i >= 0; i-- {
		switch f := p.above[i].(type) {
		case *ast.FuncLit:
			return f.Type.Results
		case *ast.FuncDecl:
			return f.Type.Results
		}
	}
	return nil
}

// zeros returns the zero values of results as code.
func zeros(p *place, list *ast.FieldList) string {
	if list == nil {
		return ""
	}
	var all []string
	for _, f := range list.List {
		for range max(1, len(f.Names)) {
			all = append(all, "*new("+p.text(f.Type)+")")
		}
	}
	return strings.Join(all, ", ")
}
