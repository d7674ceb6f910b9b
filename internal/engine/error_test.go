package engine

import (
	"context"
	"errors"
	"fmt"
	"testing"

	"toewright/internal/strictjson"
	"toewright/solver"
)

func TestExplain(t *testing.T) {
	tests := []struct {
		name  string
		err   error
		fault Fault
		want  string
	}{
		{"of the file", &strictjson.Error{Path: "travel.step", Message: "is odd"}, Wrong, "base car: travel.step: is odd"},
		{"of the input", &solver.InputError{Key: "toe", Problem: "is 50 deg"}, Wrong, "base car: toe: is 50 deg"},
		{"static", &solver.StaticError{Link: "tie rod", Share: 0.5}, Unsolvable,
			"base car at travel 0: left side: the static position cannot be met: tie rod stands in the way after 50 % of the change; make the change smaller or hold fewer setpoints"},
		{"ours, of no car", &Error{Fault: Unsolvable, Key: "heave", Message: "is far"}, Unsolvable, "base car: heave: is far"},
		{"of another kind", errors.New("solver: out of paper"), Wrong, "base car: out of paper"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var e *Error
			if !errors.As(explain(tt.err, "base car"), &e) || e.Fault != tt.fault || e.Error() != tt.want {
				t.Errorf("explain(%v) = %v, want %q", tt.err, e, tt.want)
			}
		})
	}
}

func TestExplainKeeps(t *testing.T) {
	for _, err := range []error{nil, context.Canceled, fmt.Errorf("late: %w", context.DeadlineExceeded), &Error{Car: "scenario 1", Message: "ours"}} {
		if got := explain(err, "base car"); got != err {
			t.Errorf("explain(%v) = %v, want the same", err, got)
		}
	}
}
