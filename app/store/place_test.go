package store

import "testing"

func TestPlace(t *testing.T) {
	kept := Memory{}
	s := tab(kept, 1)
	if got := s.Place(); got != (Place{}) {
		t.Errorf("Place before any = %+v, want none", got)
	}
	for _, want := range []Place{{"0a1b", "find", "Spacers, 12 mm"}, {"", "car", ""}, {"0a1b", "sheet", "two\nlines"}} {
		if err := s.SetPlace(want); err != nil {
			t.Fatal(err)
		}
		if got := tab(kept, 2).Place(); got != want {
			t.Errorf("Place = %+v, want %+v", got, want)
		}
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
