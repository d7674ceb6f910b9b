package report

import (
	"html"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func TestClean(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"plain", "Spacers 12 mm, Ötztal 車", "Spacers 12 mm, Ötztal 車"},
		{"lines", "one\ntwo\tthree", "one two three"},
		{"controls", "a\x00b\x1bc\u009fd", "a\ufffdb\ufffdc\ufffdd"},
		{"what turns text", "a\u202eb\u2066c", "a\ufffdb\ufffdc"},
		{"no text", "\xff", "\ufffd"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := clean(tt.text); got != tt.want {
				t.Errorf("clean(%q) = %q, want %q", tt.text, got, tt.want)
			}
		})
	}
}

func TestMarkup(t *testing.T) {
	var m markup
	m.open("p", "small")
	m.name(`<b>"a" & 'b'`)
	m.close("p")
	m.element("td", "", "1 < 2")
	want := `<p class="small"><bdi>&lt;b&gt;&#34;a&#34; &amp; &#39;b&#39;</bdi></p>` + "\n<td>1 &lt; 2</td>"
	if got := string(m.text); got != want {
		t.Errorf("markup = %q, want %q", got, want)
	}
}

// TestMarkupIsAlwaysText: whatever is written comes back as it was but for what is
// cleaned, and holds no tag.
func TestMarkupIsAlwaysText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		var m markup
		m.write(text)
		got := string(m.text)
		if strings.ContainsAny(got, "<>\"") || !utf8.ValidString(got) || html.UnescapeString(got) != clean(text) {
			t.Errorf("write(%q) = %q", text, got)
		}
	})
}
