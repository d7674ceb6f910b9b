package ui

import (
	"time"

	"toewright/app/demo"
	"toewright/app/store"
	"toewright/internal/study"
)

// firstStudy returns the study that is drawn first: of a storage the one that was open
// last, so that no other shows before it, or else the demo. What is wrong with what is
// kept the panels say, which open it again once they are there; see [kept.begin].
func firstStudy(s store.Storage) *study.Document {
	kept := store.Open(s, time.Now, browserRandom())
	id := kept.Current()
	if id == "" {
		return demo.Document()
	}
	l, err := kept.Load(id)
	if err != nil {
		return demo.Document()
	}
	return l.Document
}
