package model_test

import (
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// TestKindWords: no two kinds of car are told alike, but those that differ by their points
// alone.
func TestKindWords(t *testing.T) {
	for key, want := range map[string]string{
		"double-wishbone-rack": "Double wishbone, steered by a rack. ", "strut-centre-link": "Strut, steered by a centre link. ",
		"multi-link-rear": "Multi link. ", "solid-axle-pitman": "Solid axle, steered by a centre link. ",
	} {
		if got := model.KindWords(study.Template{Key: key}.Start()); !strings.HasPrefix(got, want) {
			t.Errorf("%s: %q", key, got)
		}
	}
}
