package report

import (
	"errors"
	"html"
	"regexp"
	"strings"
	"testing"

	"toewright/internal/study"
)

// TestWriteIsSelfContained: a page asks for nothing, runs nothing and styles nothing
// but by its one stylesheet.
func TestWriteIsSelfContained(t *testing.T) {
	for _, template := range study.Templates() {
		page := written(t, gathered(t, template.Document(), Options{}))
		page = strings.ReplaceAll(page, ` xmlns="http://www.w3.org/2000/svg"`, "")
		for _, bad := range []string{"<script", "<link", "<img", "<iframe", "http:", "https:", "//", " src=", " href=", " style=", "url(", "@import"} {
			if strings.Contains(page, bad) {
				t.Errorf("%s: the page has %q", template.Key, bad)
			}
		}
		if n := strings.Count(page, "<style>"); n != 1 {
			t.Errorf("%s: %d stylesheets, want 1", template.Key, n)
		}
		if strings.Contains(page, "NaN") || strings.Contains(page, "Inf") {
			t.Errorf("%s: the page has a number that is none", template.Key)
		}
	}
}

// tags are those of a page in order, without what they hold.
func tags(page string) string {
	_, body, _ := strings.Cut(page, "<body>")
	return strings.Join(regexp.MustCompile(`</?[a-z0-9]+`).FindAllString(body, -1), " ")
}

// TestWriteEscapes: whatever the names, the page has the same elements, and its reader
// sees the names.
func TestWriteEscapes(t *testing.T) {
	named := func(name string) string {
		d := car(t, "double-wishbone-rack")
		d.Name, d.Notes, d.Revision, d.Date = name, name, name, name
		d.Candidates[1].Name, d.Candidates[1].Note = name, name
		d.Yield.Candidate = name
		for i := range d.Catalogue {
			d.Catalogue[i].Slot, d.Catalogue[i].Name, d.Catalogue[i].Excludes = name, name, nil
		}
		return written(t, gathered(t, d, Options{Candidate: name, Version: name}))
	}
	plain := tags(named("plain"))
	for _, name := range []string{
		`</title></style><script>alert(1)</script>`, `" onload="alert(1)`, `'><svg onload=alert(1)>`,
		`<!--`, `]]>`, `&lt;b&gt;`, "a\x00b", "\u202eturned", `{{.}} ${x} %s`,
	} {
		page := named(name)
		if got := tags(page); got != plain {
			t.Errorf("name %q changes the page's elements:\n%s", name, got)
		}
		if want := clean(name); strings.Count(seen(page), want) < 6 {
			t.Errorf("name %q: its reader does not see %q", name, want)
		}
	}
}

func TestWriteShortensNotes(t *testing.T) {
	d := car(t, "double-wishbone-rack")
	d.Notes = strings.Repeat("é", longestNotes) + "end"
	page := written(t, gathered(t, d, Options{}))
	if strings.Contains(page, "end</bdi>") || !strings.Contains(page, "é …</bdi>") {
		t.Error("notes that are too long are not cut")
	}
}

// broken is a writer that fails.
type broken struct{}

var errBroken = errors.New("broken")

func (broken) Write([]byte) (int, error) { return 0, errBroken }

func TestWriteFails(t *testing.T) {
	if err := Write(broken{}, gathered(t, car(t, "double-wishbone-rack"), Options{})); !errors.Is(err, errBroken) {
		t.Errorf("error %v, want the writer's", err)
	}
}

// TestInvented: a page says of a car that it is invented for as long as a number that its
// curve depends on is, whatever the car is called, and what else is not its own.
func TestInvented(t *testing.T) {
	const flag, remark = "Make no part by it", "Not this car's own either"
	look := func(d *study.Document, wantFlag, wantRemark bool) {
		t.Helper()
		page := html.UnescapeString(written(t, gathered(t, d, Options{})))
		if got := strings.Contains(page, flag); got != wantFlag {
			t.Errorf("%q on the page: %t, want %t", flag, got, wantFlag)
		}
		if got := strings.Contains(page, remark); got != wantRemark {
			t.Errorf("%q on the page: %t, want %t", remark, got, wantRemark)
		}
	}
	d := car(t, "double-wishbone-rack")
	d.Name, d.Notes = "Own car", ""
	look(d, true, false)
	d.SetSource("left", study.FromTyping)
	look(d, false, true)
	d.SetSource("left.tieRodOuter.z", study.FromTemplate)
	look(d, true, true)
	d.Sources, d.Name = study.Sources{}, "Own car, invented by none"
	look(d, false, false)
	d.Sources = nil // as an older version wrote it
	look(d, true, false)
}
