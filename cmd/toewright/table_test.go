package main

import "testing"

func TestTable(t *testing.T) {
	tbl := &table{left: map[int]bool{2: true}}
	tbl.add("", "toe", "note")
	tbl.add("Größe", "-10.5", "at its min")
	tbl.add("x", "1", "")
	want := "         toe  note\nGröße  -10.5  at its min\nx          1\n"
	if got := tbl.String(); got != want {
		t.Errorf("table:\n%swant:\n%s", got, want)
	}
}
