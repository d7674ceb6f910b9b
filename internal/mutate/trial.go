//go:build unix

package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// trial tries mutants of one package.
type trial struct {
	*suite
	dir    string // for files of its own
	memory *memory
}

// elsewhere stands before a test of another package.
const elsewhere = "users' "

// errUnbuilt says that a mutant does not compile.
var errUnbuilt = errors.New("it does not compile")

// first tries the first mutant that compiles; nil if none does.
func (t *trial) first(ctx context.Context, mutants []mutant) (*verdict, error) {
	for _, m := range mutants {
		by, err := t.try(ctx, &m)
		switch {
		case ctx.Err() != nil:
			return nil, ctx.Err()
		case errors.Is(err, errUnbuilt):
		case err != nil:
			return nil, err
		default:
			return &verdict{m, by}, nil
		}
	}
	return nil, nil
}

// try returns the test that kills a mutant, or nothing if none does.
func (t *trial) try(ctx context.Context, m *mutant) (by string, err error) {
	source, err := m.source()
	if err != nil {
		return "", err
	}
	if by, ok := t.memory.recall(m, source); ok {
		return by, nil
	}
	overlay, err := t.overlay(m, m.apply(source))
	if err != nil {
		return "", err
	}
	by, err = t.tests(ctx, overlay)
	if err == nil && by != "" {
		err = t.memory.keep(m, source, by)
	}
	return by, err
}

// unchanged returns an error if a test fails without any change.
func (t *trial) unchanged(ctx context.Context) error {
	overlay, err := t.overlay(nil, nil)
	if err != nil {
		return err
	}
	by, err := t.tests(ctx, overlay)
	if err == nil && by != "" {
		err = fmt.Errorf("the tests of %s fail as they are: %s", t.folder, by)
	}
	return err
}

// overlay writes the changed file of a mutant, or of none, and the list that go build
// takes; it returns the path of the list.
func (t *trial) overlay(m *mutant, changed []byte) (string, error) {
	replace := map[string]string{}
	if m != nil {
		original, err := filepath.Abs(m.file)
		if err != nil {
			return "", err
		}
		replace[original] = filepath.Join(t.dir, "changed.go")
		if err := os.WriteFile(replace[original], changed, 0o644); err != nil {
			return "", err
		}
	}
	list, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return "", err
	}
	path := filepath.Join(t.dir, "overlay.json")
	return path, os.WriteFile(path, list, 0o644)
}

// tests runs tests until one fails, which it returns: the quick ones of the package,
// then all of it, then those of the packages that use it.
func (t *trial) tests(ctx context.Context, overlay string) (by string, err error) {
	binary := filepath.Join(t.dir, "package.test")
	if err := compile(ctx, overlay, binary, "./"+t.folder); err != nil {
		return "", err
	}
	for _, arguments := range [][]string{{"-test.short", "-test.skip=" + t.slow}, {}} {
		arguments = append([]string{binary, "-test.failfast", "-test.timeout=10m"}, arguments...)
		if by, err := limited(ctx, t.folder, arguments); by != "" || err != nil {
			return by, err
		}
	}
	by, err = limited(ctx, ".", append([]string{"go", "test", "-failfast", "-count=1", "-p=1", "-overlay=" + overlay}, t.users...))
	if by != "" {
		by = elsewhere + by
	}
	return by, err
}
