//go:build unix

package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
)

// trial has the test programs of a package and of its users, with the mutants woven in.
type trial struct {
	*suite
	own   program
	users []program
}

// program is a test program.
type program struct{ path, folder string }

// elsewhere stands before a test of another package.
const elsewhere = "users' "

// newTrial builds the programs in a folder of their own, and tells whether their tests
// pass while no mutant is on.
func newTrial(ctx context.Context, s *suite, dir string, mutants []numbered) (*trial, error) {
	overlay, err := writeOverlay(s.folder, dir, mutants)
	if err != nil {
		return nil, err
	}
	t := &trial{suite: s}
	for i, folder := range append([]string{s.folder}, s.users...) {
		p := program{filepath.Join(dir, fmt.Sprintf("%d.test", i)), folder}
		if err := compile(ctx, overlay, &p); err != nil {
			return nil, err
		}
		t.users = append(t.users, p)
	}
	t.own, t.users = t.users[0], t.users[1:]
	by, err := t.tests(ctx, 0)
	if err == nil && by != "" {
		err = fmt.Errorf("the tests of %s and its users fail as they are: %s", s.folder, by)
	}
	return t, err
}

// tests runs tests with a mutant on until one fails, which it returns: the quick ones
// of the package, then its slow ones, then those of the packages that use it.
func (t *trial) tests(ctx context.Context, number int) (by string, err error) {
	by, err = t.own.run(ctx, number, quickLimit, "-test.short", "-test.skip="+t.slow)
	if by == "" && err == nil {
		by, err = t.own.run(ctx, number, slowLimit, "-test.run="+t.slow)
	}
	for i := 0; i < len(t.users) && by == "" && err == nil; i++ {
		if by, err = t.users[i].run(ctx, number, slowLimit); by != "" {
			by = elsewhere + by
		}
	}
	return by, err
}

// writeOverlay writes the woven files of a package and the list of them that go build
// takes; it returns the path of the list.
func writeOverlay(folder, dir string, mutants []numbered) (string, error) {
	root, err := os.Getwd()
	if err != nil {
		return "", err
	}
	byFile := map[string][]numbered{}
	for _, m := range mutants {
		byFile[m.file] = append(byFile[m.file], m)
	}
	woven := map[string][]byte{filepath.Join(folder, "mutantswitch.go"): switchFile(filepath.Base(folder))}
	for path, of := range byFile {
		source, err := os.ReadFile(path)
		if err != nil {
			return "", err
		}
		woven[path] = weave(source, of)
	}
	replace := map[string]string{}
	for path, text := range woven {
		to := filepath.Join(dir, filepath.Base(path))
		if err := os.WriteFile(to, text, 0o644); err != nil {
			return "", err
		}
		replace[filepath.Join(root, path)] = to
	}
	list, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return "", err
	}
	path := filepath.Join(dir, "overlay.json")
	return path, os.WriteFile(path, list, 0o644)
}
