//go:build unix

package main

import (
	"go/ast"
	"go/token"
	"slices"
)

// operator makes the changes of one kind at a place; none where it has nothing to change.
type operator struct {
	kind  string
	what  string // for the page
	edits func(*place) []edit
}

// earlyKind is the kind of an early return.
const earlyKind = "return"

var operators = []operator{
	{"arithmetic", "`+` and `-`, `*` and `/` swapped", arithmetic},
	{"sign", "a product or a value with the other sign", sign},
	{"comparison", "a bound in or out, `==` and `!=`, `&&` and `||` swapped", comparison},
	{"condition", "a condition of `if` or `for` negated", condition},
	{"constant", "a whole number off by one, another by a thousandth", constant},
	{"index", "another element, another coordinate", index},
	{"arguments", "the first two arguments of a call swapped", arguments},
	{"drop", "a statement left out", drop},
	{earlyKind, "a return of zeros, or the next turn of the loop, before the statement", early},
}

// replaced returns the edit that puts code in place of a node.
func replaced(n ast.Node, code string) []edit { return []edit{{n.Pos(), n.End(), code}} }

// swapped says what stands in place of an operator of arithmetic.
var swapped = map[token.Token]string{
	token.ADD: "-", token.SUB: "+", token.MUL: "/", token.QUO: "*", token.REM: "*",
	token.ADD_ASSIGN: "-=", token.SUB_ASSIGN: "+=", token.MUL_ASSIGN: "/=", token.QUO_ASSIGN: "*=",
	token.INC: "--", token.DEC: "++",
}

func arithmetic(p *place) []edit {
	switch n := p.node.(type) {
	case *ast.BinaryExpr:
		return operation(p, n, swapped)
	case *ast.AssignStmt:
		if code, ok := swapped[n.Tok]; ok {
			return replaced(n, p.text(n.Lhs[0])+" "+code+" "+p.text(n.Rhs[0]))
		}
	case *ast.IncDecStmt:
		return replaced(n, p.text(n.X)+swapped[n.Tok])
	}
	return nil
}

// neighbours says what stands in place of a comparison or a logical operator.
var neighbours = map[token.Token]string{
	token.LSS: "<=", token.LEQ: "<", token.GTR: ">=", token.GEQ: ">",
	token.EQL: "!=", token.NEQ: "==", token.LAND: "||", token.LOR: "&&",
}

func comparison(p *place) []edit {
	if n, ok := p.node.(*ast.BinaryExpr); ok {
		return operation(p, n, neighbours)
	}
	return nil
}

// operation returns the edit of one operator, in brackets where it is part of another's.
func operation(p *place, n *ast.BinaryExpr, in map[token.Token]string) []edit {
	op, ok := in[n.Op]
	if !ok {
		return nil
	}
	code := p.text(n.X) + " " + op + " " + p.text(n.Y)
	if _, inner := p.parent().(*ast.BinaryExpr); inner {
		code = "(" + code + ")"
	}
	return replaced(n, code)
}

func sign(p *place) []edit {
	switch n := p.node.(type) {
	case *ast.BinaryExpr:
		if n.Op == token.MUL {
			return replaced(n, "-("+p.text(n)+")")
		}
	case *ast.UnaryExpr:
		if n.Op == token.SUB {
			return replaced(n, p.text(n.X))
		}
	}
	return nil
}

func condition(p *place) []edit {
	switch n := p.node.(type) {
	case *ast.IfStmt:
		return replaced(n.Cond, "!("+p.text(n.Cond)+")")
	case *ast.ForStmt:
		if n.Cond != nil {
			return replaced(n.Cond, "!("+p.text(n.Cond)+")")
		}
	}
	return nil
}

// even are functions of two arguments whose order does not matter.
var even = []string{"Add", "Dot", "Hypot", "Max", "Min", "max", "min", "add"}

func arguments(p *place) []edit {
	n, ok := p.node.(*ast.CallExpr)
	if !ok || len(n.Args) < 2 || n.Ellipsis.IsValid() || takesWords(n) {
		return nil
	}
	first, second := p.text(n.Args[0]), p.text(n.Args[1])
	if first == second || slices.Contains(even, lastName(n.Fun)) {
		return nil
	}
	return []edit{{n.Args[0].Pos(), n.Args[1].End(), second + ", " + first}}
}

// lastName returns the name of a function without what it belongs to.
func lastName(f ast.Expr) string {
	switch f := f.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		return f.Sel.Name
	}
	return ""
}
