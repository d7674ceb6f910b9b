package main

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"path"
	"slices"
	"strconv"
)

// leaveOut returns a change that takes methods of a type out of a file, and the imports
// that only they needed. Whoever calls such a method finds it missing when the page is
// built. It is an error if one is not there.
func leaveOut(receiver string, methods ...string) func([]byte) ([]byte, error) {
	return func(text []byte) ([]byte, error) {
		files := token.NewFileSet()
		file, err := parser.ParseFile(files, "", text, 0)
		if err != nil {
			return nil, err
		}
		before := len(file.Decls)
		file.Decls = slices.DeleteFunc(file.Decls, func(d ast.Decl) bool {
			f, ok := d.(*ast.FuncDecl)
			return ok && receiverOf(f) == receiver && slices.Contains(methods, f.Name.Name)
		})
		if n := before - len(file.Decls); n != len(methods) {
			return nil, fmt.Errorf("has %d of the %d methods of %s to be left out", n, len(methods), receiver)
		}
		dropImports(file)
		var out bytes.Buffer
		if err := format.Node(&out, files, file); err != nil {
			return nil, err
		}
		return out.Bytes(), nil
	}
}

// receiverOf returns the type that a function is a method of; empty for none.
func receiverOf(f *ast.FuncDecl) string {
	if f.Recv == nil {
		return ""
	}
	if id, ok := f.Recv.List[0].Type.(*ast.Ident); ok {
		return id.Name
	}
	return ""
}

// dropImports takes out the imports that nothing in the file names. The packages must
// be named as their paths end.
func dropImports(file *ast.File) {
	used := map[string]bool{}
	ast.Inspect(file, func(n ast.Node) bool {
		if s, ok := n.(*ast.SelectorExpr); ok {
			if id, ok := s.X.(*ast.Ident); ok {
				used[id.Name] = true
			}
		}
		return true
	})
	for _, d := range file.Decls {
		if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.IMPORT {
			g.Specs = slices.DeleteFunc(g.Specs, func(s ast.Spec) bool {
				name, err := strconv.Unquote(s.(*ast.ImportSpec).Path.Value)
				return err == nil && !used[path.Base(name)]
			})
		}
	}
}
