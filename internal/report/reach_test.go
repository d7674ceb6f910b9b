package report

import (
	"strings"
	"testing"

	"toewright/internal/study"
)

// TestReach: where a car locks within the travel the sheet says so, and its table has
// dashes beyond.
func TestReach(t *testing.T) {
	d := car(t, "double-wishbone-rack")
	d.Travel = &study.Travel{Bump: 400, Droop: 60, Step: 5}
	d.Tolerances, d.Readings = nil, nil
	page := written(t, gathered(t, d, Options{Candidate: study.BaseName}))
	if text := seen(page); !strings.Contains(text, "base car, left wheel locks at ") || !strings.Contains(text, " of bump: ") {
		t.Error("the page does not say where the car locks")
	}
	rows := cells(t, page, "numbers")[2:]
	if got := strings.Join(rows[0], " "); got != "400 – – –" {
		t.Errorf("the row beyond the lock is %q, want dashes", got)
	}
	if rest := rows[len(rows)-3]; rest[0] != "0" || rest[1] != "0.000" {
		t.Errorf("the row at ride height is %q", rest)
	}
}
