//go:build unix

package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// checker tells which mutants of a package compile.
type checker struct {
	files    *token.FileSet
	parsed   map[string]*ast.File // by path from the root of the module
	importer types.Importer
}

// newChecker reads a package and the compiled forms of what it imports.
func newChecker(folder string) (*checker, error) {
	c := &checker{files: token.NewFileSet(), parsed: map[string]*ast.File{}}
	exports, err := exportFiles("./" + folder)
	if err != nil {
		return nil, err
	}
	c.importer = importer.ForCompiler(c.files, "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })
	paths, err := sources(folder)
	if err != nil {
		return nil, err
	}
	for _, path := range paths {
		if c.parsed[path], err = parser.ParseFile(c.files, path, nil, parser.SkipObjectResolution); err != nil {
			return nil, err
		}
	}
	return c, nil
}

// first returns the first mutant that compiles; nil if none does.
func (c *checker) first(mutants []mutant) (*mutant, error) {
	for i := range mutants {
		source, err := mutants[i].source()
		if err != nil {
			return nil, err
		}
		if c.compiles(&mutants[i], source) {
			return &mutants[i], nil
		}
	}
	return nil, nil
}

// compiles reports whether a mutant of a file with this source does.
func (c *checker) compiles(m *mutant, source []byte) bool {
	changed, err := parser.ParseFile(c.files, m.file, m.apply(source), parser.SkipObjectResolution)
	if err != nil {
		return false
	}
	all := []*ast.File{changed}
	for path, f := range c.parsed {
		if path != m.file {
			all = append(all, f)
		}
	}
	config := types.Config{Importer: c.importer}
	_, err = config.Check(m.folder(), c.files, all, nil)
	return err == nil
}

// sources returns the files of a package, tests aside.
func sources(folder string) ([]string, error) {
	all, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil {
		return nil, err
	}
	var paths []string
	for _, path := range all {
		if !strings.HasSuffix(path, "_test.go") {
			paths = append(paths, path)
		}
	}
	return paths, nil
}

// exportFiles returns the compiled forms of a package and of all that it needs, by
// import path.
func exportFiles(pattern string) (map[string]string, error) {
	list := exec.Command("go", "list", "-export", "-deps", "-json=ImportPath,Export", pattern)
	out, err := list.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	files := map[string]string{}
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p struct{ ImportPath, Export string }
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return files, nil
		} else if err != nil {
			return nil, fmt.Errorf("go list: %w", err)
		}
		files[p.ImportPath] = p.Export
	}
}
