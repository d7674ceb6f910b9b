package model_test

import (
	"encoding/json"
	"testing"
)

// studyOf returns the study of a case file.
func studyOf(t testing.TB, b []byte) []byte {
	t.Helper()
	var c struct{ Study json.RawMessage }
	if err := json.Unmarshal(b, &c); err != nil {
		t.Fatal(err)
	}
	return c.Study
}
