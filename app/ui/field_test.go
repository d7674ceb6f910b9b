package ui

import (
	"errors"
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// TestFieldForgets checks how long a field keeps what it refused: until its value is
// another, or all numbers were taken over, be it with the same value.
func TestFieldForgets(t *testing.T) {
	for name, tt := range map[string]struct {
		then  func(*field)
		keeps bool
	}{
		"nothing":         {func(*field) {}, true},
		"the same again":  {func(f *field) { f.Value = "12.00" }, true},
		"another value":   {func(f *field) { f.Value = "13.00" }, false},
		"a good import":   {func(*field) { takenOver++ }, false},
		"a good number":   {func(f *field) { f.judge("14", nil); f.Value = "14.00" }, false},
		"a second slip":   {func(f *field) { f.judge("x", errors.New("no length")) }, true},
		"slip after both": {func(f *field) { takenOver++; f.Value = "5"; f.judge("x", errors.New("no length")) }, true},
	} {
		f := &field{ID: "a", Label: "a", Value: "12.00"}
		f.judge("x", errors.New("no length"))
		tt.then(f)
		html := app.HTMLString(f)
		if keeps := strings.Contains(html, "no length") && strings.Contains(html, `value="x"`); keeps != tt.keeps {
			t.Errorf("%s: keeps the problem %t, want %t: %s", name, keeps, tt.keeps, html)
		}
		if !tt.keeps && !strings.Contains(html, `value="`+f.Value+`"`) {
			t.Errorf("%s: does not show %s: %s", name, f.Value, html)
		}
	}
}
