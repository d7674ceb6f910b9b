package store

import (
	"strings"
	"testing"
)

// labels writes steps with the name of the study before each.
func labels(t *testing.T, s *Store, id ID, v Version) string {
	t.Helper()
	steps, err := s.Steps(id, v)
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, step := range steps {
		d, err := s.LoadRevision(id, step.Before)
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, d.Name+" "+step.Label)
	}
	return strings.Join(list, ", ")
}

// TestSteps keeps a study after edits, undos and redos. What can be undone after each save
// is what could be undone before the page was left.
func TestSteps(t *testing.T) {
	s := tab(Memory{}, 1)
	var id ID
	var v Version
	for i, save := range []struct{ name, label, want string }{
		{"a", "", ""},
		{"b", "x", "a x"},
		{"c", "y", "a x, b y"},
		{"b", Undone("y"), "a x"},
		{"a", Undone("x"), ""},
		{"b", Redone("x"), "a x"},
		{"d", "z", "a x, b z"},
		{"a", "go back to revision 1", "a x, b z, d go back to revision 1"},
		{"d", Undone("go back to revision 1"), "a x, b z"},
		{"a", Undone("two steps at once"), ""},
	} {
		var err error
		if i == 0 {
			id, v, err = s.Create(named(t, save.name), save.label)
		} else {
			v, err = s.Save(id, v, named(t, save.name), save.label)
		}
		if err != nil {
			t.Fatal(err)
		}
		if got := labels(t, s, id, v); got != save.want {
			t.Errorf("after save %d, %q: %q can be undone, want %q", i, save.label, got, save.want)
		}
	}
}

// TestStepsEndAtDamage checks that what lies before a damaged revision cannot be undone to,
// and that what lies after it can.
func TestStepsEndAtDamage(t *testing.T) {
	kept := Memory{}
	s := tab(kept, 1)
	id, v := keep(t, s, "a", "b", "c", "d")
	list, err := s.History(id)
	if err != nil {
		t.Fatal(err)
	}
	kept[revisionKey(id, list[2].Version)] = "damaged" // of b
	if got := labels(t, s, id, v); got != "c rename" {
		t.Errorf("%q can be undone, want what was done since the damage", got)
	}
}

// TestSpareBecomesTheFirstRevision changes what need not be kept: it is kept too.
func TestSpareBecomesTheFirstRevision(t *testing.T) {
	s := tab(Memory{}, 1)
	k := NewKeeper(s)
	demo := named(t, "demo")
	k.Spare(demo)
	if k.Unsaved(demo) {
		t.Error("the spare study is to be saved before anything was changed")
	}
	if _, err := k.Save(named(t, "mine"), "rename"); err != nil {
		t.Fatal(err)
	}
	if got := labels(t, s, k.ID(), k.Version()); got != "demo rename" {
		t.Errorf("%q can be undone, want the first change", got)
	}
	if list, err := s.List(); err != nil || len(list) != 1 {
		t.Errorf("%d studies are kept, %v, want one", len(list), err)
	}
	if !k.Unsaved(demo) {
		t.Error("the spare study, come back to, counts as saved")
	}
	k.Start()
	if !k.Unsaved(demo) {
		t.Error("a study that is put in counts as one that need not be kept")
	}
}
