package model_test

import (
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

func TestPastePoints(t *testing.T) {
	for _, tt := range []struct {
		name, text, says string
		at, axis         int
		count            int
	}{
		{"two rows", "1\t2\t3\n4\t\t1/2 in\r\n", "", 0, 0, 5},
		{"one column", "9.5 - 1/2\n7", "", 1, 2, 2},
		{"too wide", "1\t2\t3", "has no place", 0, 1, 0},
		{"too long", strings.Repeat("1\n", 40), "has no place", 0, 0, 0},
		{"no number", "1\tup", "y: \"up\" is", 0, 0, 0},
	} {
		s := template(t, "double-wishbone-rack")
		before := s.Document()
		rows := model.PointRows(before, study.Left)
		n, err := s.PastePoints(rows, tt.at, tt.axis, tt.text)
		if n != tt.count || (err == nil) != (tt.says == "") || err != nil && !strings.Contains(err.Error(), tt.says) {
			t.Errorf("%s: %d put, %v, want %d, %q", tt.name, n, err, tt.count, tt.says)
		}
		if err != nil && s.Document() != before {
			t.Errorf("%s: refused, and the study is another", tt.name)
		}
	}
	s := template(t, "double-wishbone-rack")
	rows := model.PointRows(s.Document(), study.Left)
	if _, err := s.PastePoints(rows, 0, 0, "1\t2\t3\n4\t\t1/2 in"); err != nil {
		t.Fatal(err)
	}
	after := model.PointRows(s.Document(), study.Left)
	want := study.Vec3{4, rows[1].Place[1], 12.7}
	if after[0].Place != (study.Vec3{1, 2, 3}) || after[1].Place != want {
		t.Errorf("points %v and %v, want 1 2 3 and %v", after[0].Place, after[1].Place, want)
	}
	if d := s.Document(); model.IsTheirs(d, after[1].PlacedPoint, 0) || !model.IsTheirs(study.Templates()[0].Start(), study.Templates()[0].Start().Points()[0], 0) {
		t.Error("what was pasted is a template's still, or a template's is not")
	}
}
