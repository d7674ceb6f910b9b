package store

import (
	"errors"
	"testing"
	"time"
)

func TestHistoryIsKept(t *testing.T) {
	kept := Memory{}
	s := tab(kept, 1)
	names := manyNames(History + 4)
	id, _ := keep(t, s, names...)
	list, err := s.History(id)
	if err != nil {
		t.Fatal(err)
	}
	if len(list) != History {
		t.Fatalf("%d revisions are kept, want %d", len(list), History)
	}
	for i, r := range list {
		d, err := s.LoadRevision(id, r.Version)
		if err != nil || d.Name != names[len(names)-1-i] {
			t.Errorf("revision %v = %v, %v, want %q", r.Version, d, err, names[len(names)-1-i])
		}
	}
}

// TestTwoTabs checks that the second of two tabs to save a study is told, and that
// nothing of either is lost.
func TestTwoTabs(t *testing.T) {
	kept := Memory{}
	a, b := tab(kept, 1), tab(kept, 2)
	id, v := keep(t, a, "both")
	theirs, err := b.Save(id, v, named(t, "from b"), "edit")
	if err != nil {
		t.Fatal(err)
	}
	_, err = a.Save(id, v, named(t, "from a"), "edit")
	var conflict *ConflictError
	if !errors.As(err, &conflict) || conflict.Theirs != theirs {
		t.Fatalf("Save = %v, want a conflict with %v", err, theirs)
	}
	if got := nameOf(t, a, id); got != "from b" {
		t.Errorf("opened %q, want the one that was saved", got)
	}
}

// TestTabsThatSaveAtOnce has a tab write its revision after the other looked at the
// head: the last head counts, the other revision is offered.
func TestTabsThatSaveAtOnce(t *testing.T) {
	kept := Memory{}
	a, b := tab(kept, 1), tab(kept, 2)
	id, v := keep(t, a, "both")
	fromA, err := a.write(id, nil, v, named(t, "from a"), "edit")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := b.write(id, nil, v, named(t, "from b"), "edit"); err != nil {
		t.Fatal(err)
	}
	list, err := b.List()
	if err != nil {
		t.Fatal(err)
	}
	if len(list) != 1 || len(list[0].Others) != 1 || list[0].Others[0].Version != fromA {
		t.Fatalf("List = %+v, want the revision %v among the others", list, fromA)
	}
	v = list[0].Version
	for range History + 2 {
		if v, err = b.Save(id, v, named(t, "later"), "edit"); err != nil {
			t.Fatal(err)
		}
	}
	if d, err := b.LoadRevision(id, fromA); err != nil || d.Name != "from a" {
		t.Errorf("after many saves of the other tab: %v, %v", d, err)
	}
	if err := b.Discard(id, fromA); err != nil {
		t.Fatal(err)
	}
	if list, err = b.List(); err != nil || len(list[0].Others) != 0 {
		t.Errorf("List = %+v, %v, want no others after they were discarded", list, err)
	}
}

func TestClockSetBack(t *testing.T) {
	kept := Memory{}
	id, v := keep(t, tab(kept, 1), "first")
	past := func() time.Time { return noon().AddDate(-10, 0, 0) }
	v2, err := Open(kept, past, newSeeded(2)).Save(id, v, named(t, "second"), "edit")
	if err != nil {
		t.Fatal(err)
	}
	if v2.Number <= v.Number {
		t.Errorf("version %v does not follow %v", v2, v)
	}
	if got := nameOf(t, tab(kept, 3), id); got != "second" {
		t.Errorf("opened %q, want the one saved last", got)
	}
}

// TestFullStorage fills the storage: old revisions make room, and where they do not
// the study stays as it was and the user is told what to do.
func TestFullStorage(t *testing.T) {
	kept := Memory{}
	id, v := keep(t, tab(kept, 1), manyNames(History)...)
	f := &faulty{Memory: kept, writes: -1}
	f.room = f.size()
	s := tab(f, 2)
	v, err := s.Save(id, v, named(t, "squeezed in"), "edit")
	if err != nil {
		t.Fatal(err)
	}
	if list, _ := s.History(id); len(list) < 2 || len(list) >= History {
		t.Errorf("%d revisions are left, want some of %d given up", len(list), History)
	}
	f.room = 1
	if _, err := s.Save(id, v, named(t, "too much"), "edit"); !errors.Is(err, ErrFull) {
		t.Fatalf("Save = %v, want %v", err, ErrFull)
	}
	if got := nameOf(t, tab(kept, 3), id); got != "squeezed in" {
		t.Errorf("opened %q after a save that found no room", got)
	}
	if list, _ := s.History(id); len(list) < 2 {
		t.Errorf("%d revisions are left, want the one before too", len(list))
	}
}
