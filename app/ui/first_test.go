package ui

import (
	"strings"
	"testing"

	"toewright/app/demo"
	"toewright/app/store"
)

func TestFirstStudy(t *testing.T) {
	kept := store.Memory{}
	none := demo.Document().Name
	if got := keepIn(kept, nil).first().Name; got != none {
		t.Errorf("of an empty storage the first study is %q, want %q", got, none)
	}
	mine := demo.Document()
	mine.Name = "Mine"
	if _, err := keepIn(kept, nil).keeper.Save(mine, "new"); err != nil {
		t.Fatal(err)
	}
	if got := keepIn(kept, nil).first().Name; got != "Mine" {
		t.Errorf("the first study is %q, want the one that was open last", got)
	}
	for key, text := range kept {
		if len(text) > 500 { // The study itself.
			kept[key] = text[:len(text)/2]
		}
	}
	if got := keepIn(kept, nil).first().Name; got != none {
		t.Errorf("where what is kept is damaged the first study is %q, want %q", got, none)
	}
	s := onStage(t, kept, "study")
	if html := s.text(); !strings.Contains(html, "The study that was open last stays closed") {
		t.Error("nobody is told that the study is damaged")
	}
}
