package model_test

import (
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// TestPointOrigins reads a short table onto a template, of every kind of car: each point is
// said to be placed by its line or still the template's, by the words of the page, and is so.
func TestPointOrigins(t *testing.T) {
	for key, s := range begun(t) {
		d := s.Document()
		lines := strings.SplitAfterN(string(study.FormatPoints(d)), "\n", 4)
		table, err := study.ParsePoints([]byte(strings.Join(lines[:3], "")), d)
		if err != nil {
			t.Fatal(key, err)
		}
		told := model.PointOrigins(d, table)
		all := strings.Join(told, "\n")
		mustDo(t, s.TakePoints(table.Points()))
		for i, p := range d.Points() {
			word, tag := "still the template's: ", "template"
			if i < 2 {
				word, tag = "Placed by the table: ", ""
			}
			if got := model.SourceTag(s.Document(), d.SourcePath(p)); got != tag {
				t.Errorf("%s: %s comes from %q, want %q", key, d.PointName(p), got, tag)
			}
			found := false
			for _, line := range told {
				found = found || strings.Contains(line, word) && strings.Contains(line, d.PointName(p))
			}
			if !found {
				t.Errorf("%s: %s is not said to be %q:\n%s", key, d.PointName(p), word, all)
			}
		}
		if !strings.Contains(all, "(line 2)") || !strings.Contains(all, "(line 3)") {
			t.Errorf("%s: no lines named:\n%s", key, all)
		}
	}
}
