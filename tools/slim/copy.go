package main

import (
	"io/fs"
	"os"
	"path"
	"path/filepath"
)

// copyFolder copies the files of a tree that are wanted, by their names in it, to the
// same places below a folder, over what stands there.
func copyFolder(to string, tree fs.FS, folder string, wanted func(name string) bool) error {
	return fs.WalkDir(tree, folder, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !wanted(name) {
			return err
		}
		return copyFile(filepath.Join(to, filepath.FromSlash(name)), tree, name)
	})
}

// copyFile copies a file of a tree, making the folders that it needs.
func copyFile(to string, tree fs.FS, name string) error {
	data, err := fs.ReadFile(tree, path.Clean(name))
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(to), 0o777); err != nil {
		return err
	}
	return os.WriteFile(to, data, 0o666)
}
