package ui

import (
	"testing"
	"time"

	"toewright/app/demo"
	"toewright/app/store"
)

func TestFirstStudy(t *testing.T) {
	kept := store.Memory{}
	if got, want := firstStudy(kept).Name, demo.Document().Name; got != want {
		t.Errorf("of an empty storage the first study is %q, want %q", got, want)
	}
	mine := demo.Document()
	mine.Name = "Mine"
	if _, err := store.NewKeeper(store.Open(kept, time.Now, browserRandom())).Save(mine, "new"); err != nil {
		t.Fatal(err)
	}
	if got := firstStudy(kept).Name; got != "Mine" {
		t.Errorf("the first study is %q, want the one that was open last", got)
	}
	damaged := 0
	for key, text := range kept {
		if len(text) > 500 { // The study itself.
			kept[key] = text[:len(text)/2]
			damaged++
		}
	}
	if damaged == 0 {
		t.Fatal("the study is nowhere in the storage")
	}
	if got, want := firstStudy(kept).Name, demo.Document().Name; got != want {
		t.Errorf("where what is kept is damaged the first study is %q, want %q", got, want)
	}
}
