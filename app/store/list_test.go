package store

import (
	"errors"
	"slices"
	"testing"
)

// names returns the names of the studies that are not in the bin, and of those in it.
func names(t *testing.T, s *Store) (listed, binned []string) {
	t.Helper()
	list, err := s.List()
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range list {
		if e.Deleted {
			binned = append(binned, e.Name)
		} else {
			listed = append(listed, e.Name)
		}
	}
	return listed, binned
}

func TestListRenameDuplicateDelete(t *testing.T) {
	s := tab(Memory{}, 1)
	saloon, _ := keep(t, s, "saloon")
	keep(t, s, "Hillclimb")
	if _, err := s.Rename(saloon, "saloon, lowered"); err != nil {
		t.Fatal(err)
	}
	copied, err := s.Duplicate(saloon)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Delete(copied); err != nil {
		t.Fatal(err)
	}
	listed, binned := names(t, s)
	if want := []string{"Hillclimb", "saloon, lowered"}; !slices.Equal(listed, want) {
		t.Errorf("listed %q, want %q", listed, want)
	}
	if want := []string{"saloon, lowered (copy)"}; !slices.Equal(binned, want) {
		t.Errorf("in the bin %q, want %q", binned, want)
	}
	if err := s.Restore(copied); err != nil {
		t.Fatal(err)
	}
	if _, binned := names(t, s); len(binned) != 0 {
		t.Errorf("in the bin %q after it was taken back", binned)
	}
}

func TestEmptyBin(t *testing.T) {
	kept := Memory{}
	s := tab(kept, 1)
	id, _ := keep(t, s, "a", "b")
	stays, _ := keep(t, s, "c")
	if err := s.Delete(id); err != nil {
		t.Fatal(err)
	}
	if err := s.EmptyBin(); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Load(id); !errors.Is(err, ErrNone) {
		t.Errorf("Load = %v, want %v", err, ErrNone)
	}
	if got := nameOf(t, s, stays); got != "c" {
		t.Errorf("the other study is now %q", got)
	}
}
