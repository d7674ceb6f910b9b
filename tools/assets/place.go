package main

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// packed are the endings of files that are compressed already.
var packed = map[string]bool{".png": true}

// place puts a file and its compressed forms into a folder. It leaves them alone if
// they stand there for the same content. Quick leaves Brotli out.
func place(folder, file string, quick bool) error {
	data, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	target := filepath.Join(folder, filepath.Base(file))
	forms := formsOf(target, quick)
	if upToDate(target, data, forms) {
		return nil
	}
	if err := removeForms(target); err != nil {
		return err
	}
	if err := writeForms(target, data, forms); err != nil {
		return err
	}
	// Last, so that a run that was broken off is done again.
	return os.WriteFile(target, data, 0o644)
}

// formsOf returns the forms that a file is to have.
func formsOf(name string, quick bool) []form {
	switch {
	case packed[filepath.Ext(name)]:
		return nil
	case quick:
		return []form{gzipForm}
	}
	return []form{brotliForm, gzipForm}
}

// upToDate reports whether the target holds the data and has the forms.
func upToDate(target string, data []byte, forms []form) bool {
	for _, f := range forms {
		if _, err := os.Stat(target + f.suffix); err != nil {
			return false
		}
	}
	old, err := os.ReadFile(target)
	return err == nil && bytes.Equal(old, data)
}

// removeForms removes the forms of what the target held before.
func removeForms(target string) error {
	for _, f := range []form{brotliForm, gzipForm} {
		if err := os.Remove(target + f.suffix); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
	}
	return nil
}

func writeForms(target string, data []byte, forms []form) error {
	for _, f := range forms {
		small, err := f.compress(data)
		if err != nil {
			return err
		}
		if err := os.WriteFile(target+f.suffix, small, 0o644); err != nil {
			return err
		}
	}
	return nil
}
