package strictjson

import "testing"

func TestErrorText(t *testing.T) {
	tests := []struct {
		name string
		err  Error
		want string
	}{
		{"place and path", Error{"travel.step", 3, 12, "missing"}, "3:12: travel.step: missing"},
		{"no place", Error{Path: "travel.step", Message: "missing"}, "travel.step: missing"},
		{"the whole", Error{Message: "input is empty"}, "input is empty"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.err.Error(); got != tt.want {
				t.Errorf("Error() = %q, want %q", got, tt.want)
			}
		})
	}
}

func TestPlace(t *testing.T) {
	data := []byte("{\n  \"é\": 1\n}")
	tests := []struct {
		name         string
		offset       int
		line, column int
	}{
		{"first byte", 0, 1, 1},
		{"behind a letter of two bytes", 7, 2, 5},
		{"last line", len(data) - 1, 3, 1},
		{"before the data", -4, 1, 1},
		{"beyond the data", 1000, 3, 2},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			line, column := place(data, tt.offset)
			if line != tt.line || column != tt.column {
				t.Errorf("place(%d) = %d:%d, want %d:%d", tt.offset, line, column, tt.line, tt.column)
			}
		})
	}
}
