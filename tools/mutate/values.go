//go:build unix

package main

import (
	"go/ast"
	"go/token"
	"strconv"
)

// step is by how much a constant is changed: by its part, or from zero.
const step = "1e-3"

func constant(p *place) []edit {
	n, ok := p.node.(*ast.BasicLit)
	if !ok || isIndex(p) || isSignOnly(p) {
		return nil
	}
	switch n.Kind {
	case token.INT:
		return replaced(n, next(n.Value))
	case token.FLOAT:
		if value, err := strconv.ParseFloat(n.Value, 64); err != nil || value == 0 {
			return replaced(n, step)
		}
		return replaced(n, "("+n.Value+" * (1 + "+step+"))")
	}
	return nil
}

// isSignOnly reports whether of a literal only the sign counts.
func isSignOnly(p *place) bool {
	above := p.above
	if u, ok := p.parent().(*ast.UnaryExpr); ok && u.Op == token.SUB {
		above = above[:len(above)-1]
	}
	call, ok := above[len(above)-1].(*ast.CallExpr)
	return ok && lastName(call.Fun) == "Inf"
}

// next returns the whole number after one.
func next(literal string) string {
	i, err := strconv.ParseInt(literal, 0, 64)
	if err != nil {
		return "(" + literal + " + 1)"
	}
	return strconv.FormatInt(i+1, 10)
}

// coordinates says which coordinate stands in place of another.
var coordinates = map[string]string{"X": "Y", "Y": "Z", "Z": "X"}

func index(p *place) []edit {
	switch n := p.node.(type) {
	case *ast.SelectorExpr:
		if other, ok := coordinates[n.Sel.Name]; ok {
			return replaced(n.Sel, other)
		}
	case *ast.BasicLit:
		switch {
		case !isIndex(p) || n.Kind != token.INT:
		case n.Value == "0":
			return replaced(n, "1")
		default:
			return replaced(n, n.Value+" - 1")
		}
	}
	return nil
}

// isIndex reports whether a literal says which element.
func isIndex(p *place) bool {
	i, ok := p.parent().(*ast.IndexExpr)
	return ok && i.Index == p.node
}
