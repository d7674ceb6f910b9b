package store

import "testing"

func TestPlace(t *testing.T) {
	kept := Memory{}
	s := tab(kept, 1)
	if got := s.Place(); got != (Place{}) {
		t.Errorf("Place before any = %+v, want none", got)
	}
	for _, want := range []Place{{"0a1b", "find", "Spacers, 12 mm", ""}, {"", "car", "", ""}, {"0a1b", "sheet", "two\nlines", "-peak"}} {
		if err := s.SetPlace(want); err != nil {
			t.Fatal(err)
		}
		if got := tab(kept, 2).Place(); got != want {
			t.Errorf("Place = %+v, want %+v", got, want)
		}
	}
}

// TestEachTabHasItsOwn opens a study each in two tabs, and loads both anew; a third tab opens
// what was open last. A study that is gone is open nowhere.
func TestEachTabHasItsOwn(t *testing.T) {
	kept := Memory{}
	areas := []Memory{{}, {}, {}}
	in := func(i int) *Store {
		s := tab(kept, byte(i+1))
		s.InTab(areas[i])
		return s
	}
	a, _ := keep(t, in(0), "alike")
	b, _ := keep(t, in(1), "alike")
	for i, id := range []ID{a, b} {
		if _, err := NewKeeper(in(i)).Open(id); err != nil {
			t.Fatal(err)
		}
		if err := in(i).SetPlace(Place{Study: id, Panel: "find"}); err != nil {
			t.Fatal(err)
		}
	}
	for i, want := range []ID{a, b, b} {
		if got, place := in(i).Current(), in(i).Place().Study; got != want || place != want {
			t.Errorf("tab %d opens %q at the place of %q, want %q", i, got, place, want)
		}
	}
	if err := in(1).Delete(a); err != nil {
		t.Fatal(err)
	}
	if err := in(1).EmptyBin(); err != nil {
		t.Fatal(err)
	}
	if got := in(0).Current(); got != b {
		t.Errorf("the tab whose study is gone opens %q, want the one that was open last, %q", got, b)
	}
}

// TestPlaceThatCannotBeRead checks that a damaged note and one of a newer program are
// none, and are no study either.
func TestPlaceThatCannotBeRead(t *testing.T) {
	for name, text := range map[string]string{
		"damaged": "toewright-place/1 00000000\n0a1b\nfind\nmine",
		"newer":   sealAs("place", sealVersion+1, "0a1b\nfind\nmine"),
	} {
		s := tab(Memory{placeKey: text}, 1)
		if got := s.Place(); got != (Place{}) {
			t.Errorf("%s: Place = %+v, want none", name, got)
		}
		if list, err := s.List(); err != nil || len(list) != 0 {
			t.Errorf("%s: List = %v, %v, want no study", name, list, err)
		}
	}
}
