package store

import (
	"maps"
	"slices"
)

// Memory is a storage that forgets with the program. It serves where the browser
// denies its own, and in tests. It belongs to one goroutine.
type Memory map[string]string

// Get implements [Storage].
func (m Memory) Get(key string) (string, bool, error) {
	text, ok := m[key]
	return text, ok, nil
}

// Set implements [Storage].
func (m Memory) Set(key, text string) error {
	m[key] = text
	return nil
}

// Remove implements [Storage].
func (m Memory) Remove(key string) error {
	delete(m, key)
	return nil
}

// Keys implements [Storage].
func (m Memory) Keys() ([]string, error) { return slices.Sorted(maps.Keys(m)), nil }
