package store

import (
	"maps"
	"testing"
)

// copyOf makes the changes noted so far in a copy.
func copyOf(copied Memory, n *Noted) {
	for _, c := range n.Take() {
		if c.Gone {
			delete(copied, c.Key)
		} else {
			copied[c.Key] = c.Text
		}
	}
}

func TestNotedHasEveryChange(t *testing.T) {
	n := &Noted{Storage: Memory{}}
	copied := Memory{}
	id, v := keep(t, tab(n, 1), manyNames(History+3)...)
	copyOf(copied, n)
	if !maps.Equal(copied, n.Storage.(Memory)) {
		t.Error("the copy differs from what is kept after many saves")
	}
	if err := tab(n, 2).Delete(id); err != nil {
		t.Fatal(err)
	}
	if err := tab(n, 3).EmptyBin(); err != nil {
		t.Fatal(err)
	}
	copyOf(copied, n)
	if len(copied) != 0 || len(n.Storage.(Memory)) != 0 {
		t.Errorf("%d texts of revision %v are in the copy after the bin was emptied", len(copied), v)
	}
	if n.Take() != nil {
		t.Error("changes are taken twice")
	}
}

func TestNotedLeavesWhatFailed(t *testing.T) {
	n := &Noted{Storage: &faulty{Memory: Memory{}}}
	if n.Set("a", "1") == nil || n.Remove("a") == nil {
		t.Fatal("a storage that is killed has answered")
	}
	if got := n.Take(); got != nil {
		t.Errorf("noted %v, want nothing of what failed", got)
	}
}

// TestRecoverAnyLoss has the storage lose the last changes, however many: what the copy
// has is opened, without a notice.
func TestRecoverAnyLoss(t *testing.T) {
	n := &Noted{Storage: Memory{}}
	k := NewKeeper(tab(n, 1))
	var states []Memory
	for _, name := range []string{"first", "second", "third"} {
		if _, err := k.Save(named(t, name), "edit"); err != nil {
			t.Fatal(err)
		}
	}
	copied, changes := Memory{}, n.Take()
	for _, c := range changes {
		states = append(states, maps.Clone(copied))
		copied[c.Key] = c.Text
	}
	for lost, kept := range states {
		found, err := Recover(kept, copied)
		if !found || err != nil {
			t.Errorf("only %d changes were kept: Recover = %t, %v", lost, found, err)
		}
		s := tab(kept, 2)
		l, err := s.Load(s.Current())
		if err != nil || l.Document.Name != "third" || l.Notice != "" {
			t.Errorf("only %d changes were kept: opened %+v, %v", lost, l, err)
		}
	}
	if found, err := Recover(copied, maps.Clone(copied)); found || err != nil {
		t.Errorf("Recover of nothing lost = %t, %v", found, err)
	}
}

// TestRecoverLeavesTheLater has a copy that is behind, as one that could not be written,
// and one that another program uses too.
func TestRecoverLeavesTheLater(t *testing.T) {
	kept := Memory{}
	id, v := keep(t, tab(kept, 1), "first")
	copied := map[string]string(maps.Clone(kept))
	copied["else"] = "not ours"
	s := tab(kept, 2)
	if _, err := s.Save(id, v, named(t, "second"), "edit"); err != nil {
		t.Fatal(err)
	}
	for _, damage := range []bool{false, true} {
		if damage {
			kept[headKey(id)] = "wreck"
		}
		before := maps.Clone(kept)
		if found, err := Recover(kept, copied); found || err != nil || !maps.Equal(before, kept) {
			t.Errorf("damaged %t: Recover = %t, %v, want what is kept as it was", damage, found, err)
		}
		if got := nameOf(t, s, id); got != "second" {
			t.Errorf("damaged %t: opened %q", damage, got)
		}
	}
}

// TestRecoverWithoutRoom reports that there is no room and leaves what there was.
func TestRecoverWithoutRoom(t *testing.T) {
	lost, copied := Memory{}, Memory{}
	id, v := keep(t, tab(lost, 1), "first")
	maps.Copy(copied, lost)
	if _, err := tab(copied, 2).Save(id, v, named(t, "second"), "edit"); err != nil {
		t.Fatal(err)
	}
	full := &faulty{Memory: lost, writes: -1}
	full.room = full.size()
	if _, err := Recover(full, copied); err == nil {
		t.Error("recovered where there is no room")
	}
	if got := nameOf(t, tab(lost, 3), id); got != "first" {
		t.Errorf("opened %q, want what was kept", got)
	}
}
