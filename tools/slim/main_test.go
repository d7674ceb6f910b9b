package main

import (
	"os"
	"path/filepath"
	"testing"
)

func TestClear(t *testing.T) {
	for _, tt := range []struct {
		name  string
		holds string // a file in the folder, if any
		gone  bool
		ok    bool
	}{
		{name: "empty", ok: true},
		{name: "written before", holds: "go.sum", gone: true, ok: true},
		{name: "something else", holds: "letter.txt"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			dir := t.TempDir()
			file := filepath.Join(dir, tt.holds)
			if tt.holds != "" {
				if err := os.WriteFile(file, nil, 0o666); err != nil {
					t.Fatal(err)
				}
			}
			if err := clear(dir); (err == nil) != tt.ok {
				t.Errorf("clear = %v, want success %t", err, tt.ok)
			}
			if _, err := os.Stat(file); os.IsNotExist(err) != tt.gone {
				t.Errorf("the file is gone: %t, want %t", os.IsNotExist(err), tt.gone)
			}
		})
	}
	if err := clear(filepath.Join(t.TempDir(), "new")); err != nil {
		t.Errorf("a folder that is not there: %v", err)
	}
}

func TestLocal(t *testing.T) {
	if got := local(filepath.Join("bin", "slim")); got != "./bin/slim" {
		t.Errorf("local = %s, want ./bin/slim", got)
	}
	if dir := t.TempDir(); local(dir) != filepath.ToSlash(dir) {
		t.Errorf("local(%s) = %s, want it unchanged", dir, local(dir))
	}
}
