package plot

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// texts reads a document as XML and returns what its text elements say.
func texts(t failer, document []byte) []string {
	t.Helper()
	var list []string
	decoder := xml.NewDecoder(bytes.NewReader(document))
	for in := ""; ; {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return list
		}
		if err != nil {
			t.Fatalf("not XML: %v\n%s", err, document)
		}
		switch token := token.(type) {
		case xml.StartElement:
			in = token.Name.Local
		case xml.CharData:
			if in == "text" || in == "title" || in == "desc" {
				list = append(list, string(token))
			}
		case xml.EndElement:
			in = ""
		}
	}
}

func TestDocumentEscapes(t *testing.T) {
	d := Document{Title: "a < b & c", Description: `say "no"`}
	d.Picture.Write(`x"y`, Anchor{}, 10, "<script>\x00")
	got := texts(t, d.Append(nil))
	want := []string{"a < b & c", `say "no"`, "<script>\ufffd"}
	if strings.Join(got, "|") != strings.Join(want, "|") {
		t.Errorf("texts = %q, want %q", got, want)
	}
}

// TestDocumentInline: a picture within a page is the file without style and ground,
// so that two of them do not style each other.
func TestDocumentInline(t *testing.T) {
	d := Document{Title: "a < b"}
	d.Picture.Draw("part", Path{}.Polyline(Point{0, 1}, Point{2, 3}))
	d.Picture.Write("figure", Anchor{}, 10, "12")
	inline := string(d.AppendInline(nil))
	if strings.Contains(inline, "<style") || strings.Contains(inline, `"paper"`) {
		t.Errorf("inline picture has style or ground:\n%s", inline)
	}
	file := string(d.Append(nil))
	style, ground := file[strings.Index(file, "<style>"):strings.Index(file, "</style>\n")]+"</style>\n", `<path class="paper" d="M0 0L0 0L0 0L0 0Z"/>`+"\n"
	if want := strings.Replace(strings.Replace(file, style, "", 1), ground, "", 1); inline != want {
		t.Errorf("inline picture =\n%s\nwant the file's\n%s", inline, want)
	}
}

func TestDocumentIsAlwaysXML(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		d := Document{Title: text, Description: text}
		d.Picture.Write(text, Anchor{Turn: 30}, 10, text)
		texts(t, d.Append(nil))
	})
}

func TestDocumentText(t *testing.T) {
	m := Mark{Class: "tick", Text: "1", Anchor: Anchor{Point{3, 4.5}, Middle, -90}, Size: 9}
	want := `<text class="tick" font-size="9" text-anchor="middle" x="3" y="4.5" transform="rotate(-90 3 4.5)">1</text>` + "\n"
	if got := string(m.append(nil)); got != want {
		t.Errorf("text = %q, want %q", got, want)
	}
}
