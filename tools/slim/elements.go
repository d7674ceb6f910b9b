package main

import (
	"bytes"
	"errors"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"maps"
	"slices"
	"strings"
)

// shareElements rewrites go-app's elements, which have an interface and a struct with
// some hundred methods for each tag of HTML, to one struct for all of them. The methods
// are the same but for the type that they return; an element still knows its tag. Calls
// through no interface are shorter, and what they pass need not be allocated. Methods
// that differ stand in the files of ours.
func shareElements(src []byte) ([]byte, error) {
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, "html_gen.go", src, 0)
	if err != nil {
		return nil, err
	}
	s := sharing{tags: tagsOf(file), seen: map[string]string{}}
	if len(s.tags) == 0 {
		return nil, errors.New("there are no elements")
	}
	ast.Inspect(file, s.rename)
	file.Decls = slices.DeleteFunc(file.Decls, func(d ast.Decl) bool { return !s.keeps(d) })
	if s.err != nil {
		return nil, s.err
	}
	var out bytes.Buffer
	if err := format.Node(&out, files, file); err != nil {
		return nil, err
	}
	fmt.Fprintf(&out, "\ntype %s = *%s\n", sharedName, sharedStruct)
	for _, tag := range slices.Sorted(maps.Keys(s.tags)) {
		fmt.Fprintf(&out, "\ntype HTML%s = %s\n", tag, sharedName)
	}
	return out.Bytes(), nil
}

const (
	sharedName   = "HTMLShared" // of the pointer
	sharedStruct = "htmlShared"
)

// differing are the methods that ours have for all elements, as a text area has them
// in a form of its own.
var differing = []string{"Text", "Textf"}

// sharing is the state of one rewriting.
type sharing struct {
	tags map[string]bool   // Div, Input and so on
	seen map[string]string // the struct and the methods, as text
	err  error
}

// tagsOf returns the elements that a file has interfaces for.
func tagsOf(file *ast.File) map[string]bool {
	tags := map[string]bool{}
	for _, d := range file.Decls {
		if t, ok := typeOf(d); ok && strings.HasPrefix(t.Name.Name, "HTML") {
			tags[strings.TrimPrefix(t.Name.Name, "HTML")] = true
		}
	}
	return tags
}

// typeOf returns the type that a declaration declares.
func typeOf(d ast.Decl) (*ast.TypeSpec, bool) {
	if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.TYPE {
		t, ok := g.Specs[0].(*ast.TypeSpec)
		return t, ok
	}
	return nil, false
}

// rename gives the types of all elements the shared names.
func (s *sharing) rename(n ast.Node) bool {
	if id, ok := n.(*ast.Ident); ok {
		switch {
		case s.is(id.Name, "HTML"):
			id.Name = sharedName
		case s.is(id.Name, "html"):
			id.Name = sharedStruct
		}
	}
	return true
}

// is reports whether a name is that of an element's type with a prefix.
func (s *sharing) is(name, prefix string) bool {
	tag, ok := strings.CutPrefix(name, prefix)
	return ok && s.tags[tag]
}

// keeps reports whether a renamed declaration stays: the functions that make elements,
// and of structs and each method the first.
func (s *sharing) keeps(d ast.Decl) bool {
	if t, ok := typeOf(d); ok {
		return t.Name.Name != sharedName && s.first(t.Name.Name, t)
	}
	f, ok := d.(*ast.FuncDecl)
	if !ok || f.Recv == nil {
		return true
	}
	if slices.Contains(differing, f.Name.Name) {
		return false
	}
	return s.first(f.Name.Name, f)
}

// first reports whether nothing of a name has been seen yet. What has been must be the
// same.
func (s *sharing) first(name string, n ast.Node) bool {
	text := printed(n)
	before, seen := s.seen[name]
	if seen && before != text {
		s.err = fmt.Errorf("%s is not the same for all elements", name)
	}
	s.seen[name] = text
	return !seen
}

// printed returns a node as text.
func printed(n ast.Node) string {
	var out bytes.Buffer
	_ = format.Node(&out, token.NewFileSet(), n) // a buffer takes everything
	return out.String()
}
