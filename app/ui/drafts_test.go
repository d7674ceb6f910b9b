package ui

import (
	"maps"
	"testing"
)

func TestDraftText(t *testing.T) {
	for _, d := range []draftText{
		{}, {Row: `{"at":1,"texts":["","1.2","",""]}`}, {Fields: map[string]string{"wheelbase": "25"}},
		{Row: `{"at":1}`, Fields: map[string]string{"a": "", "b": "3 1/"}},
	} {
		if got := parseDraft(d.String()); got.Row != d.Row || !maps.Equal(got.Fields, d.Fields) {
			t.Errorf("%+v comes back as %+v", d, got)
		}
	}
	if got := parseDraft("{"); got.Row != "{" || got.Fields != nil {
		t.Errorf("what cannot be read is %+v, want it left to the row", got)
	}
}

func TestHalfTyped(t *testing.T) {
	kept := 0
	texts := typedTexts{note: func() { kept++ }}
	texts.set("a", "1", "2")
	texts.set("b", "3", "2")
	texts.set("b", "2", "2")
	texts.drop("c")
	if len(texts.texts) != 1 || texts.texts["a"] != "1" || kept != 3 {
		t.Errorf("%v, kept %d times, want a alone, kept 3 times", texts.texts, kept)
	}
}
