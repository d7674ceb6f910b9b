package store

import (
	"errors"
	"maps"
	"math/rand/v2"
	"testing"
	"time"

	"toewright/internal/study"
)

// errKilled is what a storage answers after the program was killed.
var errKilled = errors.New("killed")

// faulty is a storage that fails after a number of writes, or where it has no room.
type faulty struct {
	Memory
	writes int // left before it is killed; negative is no end
	room   int // letters that fit; 0 is no end
}

func (f *faulty) write() error {
	if f.writes == 0 {
		return errKilled
	}
	f.writes--
	return nil
}

func (f *faulty) Set(key, text string) error {
	if err := f.write(); err != nil {
		return err
	}
	if f.room > 0 && f.size()-len(f.Memory[key])+len(text) > f.room {
		return ErrFull
	}
	return f.Memory.Set(key, text)
}

func (f *faulty) Remove(key string) error {
	if err := f.write(); err != nil {
		return err
	}
	return f.Memory.Remove(key)
}

func (f *faulty) size() int {
	n := 0
	for _, text := range f.Memory {
		n += len(text)
	}
	return n
}

// seeded is a source of names that is the same each time.
type seeded struct{ *rand.ChaCha8 }

func newSeeded(seed byte) seeded { return seeded{rand.NewChaCha8([32]byte{seed})} }

// noon is when the tests take place.
func noon() time.Time { return time.Date(2024, 5, 1, 12, 0, 0, 0, time.UTC) }

// tab returns a store as a tab of its own opens it.
func tab(s Storage, seed byte) *Store { return Open(s, noon, newSeeded(seed)) }

// named returns a study of a name.
func named(t testing.TB, name string) *study.Document {
	t.Helper()
	d := study.Template{Key: "double-wishbone-rack"}.Document()
	d.Name = name
	return d
}

// keep keeps studies of the given names, one made from the other, and returns the ID
// and the last version.
func keep(t testing.TB, s *Store, names ...string) (ID, Version) {
	t.Helper()
	id, v, err := s.Create(named(t, names[0]), "new")
	for _, name := range names[1:] {
		if err == nil {
			v, err = s.Save(id, v, named(t, name), "rename")
		}
	}
	if err != nil {
		t.Fatal(err)
	}
	return id, v
}

// nameOf opens a study and returns its name.
func nameOf(t testing.TB, s *Store, id ID) string {
	t.Helper()
	l, err := s.Load(id)
	if err != nil {
		t.Fatal(err)
	}
	return l.Document.Name
}

// manyNames returns as many names as a long day of edits makes.
func manyNames(n int) []string {
	names := make([]string, n)
	for i := range names {
		names[i] = string(rune('A' + i%26))
	}
	return names
}

// TestKilledAtEveryStep kills the program before each write of a save. What is opened
// afterwards is the old study or the new one, and a further save works.
func TestKilledAtEveryStep(t *testing.T) {
	before := Memory{}
	id, v := keep(t, tab(before, 1), manyNames(History+3)...)
	old := nameOf(t, tab(before, 2), id)
	for writes := 0; ; writes++ {
		kept := Memory(maps.Clone(before))
		_, err := tab(&faulty{Memory: kept, writes: writes}, 3).Save(id, v, named(t, "new"), "edit")
		l, loadErr := tab(kept, 4).Load(id)
		if loadErr != nil {
			t.Fatalf("killed after %d writes: %v", writes, loadErr)
		}
		if l.Notice != "" || l.Document.Name != old && l.Document.Name != "new" {
			t.Errorf("killed after %d writes: opened %q, notice %q", writes, l.Document.Name, l.Notice)
		}
		if _, err := tab(kept, 5).Save(id, l.Version, named(t, "later"), "edit"); err != nil {
			t.Errorf("killed after %d writes: saving again: %v", writes, err)
		}
		if err == nil {
			if l.Document.Name != "new" {
				t.Error("a save that came to its end does not count")
			}
			return
		}
	}
}

// stride is the distance between the places where a long text is damaged. That a seal
// finds the damage of every byte is tested by itself.
const stride = 61

// TestDamagedAnywhere changes, and cuts at, bytes of each text that is kept. What is
// opened is never a study that was not saved.
func TestDamagedAnywhere(t *testing.T) {
	before := Memory{}
	id, _ := keep(t, tab(before, 1), "first", "second", "third")
	saved := map[string]bool{"first": true, "second": true, "third": true}
	for key, text := range before {
		for at := 0; at < len(text); at += stride {
			for _, damaged := range []string{text[:at], text[:at] + string(text[at]^1) + text[at+1:]} {
				kept := Memory(maps.Clone(before))
				kept[key] = damaged
				s := tab(kept, 2)
				l, err := s.Load(id)
				if err != nil {
					t.Fatalf("%s damaged at %d: %v", key, at, err)
				}
				if !saved[l.Document.Name] || l.Document.Name != "third" && l.Notice == "" {
					t.Fatalf("%s damaged at %d: opened %q, notice %q", key, at, l.Document.Name, l.Notice)
				}
				if _, err := s.List(); err != nil {
					t.Fatalf("%s damaged at %d: list: %v", key, at, err)
				}
			}
		}
	}
}

// TestSaveLeavesWhatIsDamaged damages each text in turn and saves many times over it.
func TestSaveLeavesWhatIsDamaged(t *testing.T) {
	before := Memory{}
	id, _ := keep(t, tab(before, 1), "first", "second", "third")
	for key := range before {
		kept := Memory(maps.Clone(before))
		const wreck = "toewright-revision/1 00000000\nwreck"
		kept[key] = wreck
		s := tab(kept, 2)
		l, err := s.Load(id)
		if err != nil {
			t.Fatal(err)
		}
		v := l.Version
		for range History + 2 {
			if v, err = s.Save(id, v, named(t, "new"), "edit"); err != nil {
				t.Fatalf("%s damaged: %v", key, err)
			}
		}
		found := false
		for _, text := range kept {
			found = found || text == wreck
		}
		if !found {
			t.Errorf("%s was damaged, and what was left of it is gone", key)
		}
		if got := nameOf(t, tab(kept, 3), id); got != "new" {
			t.Errorf("%s damaged: opened %q after a save", key, got)
		}
	}
}
