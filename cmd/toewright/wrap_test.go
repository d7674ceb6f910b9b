package main

import "testing"

func TestWrap(t *testing.T) {
	tests := []struct {
		name, sentence, want string
	}{
		{name: "empty", sentence: "", want: ""},
		{name: "as wide as a line", sentence: "twelve wide.", want: "twelve wide."},
		{name: "one more", sentence: "thirteen wide", want: "thirteen\n  wide"},
		{name: "indent counts", sentence: "outer ball 12 mm down and more", want: "outer ball\n  12 mm down\n  and more"},
		{name: "long word", sentence: "a tieRodOuterHeight b", want: "a\n  tieRodOuterHeight\n  b"},
		{name: "characters, not bytes", sentence: "±±±±±± ±±±±±", want: "±±±±±± ±±±±±"},
		{name: "spaces of its own", sentence: " two  words ", want: "two words"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := wrap(tt.sentence, 12, "  "); got != tt.want {
				t.Errorf("wrap(%q) = %q, want %q", tt.sentence, got, tt.want)
			}
		})
	}
}
