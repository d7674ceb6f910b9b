package model

import (
	"errors"

	"toewright/internal/strictjson"
	"toewright/internal/study"
)

// Session is one study open on the page. Its document is never changed in place:
// every edit makes a new one, so that undo is a step back in a list. It belongs to
// one goroutine.
type Session struct {
	doc    *study.Document
	past   []snapshot
	future []snapshot
	made   Step   // made doc
	run    string // key of the run of edits that doc is the latest of, or ""
	cars   *Cars
}

// snapshot is a document and the edit that was made to it.
type snapshot struct {
	doc   *study.Document // nil where it is still to be read
	label string
	read  func() (*study.Document, error)
}

// Step is an edit by its label, and whether it was done, undone or done again.
type Step struct {
	Label string
	Way   Way
}

// Way is what was done with an edit.
type Way int

// The ways of a step.
const (
	Done Way = iota
	Undone
	Redone
)

// Earlier is an edit from before the session, which can be undone as those within it. Read
// returns the document that it was made to.
type Earlier struct {
	Label string
	Read  func() (*study.Document, error)
}

// maxPast is how many steps can be undone. A study weighs some 20 kB.
const maxPast = 200

// Open starts a session on a document, which must not be changed afterwards.
func Open(doc *study.Document) *Session {
	s := &Session{doc: doc}
	s.solve()
	return s
}

// Document returns the study as it stands. It must not be changed.
func (s *Session) Document() *study.Document { return s.doc }

// Cars returns the base car and the candidates, solved.
func (s *Session) Cars() *Cars { return s.cars }

// Edit applies change to a copy of the document, which becomes the session's.
// The label names the edit for undo: "move outer ball". Edits of one run, such as
// the frames of a drag, are undone together: those that follow one another with
// the same key, if it is not "".
//
// The copy is deep; change may do with it what it likes. A document that cannot
// be solved is kept all the same, and its cars say why. One that could not be
// opened again is refused with the reason, and nothing has changed.
//
// Numbers that differ afterwards were typed.
func (s *Session) Edit(label, run string, change func(*study.Document)) error {
	return s.edit(label, run, change, s.from(study.FromTyping))
}

// from says of the numbers that an edit changed where they come from, as
// [study.Document.Attribute] does.
func (s *Session) from(source study.Source) func(*study.Document) {
	return func(d *study.Document) { d.Attribute(s.doc, source) }
}

// edit makes an edit whose numbers are attributed by a function of its own.
func (s *Session) edit(label, run string, change, attribute func(*study.Document)) error {
	next := s.doc.Clone()
	change(next)
	attribute(next)
	if err := opensAgain(next); err != nil {
		return err
	}
	s.adopt(next, label, run)
	return nil
}

// Replace makes another document the session's, as an edit. It must not be changed
// afterwards.
func (s *Session) Replace(label string, doc *study.Document) { s.adopt(doc, label, "") }

// adopt makes next the session's document.
func (s *Session) adopt(next *study.Document, label, run string) {
	s.remember(label, run)
	s.doc, s.made, s.run = next, Step{Label: label}, run
	s.solve()
}

// remember keeps the document as it stands for undo, unless it is one of a run.
func (s *Session) remember(label, run string) {
	if run == "" || run != s.run {
		s.past = append(s.past, snapshot{doc: s.doc, label: label})
		if len(s.past) > maxPast {
			s.past = s.past[1:]
		}
	}
	s.future = nil
}

// Recall makes edits from before the session, the earliest first, ones that can be undone.
func (s *Session) Recall(steps []Earlier) {
	past := make([]snapshot, 0, len(steps)+len(s.past))
	for _, e := range steps {
		past = append(past, snapshot{label: e.Label, read: e.Read})
	}
	s.past = append(past, s.past...)
}

// Made returns the step that made the document as it stands, the zero Step where that is as
// it was opened.
func (s *Session) Made() Step { return s.made }

// EndRun ends a run of edits: the next one with the same key is a step of its own.
func (s *Session) EndRun() { s.run = "" }

// Undo goes one step back. It returns the label of what was undone, "" if there was
// nothing, or if what is from before the session cannot be read: then there is no more to
// undo.
func (s *Session) Undo() string {
	if len(s.past) == 0 {
		return ""
	}
	last := s.past[len(s.past)-1]
	if last.doc == nil {
		var err error
		if last.doc, err = last.read(); err != nil {
			s.past = nil
			return ""
		}
	}
	s.past = s.past[:len(s.past)-1]
	s.future = append(s.future, snapshot{doc: s.doc, label: last.label})
	s.doc, s.made, s.run = last.doc, Step{last.label, Undone}, ""
	s.solve()
	return last.label
}

// Redo goes one step forward again. It returns the label of what was redone, ""
// if there was nothing.
func (s *Session) Redo() string {
	if len(s.future) == 0 {
		return ""
	}
	next := s.future[len(s.future)-1]
	s.future = s.future[:len(s.future)-1]
	s.past = append(s.past, snapshot{doc: s.doc, label: next.label})
	s.doc, s.made, s.run = next.doc, Step{next.label, Redone}, ""
	s.solve()
	return next.label
}

// CanUndo returns the label of the step that Undo would take back, or "".
func (s *Session) CanUndo() string { return topLabel(s.past) }

// CanRedo returns the label of the step that Redo would take, or "".
func (s *Session) CanRedo() string { return topLabel(s.future) }

func topLabel(steps []snapshot) string {
	if len(steps) == 0 {
		return ""
	}
	return steps[len(steps)-1].label
}

// opensAgain returns what keeps a document from being opened once it is written.
func opensAgain(d *study.Document) error {
	b, err := study.Encode(d)
	if err != nil {
		return err
	}
	_, err = study.Decode(b)
	var e *strictjson.Error
	if errors.As(err, &e) { // the text has no reader whom a line would help
		return &strictjson.Error{Path: e.Path, Message: e.Message}
	}
	return err
}
