package api

import (
	"encoding/json"
	"testing"

	"toewright/internal/calls"
	"toewright/internal/study"
	"toewright/internal/web/jsonplan"
)

// TestAnswersAreThoseOfJSON: every call's answer goes out in the bytes that encoding/json
// writes, of every demo car.
func TestAnswersAreThoseOfJSON(t *testing.T) {
	texts := []string{fullStudy(t), saloon}
	for _, k := range study.Templates() {
		text, err := study.Encode(k.Document())
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, string(text))
	}
	for _, c := range calls.Public() {
		answered := false
		for _, text := range texts {
			d, err := study.Decode([]byte(text))
			if err != nil {
				t.Fatal(err)
			}
			answer, err := c.New().Ask(t.Context(), d, nil)
			if err != nil {
				continue
			}
			want, err := json.Marshal(answer)
			if err != nil {
				t.Fatal(err)
			}
			got, err := jsonplan.Append(nil, answer)
			if err != nil || string(got) != string(want) {
				t.Errorf("%s: %v\n%.300s, want\n%.300s", c.Name, err, got, want)
			}
			answered = true
		}
		if !answered {
			t.Errorf("%s: no study was answered", c.Name)
		}
	}
}
