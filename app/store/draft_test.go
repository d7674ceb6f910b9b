package store

import (
	"maps"
	"testing"
)

func TestDraft(t *testing.T) {
	kept := Memory{}
	s := tab(kept, 1)
	for _, text := range []string{"half a row", "half a row", "two\nlines", ""} {
		for _, id := range []ID{"", "0a1b"} {
			want := text
			if want != "" {
				want += string(id)
			}
			if err := s.SetDraft(id, want); err != nil {
				t.Fatal(err)
			}
			if got := tab(kept, 2).Draft(id); got != want {
				t.Errorf("beside %q: %q, want %q", id, got, want)
			}
		}
	}
	if ids, err := s.ids(); len(ids) > 0 || err != nil {
		t.Errorf("drafts alone make the studies %q, %v", ids, err)
	}
}

// TestLaterDraftComesBack recovers drafts from the copy: the later one holds, also where it
// is empty because the row was entered.
func TestLaterDraftComesBack(t *testing.T) {
	kept := Memory{}
	s := tab(kept, 1)
	texts := []string{"1", "12", "", "3", ""}
	var at []Memory
	for _, text := range texts {
		if err := s.SetDraft("0a1b", text); err != nil {
			t.Fatal(err)
		}
		at = append(at, maps.Clone(kept))
	}
	for i := range at {
		for j := range at {
			lost := maps.Clone(at[i])
			if _, err := Recover(lost, at[j]); err != nil {
				t.Fatal(err)
			}
			if got, want := tab(lost, 2).Draft("0a1b"), texts[max(i, j)]; got != want {
				t.Errorf("kept %q, copied %q: recovered %q, want %q", texts[i], texts[j], got, want)
			}
		}
	}
	if found, err := Recover(Memory{draftKey("0a1b"): "damaged"}, at[0]); found || err != nil {
		t.Errorf("a damaged draft is overwritten: %t, %v", found, err)
	}
}

// TestDraftGoesWithItsStudy empties the bin.
func TestDraftGoesWithItsStudy(t *testing.T) {
	kept := Memory{}
	s := tab(kept, 1)
	id, _ := keep(t, s, "mine")
	if err := s.SetDraft(id, "half a row"); err != nil {
		t.Fatal(err)
	}
	if err := s.Delete(id); err != nil {
		t.Fatal(err)
	}
	if err := s.EmptyBin(); err != nil {
		t.Fatal(err)
	}
	if len(kept) != 0 {
		t.Errorf("%v is left of a study that is gone", kept)
	}
}
