package model_test

import (
	"errors"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"toewright/app/model"
)

// sheetOf is a plain list of cells, row after row, that takes whole numbers alone.
type sheetOf struct{ cells []string }

func (s *sheetOf) model() *model.Cells {
	return &model.Cells{
		Rows:  len(s.cells) / model.GridColumns,
		Shown: func(row, column int) string { return s.cells[row*model.GridColumns+column] },
		Take: func(row, column int, text string) error {
			x, err := strconv.Atoi(strings.TrimSpace(text))
			if err != nil {
				return err
			}
			s.cells[row*model.GridColumns+column] = strconv.Itoa(x)
			return nil
		},
	}
}

// reader is somebody who knows a spreadsheet: a place in the list, the text that is in hand,
// and whether the arrows are that text's.
type reader struct {
	cells []string
	at    int
	hand  *string
	in    bool
}

// let puts the text in hand into the list, and reports whether it could.
func (r *reader) let() bool {
	if r.hand != nil && strings.TrimSpace(*r.hand) != "" {
		x, err := strconv.Atoi(strings.TrimSpace(*r.hand))
		if err != nil {
			return false
		}
		r.cells[r.at] = strconv.Itoa(x)
	}
	r.hand, r.in = nil, false
	return true
}

// to goes to a place if the text in hand can be let go and the place is there; beyond the
// ends of a row or a column it stays.
func (r *reader) to(by int) {
	at := r.at + by
	sideways := by == 1 || by == -1
	if !r.let() {
		return
	}
	if at >= 0 && at < len(r.cells) && (!sideways || at/model.GridColumns == r.at/model.GridColumns) {
		r.at = at
	}
}

func (r *reader) press(key string) {
	const row = model.GridColumns
	switch key {
	case "f2":
		if r.hand == nil {
			text := r.cells[r.at]
			r.hand, r.in = &text, true
		} else {
			r.in = !r.in
		}
	case "escape":
		r.hand, r.in = nil, false
	case "enter":
		r.to(row)
	case "shift enter":
		r.to(-row)
	case "tab", "shift tab":
		by := map[string]int{"tab": 1, "shift tab": -1}[key]
		if at := r.at + by; at >= 0 && at < len(r.cells) && r.let() {
			r.at = at
		}
	case "arrowup", "arrowdown", "arrowleft", "arrowright":
		if !r.in {
			r.to(map[string]int{"arrowup": -row, "arrowdown": row, "arrowleft": -1, "arrowright": 1}[key])
		}
	case "home", "end", "ctrl home", "ctrl end":
		if r.hand == nil {
			r.at = map[string]int{"home": r.at / row * row, "end": r.at/row*row + row - 1, "ctrl home": 0, "ctrl end": len(r.cells) - 1}[key]
		}
	}
}

// TestGridIsASpreadsheet presses keys at random, types at random and presses on cells at
// random, beside somebody who does the same with a plain list.
func TestGridIsASpreadsheet(t *testing.T) {
	keys := []string{"arrowup", "arrowdown", "arrowleft", "arrowright", "enter", "shift enter", "tab", "shift tab", "f2", "escape", "home", "end", "ctrl home", "ctrl end", "pagedown", "a"}
	rapid.Check(t, func(t *rapid.T) {
		rows := rapid.IntRange(1, 6).Draw(t, "rows")
		var s sheetOf
		for i := range rows * model.GridColumns {
			s.cells = append(s.cells, strconv.Itoa(100+i))
		}
		r := reader{cells: slices.Clone(s.cells)}
		var g model.Grid
		for range rapid.IntRange(1, 60).Draw(t, "steps") {
			switch rapid.IntRange(0, 9).Draw(t, "what") {
			case 0, 1, 2: // a whole text, as a browser reports what stands in the field
				text := rapid.SampledFrom([]string{"7", "-12", " 3 ", "", "abc", "1 2"}).Draw(t, "text")
				g.Type(text)
				r.hand = &text
			case 3: // a press on a cell
				to := rapid.IntRange(0, len(s.cells)-1).Draw(t, "to")
				g.Pick(to/model.GridColumns, to%model.GridColumns, s.model())
				if to != r.at && r.let() {
					r.at = to
				}
			case 4: // the keyboard goes elsewhere
				g.Settle(s.model())
				r.let()
			default:
				key := rapid.SampledFrom(keys).Draw(t, "key")
				g.Press(key, s.model())
				r.press(key)
			}
			if !slices.Equal(s.cells, r.cells) {
				t.Fatalf("cells %v, want %v", s.cells, r.cells)
			}
			if at := g.Row*model.GridColumns + g.Column; at != r.at {
				t.Fatalf("at cell %d, want %d", at, r.at)
			}
			if (g.Mode != model.Walking) != (r.hand != nil) || (g.Mode == model.Within) != r.in || r.hand != nil && g.Text != *r.hand {
				t.Fatalf("mode %d with %q, want text in hand: %t, gone into: %t", g.Mode, g.Text, r.hand != nil, r.in)
			}
			if g.Fault != nil && g.Mode == model.Walking {
				t.Fatal("a fault of nothing that is typed")
			}
		}
	})
}

// TestGridOwns: what is not the grid's is left to the text and to the page.
func TestGridOwns(t *testing.T) {
	for _, tt := range []struct {
		name, key string
		g         model.Grid
		want      bool
	}{
		{"arrow among cells", "arrowleft", model.Grid{}, true},
		{"arrow at the edge, or the caret would move", "arrowup", model.Grid{}, true},
		{"arrow in the text", "arrowleft", model.Grid{Mode: model.Within}, false},
		{"arrow takes what replaces", "arrowleft", model.Grid{Mode: model.Typing}, true},
		{"home in what is typed", "home", model.Grid{Mode: model.Typing}, false},
		{"tab", "tab", model.Grid{}, true},
		{"tab out at the end", "tab", model.Grid{Row: 1, Column: 2}, false},
		{"tab out at the beginning", "shift tab", model.Grid{}, false},
		{"escape of a menu", "escape", model.Grid{}, false},
		{"escape of a text", "escape", model.Grid{Mode: model.Typing}, true},
		{"enter in the text", "enter", model.Grid{Mode: model.Within}, true},
		{"a letter", "5", model.Grid{}, false},
		{"the page's commands", "ctrl k", model.Grid{}, false},
	} {
		if got := tt.g.Owns(tt.key, 2); got != tt.want {
			t.Errorf("%s: %t, want %t", tt.name, got, tt.want)
		}
	}
}

// TestRefusedTextStays: what was refused stands in its cell until it is right or given up.
func TestRefusedTextStays(t *testing.T) {
	s := sheetOf{[]string{"1", "2", "3", "4", "5", "6"}}
	var g model.Grid
	g.Type("two")
	for _, key := range []string{"enter", "tab", "arrowdown"} {
		if g.Press(key, s.model()); g.Text != "two" || g.Fault == nil || g.Row != 0 || g.Column != 0 {
			t.Fatalf("%s: %+v, want the text and its fault in its cell", key, g)
		}
	}
	if g.Pick(1, 1, s.model()); g.Row != 0 || g.Text != "two" || !errors.Is(g.Fault, strconv.ErrSyntax) {
		t.Errorf("after a press elsewhere: %+v", g)
	}
	g.Type("2")
	if g.Press("enter", s.model()); s.cells[0] != "2" || g != (model.Grid{Row: 1}) {
		t.Errorf("put right: %v, %+v", s.cells, g)
	}
	if g.Clamp(1); g.Row != 0 {
		t.Errorf("row %d of one row", g.Row)
	}
}
