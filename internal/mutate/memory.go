//go:build unix

package main

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"
)

// memory remembers kills over runs. What it knows of a mutant holds as long as the file
// that the mutant changes is the same: tests only get stricter.
type memory struct {
	file *os.File // nil to remember nothing
	by   map[string]string
}

// openMemory reads a file of kills and opens it for more.
func openMemory(path string) (*memory, error) {
	m := &memory{by: map[string]string{}}
	if path == "" {
		return m, nil
	}
	known, err := os.ReadFile(path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	for line := range strings.Lines(string(known)) {
		if key, by, ok := strings.Cut(strings.TrimSpace(line), " "); ok {
			m.by[key] = by
		}
	}
	m.file, err = os.OpenFile(path, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	return m, err
}

// recall returns what killed a mutant of a file with this source, if that is known.
func (m *memory) recall(x *mutant, source []byte) (by string, ok bool) {
	by, ok = m.by[memoryKey(x, source)]
	return by, ok
}

// keep remembers what killed a mutant.
func (m *memory) keep(x *mutant, source []byte, by string) error {
	if m.file == nil {
		return nil
	}
	_, err := fmt.Fprintln(m.file, memoryKey(x, source), by)
	return err
}

func memoryKey(x *mutant, source []byte) string {
	h := sha256.New()
	_, _ = fmt.Fprintf(h, "%s\n%d\n", x.id(), x.start)
	_, _ = h.Write(source)
	return fmt.Sprintf("%x", h.Sum(nil)[:16])
}

func (m *memory) close() error {
	if m.file == nil {
		return nil
	}
	return m.file.Close()
}
