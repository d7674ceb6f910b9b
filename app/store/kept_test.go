package store

import (
	"encoding/json"
	"maps"
	"os"
	"reflect"
	"testing"

	"toewright/internal/study"
)

// keptFile returns a file that the first version wrote.
func keptFile(t *testing.T, name string) []byte {
	t.Helper()
	text, err := os.ReadFile("../../testdata/kept/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// TestKeptLinkOpens reads a link that the first version made: it brings the study that it
// was made of.
func TestKeptLinkOpens(t *testing.T) {
	want, err := study.Decode(keptFile(t, "studies/everything.json"))
	if err != nil {
		t.Fatal(err)
	}
	link := string(keptFile(t, "link.txt"))
	got, err := ParseLink(link[:len(link)-1])
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, want) {
		t.Error("the link brings another study than the one it was made of")
	}
}

// TestKeptBrowserOpens goes on with what the first version kept in a browser: the study
// that was open, its history, and one in the bin.
func TestKeptBrowserOpens(t *testing.T) {
	kept := Memory{}
	if err := json.Unmarshal(keptFile(t, "browser.json"), &kept); err != nil {
		t.Fatal(err)
	}
	before := maps.Clone(kept)
	s := tab(kept, 9)
	l, err := s.Load(s.Current())
	if err != nil || l.Document.Name != "third" || l.Notice != "" {
		t.Fatalf("opened %+v, %v, want the third revision without a notice", l, err)
	}
	history, err := s.History(s.Current())
	if err != nil || len(history) != 3 {
		t.Fatalf("%d revisions, %v, want 3", len(history), err)
	}
	for i, want := range []string{"third", "second", "first"} {
		if d, err := history[i].Document(); err != nil || d.Name != want {
			t.Errorf("revision %v = %v, %v, want %q", history[i].Version, d, err, want)
		}
	}
	list, err := s.List()
	if err != nil || len(list) != 2 || list[0].Name != "in the bin" || !list[0].Deleted || list[1].Deleted {
		t.Errorf("List = %+v, %v, want one study in the bin and one that is not", list, err)
	}
	if !maps.Equal(kept, before) {
		t.Error("looking at it has changed what is kept")
	}
	if _, err := s.Save(s.Current(), l.Version, named(t, "fourth"), "edit"); err != nil {
		t.Fatal(err)
	}
	if got := nameOf(t, tab(kept, 10), s.Current()); got != "fourth" {
		t.Errorf("opened %q after a save, want it", got)
	}
}
