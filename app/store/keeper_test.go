package store

import "testing"

func TestKeeperSavesAndOpensAgain(t *testing.T) {
	kept := Memory{}
	k := NewKeeper(tab(kept, 1))
	d := named(t, "mine")
	if !k.Unsaved(d) {
		t.Error("a study that was never kept counts as saved")
	}
	for range 2 { // the second has nothing to do
		if notice, err := k.Save(d, "new"); notice != "" || err != nil {
			t.Fatalf("Save = %q, %v", notice, err)
		}
	}
	if k.Unsaved(d) || k.Version().Number != 1 {
		t.Errorf("unsaved %t, version %v after a save", k.Unsaved(d), k.Version())
	}
	next := tab(kept, 2)
	l, err := NewKeeper(next).Open(next.Current())
	if err != nil || l.Document.Name != "mine" {
		t.Errorf("the next tab opens %+v, %v", l, err)
	}
}

// TestKeeperOvertaken checks that the tab that comes second keeps its study beside the
// other's.
func TestKeeperOvertaken(t *testing.T) {
	kept := Memory{}
	a, b := NewKeeper(tab(kept, 1)), NewKeeper(tab(kept, 2))
	if _, err := a.Save(named(t, "both"), "new"); err != nil {
		t.Fatal(err)
	}
	if _, err := b.Open(a.ID()); err != nil {
		t.Fatal(err)
	}
	if a.Overtaken() || b.Overtaken() {
		t.Error("a tab is overtaken though neither has saved")
	}
	if _, err := b.Save(named(t, "from b"), "edit"); err != nil {
		t.Fatal(err)
	}
	if !a.Overtaken() || b.Overtaken() {
		t.Errorf("overtaken: a %t, b %t, want a alone", a.Overtaken(), b.Overtaken())
	}
	if r := a.Theirs(); r == nil || r.Version != b.Version() || r.Label != "edit" {
		t.Errorf("Theirs() = %+v, want the revision of b", r)
	}
	notice, err := a.Save(named(t, "from a"), "edit")
	if err != nil || notice == "" {
		t.Fatalf("Save = %q, %v, want a notice", notice, err)
	}
	if a.ID() == b.ID() {
		t.Error("both tabs still keep one study")
	}
	for k, want := range map[*Keeper]string{a: "from a", b: "from b"} {
		if got := nameOf(t, tab(kept, 3), k.ID()); got != want {
			t.Errorf("opened %q, want %q", got, want)
		}
	}
}

// TestKeeperApart checks that a tab goes on with a study of its own, and the one that it
// leaves stays as the other tab saved it.
func TestKeeperApart(t *testing.T) {
	kept := Memory{}
	k := NewKeeper(tab(kept, 1))
	if _, err := k.Save(named(t, "one"), "new"); err != nil {
		t.Fatal(err)
	}
	left, d := k.ID(), named(t, "two")
	if err := k.Apart(d, "apart"); err != nil {
		t.Fatal(err)
	}
	if k.ID() == left || k.Unsaved(d) || k.Overtaken() {
		t.Errorf("study %s after %s, unsaved %t, overtaken %t", k.ID(), left, k.Unsaved(d), k.Overtaken())
	}
	for id, want := range map[ID]string{left: "one", k.ID(): "two"} {
		if got := nameOf(t, tab(kept, 2), id); got != want {
			t.Errorf("study %s is %q, want %q", id, got, want)
		}
	}
}

func TestKeeperWithoutRoom(t *testing.T) {
	f := &faulty{Memory: Memory{}, writes: -1, room: 1}
	k := NewKeeper(tab(f, 1))
	d := named(t, "mine")
	if _, err := k.Save(d, "new"); err == nil {
		t.Fatal("saved where there is no room")
	}
	if !k.Unsaved(d) {
		t.Error("counts as saved though it found no room")
	}
	f.room = 0
	if _, err := k.Save(d, "new"); err != nil || k.Unsaved(d) {
		t.Errorf("Save = %v, unsaved %t once there is room", err, k.Unsaved(d))
	}
}
