package ui

import (
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/store"
	"toewright/internal/study"
)

// brought returns a study that comes from outside, of a name.
func brought(t *testing.T, name string) *study.Document {
	t.Helper()
	d := study.Template{Key: "strut-rack"}.Document()
	d.Name = name
	return d
}

// put brings a study in, as a file, a link and a template do.
func (s *stage) put(d *study.Document) {
	s.do(func(ctx app.Context) { s.panels.Kept.put(ctx, s.panels, d) })
}

// TestWhatIsBroughtIsKept brings studies in, and opens the page anew after each with nothing
// edited: it is the one that opens, whatever the others are called, and all are kept.
func TestWhatIsBroughtIsKept(t *testing.T) {
	kept := store.Memory{}
	s := onStage(t, kept, "study")
	for i, notes := range []string{"one", "two", "three"} {
		d := brought(t, "alike")
		d.Notes = notes
		if s.put(d); s.state() != "saved" {
			t.Errorf("a study that was brought in is %q", s.state())
		}
		s = onStage(t, kept, "study")
		if got := s.desk.Session.Document(); got.Name != "alike" || got.Notes != notes {
			t.Errorf("opened %q with the notes %q, want %q", got.Name, got.Notes, notes)
		}
		if list, err := s.panels.Kept.store.List(); err != nil || len(list) != i+1 {
			t.Errorf("%d studies are kept, %v, want %d", len(list), err, i+1)
		}
	}
}

// TestUndoAfterAReload edits, undoes and redoes with the page opened anew between all of it.
func TestUndoAfterAReload(t *testing.T) {
	kept := store.Memory{}
	var s *stage
	name := func() string { return s.desk.Session.Document().Name }
	demo := ""
	for i, step := range []struct {
		do   func()
		want string
	}{
		{func() { s.rename("a") }, "a"},
		{func() { s.rename("b") }, "b"},
		{func() { s.do(s.panels.undo) }, "a"},
		{func() { s.do(s.panels.undo) }, ""},
		{func() { s.rename("c") }, "c"},
		{func() { s.do(s.panels.undo) }, ""},
		{func() { s.do(s.panels.redo) }, ""}, // what was undone before the reload is in the history
		{func() { s.do(s.panels.undo) }, ""},
	} {
		s = onStage(t, kept, "study")
		if i == 0 {
			demo = name()
		}
		step.do()
		want := step.want
		if want == "" {
			want = demo
		}
		if name() != want {
			t.Errorf("step %d: the study is %q, want %q", i, name(), want)
		}
		s.save()
	}
}

// TestUndoOfWhatIsGone undoes to a revision that was damaged since: nothing changes, and it
// is said.
func TestUndoOfWhatIsGone(t *testing.T) {
	kept := store.Memory{}
	s := onStage(t, kept, "study")
	s.rename("mine")
	s.save()
	s = onStage(t, kept, "study")
	for key := range kept {
		if strings.HasPrefix(key, "toewright/study/") {
			kept[key] = "damaged"
		}
	}
	s.do(s.panels.undo)
	if got := s.desk.Session.Document().Name; got != "mine" || !strings.Contains(s.panels.message.text, "cannot be read") {
		t.Errorf("the study is %q, and %q is said", got, s.panels.message.text)
	}
}

// TestAnotherStudyBringsNothingAlong opens another study while the first is searched: the
// answer goes nowhere, and what was found of the first is gone from the panels.
func TestAnotherStudyBringsNothingAlong(t *testing.T) {
	s := onStage(t, store.Memory{}, "search")
	p := s.panels
	p.finding.fault, p.forging.fault, p.shelving.fault, p.reading.fit.fault, p.trading.fault = "old", "old", "old", "old", "old"
	f := &find{Bench: s.panels.bench(), State: &p.finding, Asked: p.question(p.bench(), true)}
	s.do(func(ctx app.Context) {
		f.start(ctx, app.Event{})
		if !p.finding.job.running() {
			t.Error("nothing is searched")
		}
	})
	d := brought(t, "another")
	cars := len(d.Candidates)
	s.put(d)
	s.engine.ConsumeAll()
	if got := s.desk.Session.Document(); len(got.Candidates) != cars || p.finding.job.running() || p.finding.answer != nil {
		t.Errorf("%d candidates, want the %d that the study came with", len(got.Candidates), cars)
	}
	for _, fault := range []string{p.finding.fault, p.forging.fault, p.shelving.fault, p.reading.fit.fault, p.trading.fault} {
		if fault != "" {
			t.Errorf("a panel still says %q", fault)
		}
	}
}

// TestHalfARowIsKept types half a row beside each of two studies, and finds each beside its
// own; what was typed beside the demo goes along with the study that it becomes.
func TestHalfARowIsKept(t *testing.T) {
	kept := store.Memory{}
	s := onStage(t, kept, "readings")
	row := func() string {
		k := &s.panels.reading.keypad
		return strings.Join(k.Texts[model.LeftField:model.StackField], "|")
	}
	typeKeys := func(keys ...string) {
		r := &readings{Bench: s.panels.bench(), State: &s.panels.reading, Typed: func() { s.panels.Kept.noteDraft(s.panels) }}
		s.do(func(ctx app.Context) {
			r.typed(func(k *model.Keypad) { k.Go(model.LeftField) })
			for _, key := range keys {
				r.typed(func(k *model.Keypad) { k.Press(key) })
			}
		})
	}
	again := func() { s = onStage(t, kept, "readings") }

	typeKeys("1", ".", "2")
	if again(); row() != "1.2|" {
		t.Errorf("beside the demo: %q, want what was typed", row())
	}
	s.rename("mine")
	s.save()
	mine := s.panels.Kept.keeper.ID()
	if again(); row() != "1.2|" || s.panels.Kept.store.Draft("") != "" {
		t.Errorf("beside the study that the demo became: %q, and beside the demo %q", row(), s.panels.Kept.store.Draft(""))
	}
	s.put(brought(t, "another"))
	if row() != "|" {
		t.Errorf("beside another study: %q, want nothing", row())
	}
	typeKeys("7")
	if again(); row() != "7|" {
		t.Errorf("beside another study, anew: %q", row())
	}
	s.do(func(ctx app.Context) { s.panels.Kept.open(ctx, s.panels, mine) })
	if row() != "1.2|" {
		t.Errorf("back at the first study: %q", row())
	}
}
