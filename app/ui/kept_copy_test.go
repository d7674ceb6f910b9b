package ui

import (
	"errors"
	"maps"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/store"
	"toewright/internal/study"
)

// slowCopy is a copy that answers when the test says so.
type slowCopy struct {
	texts   map[string]string
	read    func(map[string]string, error)
	written []func(error)
}

func (c *slowCopy) Read(done func(map[string]string, error)) { c.read = done }

func (c *slowCopy) Write(changes []store.Change, done func(error)) {
	for _, change := range changes {
		if change.Gone {
			delete(c.texts, change.Key)
		} else {
			c.texts[change.Key] = change.Text
		}
	}
	c.written = append(c.written, done)
}

// answer lets all writes be on disk, or fail.
func (c *slowCopy) answer(err error) {
	for _, done := range c.written {
		done(err)
	}
	c.written = nil
}

// rename names the study on a stage.
func (s *stage) rename(name string) {
	s.do(func(app.Context) {
		s.desk.Session.Edit("rename", "", func(d *study.Document) { d.Name = name })
	})
}

// save keeps the study on a stage now.
func (s *stage) save() {
	s.do(func(ctx app.Context) { s.panels.Kept.save(ctx, s.panels) })
}

// state returns what the page says of the study on a stage.
func (s *stage) state() string { return s.panels.Kept.state(s.panels) }

func TestSavedMeansOnDisk(t *testing.T) {
	for _, failed := range []error{nil, errors.New("no disk")} {
		copied := &slowCopy{texts: map[string]string{}}
		s := onStageWithCopy(t, store.Memory{}, copied, "study")
		copied.read(nil, failed)
		s.rename("mine")
		for _, step := range []struct {
			name string
			do   func()
			want string
		}{
			{"edited", func() {}, "saving"},
			{"kept, not yet on disk", s.save, "saving"},
			{"on disk", func() { copied.answer(failed); s.do(func(app.Context) {}) }, "saved"},
		} {
			step.do()
			if got := s.state(); got != step.want {
				t.Errorf("%s: the page says %q, want %q", step.name, got, step.want)
			}
		}
	}
}

// TestLostSaveComesBack opens a page whose browser has lost the last save, and all of it.
func TestLostSaveComesBack(t *testing.T) {
	copied := &slowCopy{texts: map[string]string{}}
	kept := store.Memory{}
	s := onStageWithCopy(t, kept, copied, "study")
	copied.read(nil, nil)
	s.rename("first")
	s.save()
	first := maps.Clone(kept)
	s.rename("second")
	s.save()
	for _, lost := range []store.Memory{first, {}} {
		again := onStageWithCopy(t, lost, copied, "study")
		copied.read(maps.Clone(copied.texts), nil)
		again.do(func(app.Context) {})
		if got := again.desk.Session.Document().Name; got != "second" {
			t.Errorf("with %d texts left: opened %q, want what was said to be saved", len(lost), got)
		}
	}
}

// TestReaderFasterThanTheCopy edits before the copy has answered: that stays open, as a
// change of the study that was there, or as a study of its own where the browser had lost it.
func TestReaderFasterThanTheCopy(t *testing.T) {
	for _, tt := range []struct {
		name          string
		lost, another bool
		studies       int
		offered       bool
	}{
		{name: "nothing lost", studies: 1},
		{name: "all lost", lost: true, studies: 2},
		{name: "the last save lost", another: true, studies: 2, offered: true},
	} {
		t.Run(tt.name, func(t *testing.T) {
			kept, copied := store.Memory{}, &slowCopy{texts: map[string]string{}}
			before := onStageWithCopy(t, kept, copied, "study")
			copied.read(nil, nil)
			before.rename("before")
			before.save()
			left := maps.Clone(kept)
			if tt.another {
				before.rename("saved later")
				before.save()
			}
			if tt.lost {
				clear(left)
			}
			s := onStageWithCopy(t, left, copied, "study")
			s.rename("at once")
			copied.read(maps.Clone(copied.texts), nil)
			s.do(func(app.Context) {})
			if got := s.desk.Session.Document().Name; got != "at once" {
				t.Errorf("open is %q, want what the reader began with", got)
			}
			if offered := s.panels.Kept.theirs != nil; offered != tt.offered {
				t.Errorf("what came back is offered: %t, want %t", offered, tt.offered)
			}
			if list, err := s.panels.Kept.store.List(); err != nil {
				t.Error(err)
			} else if s.save(); len(list) == 0 {
				t.Error("the study of before is not in the list")
			}
			if list, _ := s.panels.Kept.store.List(); len(list) != tt.studies {
				t.Errorf("%d studies are kept, want %d", len(list), tt.studies)
			}
		})
	}
}

// TestNoSaveUnderAMovingHand edits as the frames of a drag do: the save, which takes longer
// than a frame, waits until the hand is still.
func TestNoSaveUnderAMovingHand(t *testing.T) {
	s := onStage(t, store.Memory{}, "study")
	s.desk.Moving = true
	s.rename("on the way")
	if s.panels.Kept.later(s.panels); s.panels.Kept.pending {
		t.Error("a save is on its way while the hand moves")
	}
	s.desk.Moving = false
	if s.panels.Kept.later(s.panels); !s.panels.Kept.pending {
		t.Error("no save is on its way though the hand is still")
	}
}

// TestUpdateBeforeMount has the page drawn anew before it hears that it is mounted, as happens on a
// busy machine, with a change that the copy does not have yet: it waits, and is not lost.
func TestUpdateBeforeMount(t *testing.T) {
	copied := &slowCopy{texts: map[string]string{}}
	k := keepIn(store.Memory{}, copied)
	p := &Panels{Desk: model.NewDesk(k.first()), Kept: k}
	if err := k.store.SetDraft("", "12"); err != nil {
		t.Fatal(err)
	}
	p.OnUpdate(app.Context{})
	copied.answer(nil)
	if len(copied.texts) > 0 {
		t.Errorf("written before the page stands: %v", copied.texts)
	}
	if k.copying.flush(app.Context{}); len(copied.texts) != 1 {
		t.Errorf("%d texts are left to be written, want the draft", len(copied.texts))
	}
}
