//go:build unix

package main

import (
	"fmt"
	"go/ast"
	"go/token"
)

// walk goes through a function and gathers the mutants of its statements.
type walk struct {
	path     string
	source   []byte
	file     *token.File
	function string
	body     span
}

// place is a node on the walk.
type place struct {
	node  ast.Node
	above []ast.Node // outermost first; the function itself is the first
	text  func(ast.Node) string
}

// textTo returns the code of the node up to a position.
func (p *place) textTo(end token.Pos) string { return p.text(p.node)[:end-p.node.Pos()] }

// parent returns the node right above.
func (p *place) parent() ast.Node { return p.above[len(p.above)-1] }

// edit is a piece of code in place of another.
type edit struct {
	from, to token.Pos
	new      string
}

// statements returns the statements of a function, in their order. Each mutant belongs
// to the innermost statement around it.
func (w *walk) statements(f *ast.FuncDecl) []statement {
	var all []statement
	at := map[ast.Stmt]int{}
	seen := map[string]int{}
	ast.PreorderStack(f, nil, func(n ast.Node, above []ast.Node) bool {
		if len(above) == 0 {
			return true
		}
		if isNoBehaviour(n, above) {
			return false
		}
		s := innermost(n, above)
		if s == nil {
			return true
		}
		found := w.mutants(&place{n, above, w.text})
		if len(found) == 0 {
			return true
		}
		i, ok := at[s]
		if !ok {
			i = len(all)
			at[s] = i
			all = append(all, statement{key: w.key(s, seen)})
		}
		all[i].mutants = append(all[i].mutants, found...)
		return true
	})
	return all
}

// mutants returns the mutants of one node.
func (w *walk) mutants(p *place) []mutant {
	var all []mutant
	for _, o := range operators {
		for _, e := range o.edits(p) {
			all = append(all, w.mutant(o.kind, e))
		}
	}
	return all
}

// key names a statement by its text, and by its number among its likes.
func (w *walk) key(s ast.Stmt, seen map[string]int) string {
	key := fmt.Sprintf("%s %s: %s", w.path, w.function, oneLine(w.text(s)))
	seen[key]++
	return fmt.Sprintf("%s (%d)", key, seen[key])
}

func (w *walk) text(n ast.Node) string {
	return string(w.source[w.file.Offset(n.Pos()):w.file.Offset(n.End())])
}

func (w *walk) mutant(kind string, e edit) mutant {
	start, end := w.file.Offset(e.from), w.file.Offset(e.to)
	return mutant{
		file: w.path, line: w.file.Line(e.from), function: w.function, kind: kind,
		start: start, end: end, body: w.body, old: string(w.source[start:end]), new: e.new,
	}
}

// innermost returns the statement of a node: itself or the closest above that is no block.
func innermost(n ast.Node, above []ast.Node) ast.Stmt {
	for i := len(above); i >= 0; i-- {
		if i < len(above) {
			n = above[i]
		}
		if _, block := n.(*ast.BlockStmt); block {
			continue
		}
		if s, ok := n.(ast.Stmt); ok {
			return s
		}
	}
	return nil
}
