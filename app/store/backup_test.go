package store

import (
	"bytes"
	"encoding/json"
	"maps"
	"slices"
	"testing"

	"toewright/internal/study"
)

// everyTemplate keeps a study of each template, and returns their names.
func everyTemplate(t *testing.T, s *Store) (names []string) {
	t.Helper()
	for _, template := range study.Templates() {
		d := template.Document()
		if _, _, err := s.Create(d, "new"); err != nil {
			t.Fatal(err)
		}
		names = append(names, d.Name)
	}
	return names
}

// byName returns the studies that are kept as files, by their names.
func byName(t *testing.T, s *Store) map[string]string {
	t.Helper()
	list, err := s.List()
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]string{}
	for _, e := range list {
		text, err := s.current(e.ID)
		if err != nil {
			t.Fatal(err)
		}
		files[e.Name] = string(text)
	}
	return files
}

// mustBackUp returns the file of all studies of a store.
func mustBackUp(t *testing.T, s *Store) []byte {
	t.Helper()
	file, _, left, err := s.Backup()
	if err != nil || len(left) > 0 || !IsBackup(file) {
		t.Fatalf("Backup left out %q, %v, IsBackup %t", left, err, IsBackup(file))
	}
	return file
}

// TestBackupBringsAllBack takes a study of each suspension to another browser and back.
func TestBackupBringsAllBack(t *testing.T) {
	here := tab(Memory{}, 1)
	names := everyTemplate(t, here)
	binned, _ := keep(t, here, "in the bin")
	if err := here.Delete(binned); err != nil {
		t.Fatal(err)
	}
	file := mustBackUp(t, here)
	want := byName(t, here)
	delete(want, "in the bin")

	there := tab(Memory{}, 2)
	for round, brought := range []int{len(names), 0} { // the second time all are there
		n, had, err := there.Bring(file)
		if n != brought || had != len(names)-brought || err != nil {
			t.Fatalf("round %d: Bring = %d, %d, %v, want %d new ones of %d", round, n, had, err, brought, len(names))
		}
		if got := byName(t, there); !maps.Equal(got, want) {
			t.Fatalf("round %d: %q are kept, want %q to the byte", round, slices.Sorted(maps.Keys(got)), slices.Sorted(maps.Keys(want)))
		}
	}
	if again := mustBackUp(t, there); !bytes.Equal(again, file) {
		t.Error("the file of what was brought is another one")
	}
}

// TestBringKeepsWhatIsThere brings studies whose names are taken: both are kept.
func TestBringKeepsWhatIsThere(t *testing.T) {
	s := tab(Memory{}, 1)
	id, v := keep(t, s, "mine")
	file := mustBackUp(t, s)
	changed := named(t, "mine")
	changed.Revision = "B"
	if _, err := s.Save(id, v, changed, "edit"); err != nil {
		t.Fatal(err)
	}
	if n, had, err := s.Bring(file); n != 1 || had != 0 || err != nil {
		t.Fatalf("Bring = %d, %d, %v, want 1 beside the other", n, had, err)
	}
	l, err := s.Load(id)
	if err != nil || l.Document.Revision != "B" {
		t.Errorf("the study that was there is %+v, %v, want it as it was", l, err)
	}
	if got := slices.Sorted(maps.Keys(byName(t, s))); !slices.Equal(got, []string{"mine", "mine 2"}) {
		t.Errorf("%q are kept, want both", got)
	}
}

// TestDamagedBackup cuts the file off and changes bytes of it: it is refused, or is the same
// studies still, and nothing that was there changes.
func TestDamagedBackup(t *testing.T) {
	s := tab(Memory{}, 1)
	everyTemplate(t, s)
	file := mustBackUp(t, s)
	there := Memory{}
	keep(t, tab(there, 2), "mine")
	before := maps.Clone(there)
	for at := 0; at < len(file); at += 11 * stride {
		for _, damaged := range [][]byte{file[:at], slices.Concat(file[:at], []byte{file[at] ^ 1}, file[at+1:])} {
			if !IsBackup(damaged) {
				continue // It is opened as a study, which refuses it.
			}
			n, _, err := tab(there, 3).Bring(damaged)
			if err == nil && n > 0 {
				t.Fatalf("damaged at %d: %d studies were kept of it", at, n)
			}
			if !maps.Equal(there, before) {
				t.Fatalf("damaged at %d: what was kept has changed", at)
			}
		}
	}
}

// TestNewerBackup refuses the file of a later version with what to do.
func TestNewerBackup(t *testing.T) {
	s := tab(Memory{}, 1)
	keep(t, s, "mine")
	file := bytes.Replace(mustBackUp(t, s), []byte("backup/1"), []byte("backup/2"), 1)
	if _, _, err := s.Bring(file); !IsBackup(file) || err != ErrNewer {
		t.Errorf("Bring of a newer file: %v, want %v", err, ErrNewer)
	}
}

// TestBringWithoutRoom runs out of room half-way: nothing of the file is kept, nothing lost.
func TestBringWithoutRoom(t *testing.T) {
	full := tab(Memory{}, 1)
	everyTemplate(t, full)
	file := mustBackUp(t, full)
	f := &faulty{Memory: Memory{}, writes: -1}
	s := tab(f, 2)
	keep(t, s, "mine")
	before := byName(t, s)
	size := 0
	for k, v := range f.Memory {
		size += len(k) + len(v)
	}
	f.room = size + 2000
	if _, _, err := s.Bring(file); err == nil {
		t.Fatal("all studies were kept where there is no room for them")
	}
	if got := byName(t, s); !maps.Equal(got, before) {
		t.Errorf("%q are kept, want what was there", slices.Sorted(maps.Keys(got)))
	}
}

// TestBackupLeavesOutWhatIsDamaged says which study is not in the file.
func TestBackupLeavesOutWhatIsDamaged(t *testing.T) {
	kept := Memory{}
	s := tab(kept, 1)
	keep(t, s, "whole")
	id, v := keep(t, s, "damaged")
	kept[revisionKey(id, v)] = "wreck"
	file, n, left, err := s.Backup()
	if n != 1 || !slices.Equal(left, []string{"damaged"}) || err != nil {
		t.Errorf("Backup: %d studies, left out %q, %v", n, left, err)
	}
	var b backup
	if err := json.Unmarshal(file, &b); err != nil || len(b.Studies) != 1 {
		t.Errorf("the file has %d studies, %v", len(b.Studies), err)
	}
}
