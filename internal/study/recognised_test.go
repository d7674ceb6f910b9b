package study

import (
	"testing"
)

// TestOldTemplatesAreRecognised: a study that an older version began from a template is
// known by its numbers until half of the deciding ones are others, and what is still the
// template's is said, in readings and parts as well.
func TestOldTemplatesAreRecognised(t *testing.T) {
	for _, template := range Templates() {
		t.Run(template.Key, func(t *testing.T) {
			old := template.Document()
			old.Sources, old.Name, old.Notes = nil, "My car", ""
			if d := old.Recognised(); !d.Borrowed().All() || len(d.BorrowedPaths()) != len(numbersOf(t, d)) {
				t.Errorf("as it was begun: %v", d.Sources)
			}
			if old.Sources != nil {
				t.Error("the document itself was changed")
			}
			points := old.Points()
			for i, p := range points {
				p.Place = Vec3{p.Place[0] + 7.25, p.Place[1] + 3.5, p.Place[2] - 1.25}
				if err := old.SetPoint(p); err != nil {
					t.Fatal(err)
				}
				d := old.Recognised()
				b := d.Borrowed()
				switch {
				case i < len(points)/3 && b.All():
					t.Fatalf("with %d points of its own: %d of %d are borrowed", i+1, b.Decisive, b.Deciding)
				case i < len(points)/3 && d.Sources.At(d.SourcePath(p)+".y") != FromFile:
					t.Fatalf("%s, which is its own, is from %q", p.Name, d.Sources.At(d.SourcePath(p)+".y"))
				case i == len(points)-1 && d != old:
					t.Fatalf("all points are its own: %v", d.Sources)
				}
			}
		})
	}
}

// TestStatedSourcesStand: a study that states its sources is no old one, be there nothing
// to state.
func TestStatedSourcesStand(t *testing.T) {
	d := templateDoc(t, "strut-rack")
	for _, path := range numbersOf(t, d) {
		d.SetSource(path, FromFile)
	}
	text, err := Encode(d)
	if err != nil {
		t.Fatal(err)
	}
	again := decode(t, text)
	if got := again.Recognised(); got != again || got.Borrowed().Warning() != "" {
		t.Errorf("sources %v: %+v", again.Sources, got.Borrowed())
	}
}

// TestOthersAreNotRecognised: no case of the test data is taken for a template.
func TestOthersAreNotRecognised(t *testing.T) {
	d := decode(t, []byte(smallText))
	if d.Recognised() != d {
		t.Error("a car of its own is taken for a template")
	}
}
