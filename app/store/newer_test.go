package store

import (
	"errors"
	"maps"
	"strings"
	"testing"
)

// TestNewerIsLeftAlone checks that what a later version of the program has written is
// neither opened, saved over nor removed.
func TestNewerIsLeftAlone(t *testing.T) {
	for _, kind := range []string{"head", "revision"} {
		t.Run(kind, func(t *testing.T) {
			kept := Memory{}
			s := tab(kept, 1)
			id, v := keep(t, s, "first")
			key := map[string]string{"head": headKey(id), "revision": revisionKey(id, v)}[kind]
			_, body, _ := strings.Cut(kept[key], "\n")
			kept[key] = sealAs(kind, sealVersion+1, body)
			before := maps.Clone(kept)

			if _, err := s.Load(id); !errors.Is(err, ErrNewer) {
				t.Errorf("Load = %v, want %v", err, ErrNewer)
			}
			if _, err := s.Save(id, Version{1, "other"}, named(t, "mine"), "edit"); err == nil {
				t.Error("Save wrote over it")
			}
			if err := s.EmptyBin(); err != nil {
				t.Error(err)
			}
			if !maps.Equal(kept, before) {
				t.Error("what is kept has changed")
			}
			list, err := s.List()
			if err != nil || len(list) != 1 || !errors.Is(list[0].Problem, ErrNewer) {
				t.Errorf("List = %+v, %v, want one study with the problem %v", list, err, ErrNewer)
			}
		})
	}
}

// TestNewerStudyInAnOlderTab checks that a tab with the old program does not put its
// own revision over that of a tab with the new one.
func TestNewerStudyInAnOlderTab(t *testing.T) {
	kept := Memory{}
	old := tab(kept, 1)
	id, v := keep(t, old, "first")
	later, err := tab(kept, 2).Save(id, v, named(t, "theirs"), "edit")
	if err != nil {
		t.Fatal(err)
	}
	key := revisionKey(id, later)
	_, body, _ := strings.Cut(kept[key], "\n")
	kept[key] = sealAs("revision", sealVersion+1, body)
	var conflict *ConflictError
	if _, err := old.Save(id, v, named(t, "mine"), "edit"); !errors.As(err, &conflict) {
		t.Errorf("Save = %v, want a conflict", err)
	}
}

func TestOthersKeysAreLeftAlone(t *testing.T) {
	kept := Memory{"else": "1", prefix + "study/odd": "2", prefix + "future/x": "3", prefix + "study//1.a": "4"}
	s := tab(kept, 1)
	id, _ := keep(t, s, manyNames(History+5)...)
	if err := s.Delete(id); err != nil {
		t.Fatal(err)
	}
	if err := s.EmptyBin(); err != nil {
		t.Fatal(err)
	}
	if len(kept) != 4 {
		t.Errorf("%d texts are left, want the 4 that are not ours: %v", len(kept), kept)
	}
}
