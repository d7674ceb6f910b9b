package ui

import "encoding/json"

// halfTyped is what stands in fields and was not taken yet, of the open study: a reload in the
// middle of a number finds it again.
var halfTyped typedTexts

// typedTexts are texts by the ids of their fields.
type typedTexts struct {
	texts map[string]string
	found map[string]bool // those that a reload found: the browser takes them for the fields' own
	note  func()          // keeps them; nil where nothing is kept
}

// find puts back what was being typed when the page was left.
func (t *typedTexts) find(texts map[string]string) {
	t.texts, t.found = texts, map[string]bool{}
	for id := range texts {
		t.found[id] = true
	}
}

// or returns what is being typed in a field, or else what stands there.
func (t *typedTexts) or(id, stands string) string {
	if text, ok := t.texts[id]; ok {
		return text
	}
	return stands
}

// set notes what is being typed in a field; a text that stands there anyway is nothing typed.
func (t *typedTexts) set(id, text, stands string) {
	delete(t.found, id)
	if text == stands {
		t.drop(id)
		return
	}
	if t.texts == nil {
		t.texts = map[string]string{}
	}
	t.texts[id] = text
	t.keep()
}

// drop forgets a field: what was typed there is taken, or given up.
func (t *typedTexts) drop(id string) {
	if _, ok := t.texts[id]; ok {
		delete(t.texts, id)
		delete(t.found, id)
		t.keep()
	}
}

func (t *typedTexts) keep() {
	if t.note != nil {
		t.note()
	}
}

// draftText is what is kept beside a study of all that is being typed.
type draftText struct {
	Row    string            `json:"row,omitzero"` // of readings
	Fields map[string]string `json:"fields,omitzero"`
}

// String writes it; a row alone as it is.
func (d draftText) String() string {
	if len(d.Fields) == 0 {
		return d.Row
	}
	b, err := json.Marshal(d)
	if err != nil {
		return d.Row // texts can always be written
	}
	return string(b)
}

// parseDraft reads what [draftText.String] wrote.
func parseDraft(text string) draftText {
	var d draftText
	if json.Unmarshal([]byte(text), &d) != nil || d.Row == "" && len(d.Fields) == 0 {
		return draftText{Row: text}
	}
	return d
}
