//go:build unix

package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"strings"
)

// statement has the mutants of one statement.
type statement struct {
	key     string // what the draw knows it by
	mutants []mutant
}

// findAll returns the statements of a package that can be changed, tests and files of
// words aside.
func findAll(folder string) ([]statement, error) {
	paths, err := sources(folder)
	if err != nil {
		return nil, err
	}
	var all []statement
	for _, path := range paths {
		if strings.HasSuffix(path, "words.go") {
			continue
		}
		source, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		found, err := find(path, source)
		if err != nil {
			return nil, err
		}
		all = append(all, found...)
	}
	return all, nil
}

// find returns the statements of a file that can be changed.
func find(path string, source []byte) ([]statement, error) {
	files := token.NewFileSet()
	parsed, err := parser.ParseFile(files, path, source, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	var all []statement
	for _, d := range parsed.Decls {
		f, ok := d.(*ast.FuncDecl)
		if !ok || f.Body == nil || isText(f) {
			continue
		}
		w := walk{path: path, source: source, file: files.File(parsed.Pos()), function: functionName(f)}
		w.body = span{w.file.Offset(f.Body.Lbrace) + 1, w.file.Offset(f.Body.Rbrace), f.Type.Results == nil}
		all = append(all, w.statements(f)...)
	}
	return all, nil
}

// isText reports whether a function only puts things into words.
func isText(f *ast.FuncDecl) bool { return f.Name.Name == "String" || f.Name.Name == "Error" }

// functionName returns the name of a function with the type of its receiver.
func functionName(f *ast.FuncDecl) string {
	if f.Recv == nil {
		return f.Name.Name
	}
	t := f.Recv.List[0].Type
	if star, ok := t.(*ast.StarExpr); ok {
		t = star.X
	}
	if generic, ok := t.(*ast.IndexExpr); ok {
		t = generic.X
	}
	if name, ok := t.(*ast.Ident); ok {
		return name.Name + "." + f.Name.Name
	}
	return f.Name.Name
}
