package ui

import (
	"errors"
	"testing"
)

func TestWorkersState(t *testing.T) {
	tests := []struct {
		name string
		err  error
		want string
	}{
		{name: "up", want: "ready"},
		{name: "down", err: errors.New("no worker"), want: "not running: no worker"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := workersState(tt.err); got != tt.want {
				t.Errorf("workersState(%v) = %q, want %q", tt.err, got, tt.want)
			}
		})
	}
}
