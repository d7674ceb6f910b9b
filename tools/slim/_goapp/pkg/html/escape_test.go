package html

import (
	std "html"
	"testing"
)

func TestEscapeAgrees(t *testing.T) {
	for _, text := range []string{"", "plain", `<a href="x">it's & more</a>`, "&amp;", "grüß €"} {
		if got, want := EscapeString(text), std.EscapeString(text); got != want {
			t.Errorf("EscapeString(%s) = %s, want %s", text, got, want)
		}
	}
}
