package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
)

// edit changes a file that is otherwise taken over.
type edit struct {
	name   string
	change func(text []byte) ([]byte, error)
}

// apply makes the edit in the copy in a folder.
func (c edit) apply(dir string) error {
	name := filepath.Join(dir, filepath.FromSlash(c.name))
	text, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	if text, err = c.change(text); err != nil {
		return fmt.Errorf("%s: %w", c.name, err)
	}
	return os.WriteFile(name, text, 0o666)
}

// replace returns a change of one text to another. It is an error if the file does not
// have it just once.
func replace(old, new string) func([]byte) ([]byte, error) {
	return func(text []byte) ([]byte, error) {
		if n := bytes.Count(text, []byte(old)); n != 1 {
			return nil, fmt.Errorf("has %s %d times, want it once", old, n)
		}
		return bytes.Replace(text, []byte(old), []byte(new), 1), nil
	}
}

// dropLines returns a change that takes out the lines that hold the texts. It is an
// error if one of them does not stand in just one line.
func dropLines(texts ...string) func([]byte) ([]byte, error) {
	return func(text []byte) ([]byte, error) {
		lines := bytes.SplitAfter(text, []byte("\n"))
		for _, t := range texts {
			has := func(line []byte) bool { return bytes.Contains(line, []byte(t)) }
			before := len(lines)
			lines = slices.DeleteFunc(lines, has)
			if n := before - len(lines); n != 1 {
				return nil, fmt.Errorf("has %q in %d lines, want one", t, n)
			}
		}
		return bytes.Join(lines, nil), nil
	}
}
