package store

import (
	"bytes"
	"compress/zlib"
	"encoding/base64"
	"strings"
	"testing"

	"toewright/internal/study"
)

func TestLinkCarriesAllTemplates(t *testing.T) {
	for _, template := range study.Templates() {
		t.Run(template.Key, func(t *testing.T) {
			link, err := Link(template.Document())
			if err != nil {
				t.Fatal(err)
			}
			d, err := ParseLink("#" + link)
			if err != nil {
				t.Fatal(err)
			}
			got, err := study.Encode(d)
			if err != nil {
				t.Fatal(err)
			}
			want, err := study.Encode(template.Document())
			if err != nil || !bytes.Equal(got, want) {
				t.Errorf("the study comes back as\n%s", got)
			}
		})
	}
}

// TestEveryLetterOfALinkCounts changes, and cuts at, each letter of a link: none gives another
// study. Bits that fill up the last byte of what is compressed may be any.
func TestEveryLetterOfALinkCounts(t *testing.T) {
	link, err := Link(named(t, "study"))
	if err != nil {
		t.Fatal(err)
	}
	want, err := study.Encode(named(t, "study"))
	if err != nil {
		t.Fatal(err)
	}
	for at := range link {
		other := "A"
		if link[at] == 'A' {
			other = "B"
		}
		for _, bad := range []string{link[:at], link[:at] + other + link[at+1:]} {
			d, err := ParseLink(bad)
			if err != nil {
				continue
			}
			if got, err := study.Encode(d); err != nil || !bytes.Equal(got, want) {
				t.Fatalf("altered at %d the link gives %s", at, got)
			}
		}
	}
}

func TestHostileLinks(t *testing.T) {
	packed := func(text []byte) string {
		var b bytes.Buffer
		w := zlib.NewWriter(&b)
		w.Write(text)
		w.Close()
		return base64.RawURLEncoding.EncodeToString(b.Bytes())
	}
	tests := []struct{ name, link string }{
		{"nothing", ""},
		{"nothing packed", linkStart},
		{"newer", "study=2.abcd"},
		{"no base64", linkStart + "%%%"},
		{"too long", linkStart + strings.Repeat("A", maxPacked+1)},
		{"grows a thousandfold", linkStart + packed(make([]byte, 40<<20))},
		{"no study", linkStart + packed([]byte(`{"format":"else"}`))},
		{"deep", linkStart + packed([]byte(strings.Repeat("[", 100_000)))},
		{"trailing", linkStart + packed([]byte("{}")) + "AAAA"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if d, err := ParseLink(tt.link); err == nil {
				t.Errorf("gives %q, want an error", d.Name)
			}
		})
	}
}

func FuzzParseLink(f *testing.F) {
	link, err := Link(named(f, "study"))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(link)
	f.Add(linkStart)
	f.Fuzz(func(t *testing.T, fragment string) {
		d, err := ParseLink(fragment)
		if err == nil && d == nil {
			t.Error("neither a study nor an error")
		}
	})
}

func TestLinkThatIsTooLong(t *testing.T) {
	d := named(t, "study")
	d.Notes = base64.StdEncoding.EncodeToString(noise(maxLink))
	if _, err := Link(d); err == nil {
		t.Error("a link was made that does not get through everywhere")
	}
}

// noise returns bytes that cannot be compressed.
func noise(n int) []byte {
	b := make([]byte, n)
	newSeeded(9).Read(b)
	return b
}
