package ui

import (
	"errors"
	"testing"

	"toewright/internal/strictjson"
	"toewright/internal/study"
)

func TestPlain(t *testing.T) {
	place := &strictjson.Error{Path: "travel.bump", Line: 3, Column: 7, Message: "want 0 or more"}
	tests := []struct{ name, got, want string }{
		{"our package", plain(errors.New("model: there are 8 candidates already")), "there are 8 candidates already"},
		{"a key of a file", plain(place), "travel.bump: want 0 or more"},
		{"a key", plain(&strictjson.Error{Path: "suspension.left.lowerRearPivot", Message: "is too near lowerFrontPivot"}), "left lower arm, rear pivot: is too near lower arm, front pivot"},
		{"a parameter", plain(errors.New("study: tieRodOuterHeight is asked for twice")), "outer tie rod ball height is asked for twice"},
		{"a cell", plain(&study.CSVError{Line: 1, Column: 2, Header: "tieRodOutr", Message: "the nearest is tieRodOuterHeight"}), "line 1, column 2 (tieRodOutr): the nearest is outer tie rod ball height"},
		{"no key", plain(&strictjson.Error{Line: 1, Column: 1, Message: "empty"}), "empty"},
		{"in a file", inFile(place), "line 3, column 7: travel.bump: want 0 or more"},
		{"elsewhere", inFile(errors.New("store: full")), "full"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if tt.got != tt.want {
				t.Errorf("got %q, want %q", tt.got, tt.want)
			}
		})
	}
}

func TestFileName(t *testing.T) {
	tests := []struct{ name, want string }{
		{"Hillclimb saloon (invented)", "Hillclimb-saloon--invented"},
		{"../../etc", "etc"},
		{"Zündung 2", "Zündung-2"},
		{"///", "study"},
		{"", "study"},
	}
	for _, tt := range tests {
		if got := fileName(tt.name); got != tt.want {
			t.Errorf("fileName(%q) = %q, want %q", tt.name, got, tt.want)
		}
	}
}
