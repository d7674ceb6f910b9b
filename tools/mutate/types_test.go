//go:build unix

package main

import (
	"go/ast"
	"go/token"
	"testing"
)

func TestCompiles(t *testing.T) {
	const source = "package p\n\nfunc f(a string) string {\n\tb := a\n\treturn b + a\n}\n"
	c := &checker{files: token.NewFileSet(), parsed: map[string]*ast.File{}}
	tests := []struct {
		name, old, new string
		want           bool
	}{
		{"as it is", "b + a", "b + a", true},
		{"no operator of strings", "b + a", "b - a", false},
		{"a variable without use", "b + a", "a", false},
		{"no Go", "b + a", ")", false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			const at = len(source) - len("b + a\n}\n")
			m := &mutant{file: "p.go", start: at, end: at + len(tt.old), new: tt.new}
			if got := c.compiles(m, []byte(source)); got != tt.want {
				t.Errorf("compiles = %t, want %t", got, tt.want)
			}
		})
	}
}
