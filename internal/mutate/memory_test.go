//go:build unix

package main

import (
	"path/filepath"
	"testing"
)

func TestMemory(t *testing.T) {
	path := filepath.Join(t.TempDir(), "killed")
	m := &mutant{file: "a.go", function: "f", old: "a", new: "b"}
	before, err := openMemory(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := before.keep(m, []byte("source"), elsewhere+"TestIt"); err != nil {
		t.Fatal(err)
	}
	if err := before.close(); err != nil {
		t.Fatal(err)
	}
	after, err := openMemory(path)
	if err != nil {
		t.Fatal(err)
	}
	defer after.close()
	if by, ok := after.recall(m, []byte("source")); !ok || by != elsewhere+"TestIt" {
		t.Errorf("recall = %q, %t, want the test that was kept", by, ok)
	}
	if by, ok := after.recall(m, []byte("another source")); ok {
		t.Errorf("recall of a changed file = %q, want nothing", by)
	}
	if by, ok := after.recall(&mutant{file: "a.go", function: "f", old: "a", new: "c"}, []byte("source")); ok {
		t.Errorf("recall of another mutant = %q, want nothing", by)
	}
}

func TestMemoryOfNothing(t *testing.T) {
	m, err := openMemory("")
	if err != nil {
		t.Fatal(err)
	}
	if err := m.keep(&mutant{}, nil, "TestIt"); err != nil {
		t.Errorf("keep without a file: %v", err)
	}
	if err := m.close(); err != nil {
		t.Errorf("close without a file: %v", err)
	}
}
