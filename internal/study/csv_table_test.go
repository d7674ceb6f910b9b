package study

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestColumnsOf(t *testing.T) {
	tests := []struct {
		title string
		want  column
	}{
		{"x", column{"x", "x", ""}},
		{"X (mm)", column{"X (mm)", "x", Millimetre}},
		{"x [in]", column{"x [in]", "x", Inch}},
		{"y_inches", column{"y_inches", "y", Inch}},
		{"z mm", column{"z mm", "z", Millimetre}},
		{"Lower ball-joint", column{"Lower ball-joint", "lowerballjoint", ""}},
		{"margin", column{"margin", "margin", ""}}, // ends in the letters of a unit
		{"mm", column{"mm", "mm", ""}},
		{"", column{}},
	}
	for _, tt := range tests {
		if got := columnsOf([]string{tt.title})[0]; got != tt.want {
			t.Errorf("columnsOf(%q) = %+v, want %+v", tt.title, got, tt.want)
		}
	}
}

func TestParseRows(t *testing.T) {
	tests := []struct {
		name, text string
		want       []row
	}{
		{"commas", "a, b\n\nc,d\n", []row{{1, []string{"a", "b"}}, {3, []string{"c", "d"}}}},
		{"semicolons before commas", "a;1,5\n", []row{{1, []string{"a", "1,5"}}}},
		{"tabs before semicolons", "a;b\tc\t\n", []row{{1, []string{"a;b", "c", ""}}}},
		{"byte order mark and carriage returns", "\ufeffa,b\r\nc\r\n", []row{{1, []string{"a", "b"}}, {2, []string{"c"}}}},
		{"remarks and blank lines", "# x,y\n , \na\n", []row{{3, []string{"a"}}}},
		{"quotes", "\"a, b\",c\n", []row{{1, []string{"a, b", "c"}}}},
		{"empty", "", nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, parseRows([]byte(tt.text)), cmp.AllowUnexported(row{})); diff != "" {
				t.Errorf("parseRows (-want +got):\n%s", diff)
			}
		})
	}
}

func TestParseTableTooLong(t *testing.T) {
	_, err := parseTable(make([]byte, limits.Bytes+1), isPointHeader)
	const want = "line 1: table of 4194305 bytes is too long, want at most 4194304"
	if err == nil || err.Error() != want {
		t.Errorf("parseTable = %v, want %s", err, want)
	}
}
