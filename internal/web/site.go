package web

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// WriteSite writes the page to a folder, which is made if there is none, for a host
// that serves nothing but files. It works under any path. Files that stand there
// under other names are left. The calls under /api/ are no part of it: the page does
// not need them.
//
// As such a host sends no headers of ours, the document states its policy itself.
// Nil files are the front end that was built in.
func WriteSite(folder string, files fs.FS) error {
	if files == nil {
		files = Assets()
	}
	all, err := loadAssets(files)
	if err != nil {
		return err
	}
	if !all.built() {
		return fmt.Errorf("web: the front end has not been built: run make build, then write the site again")
	}
	pages, err := renderShell(all, documentPolicy)
	if err != nil {
		return err
	}
	for path, page := range pages {
		if err := page.write(folder, siteName(path)); err != nil {
			return err
		}
	}
	for name, file := range all {
		if err := file.write(folder, "web/"+name); err != nil {
			return err
		}
	}
	return all[manifestName].write(folder, manifestName)
}

// siteName returns the name of the file for a path of the page.
func siteName(path string) string {
	if strings.HasSuffix(path, "/") {
		path += "index.html"
	}
	return path[1:]
}

// write writes all forms of a file below a folder.
func (a *asset) write(folder, name string) error {
	for enc, form := range a.forms {
		if err := writeFile(folder, name+suffixes[enc], form.data); err != nil {
			return err
		}
	}
	return nil
}

func writeFile(folder, name string, data []byte) error {
	path := filepath.Join(folder, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return fmt.Errorf("web: %w", err)
	}
	if err := os.WriteFile(path, data, 0o644); err != nil {
		return fmt.Errorf("web: %w", err)
	}
	return nil
}
