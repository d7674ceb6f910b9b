package study

import (
	"reflect"
	"strings"
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

// TestCellsWithoutAColumn are refused by line and column in every table, with a header and
// without one, and empty ones are none.
func TestCellsWithoutAColumn(t *testing.T) {
	d := templateDoc(t, "strut-rack")
	points := func(text string) error { _, err := ParsePoints([]byte(text), d); return err }
	readings := func(text string) error { _, err := ParseReadings([]byte(text), d, Reading{Base: 381}); return err }
	parts := func(text string) error { _, err := ParseCatalogue([]byte(text), d); return err }
	for _, tt := range []struct {
		name  string
		parse func(string) error
		text  string
		want  string // empty where the table is taken
	}{
		{"readings without a header", readings, "-60,6,72,7,28\n", "line 1, column 4: "},
		{"readings", readings, "travel,left,right\n0,0,0\n-60,6,72,7,28\n", "line 3, column 4: "},
		{"points", points, "point,x,y,z\nlowerBallJoint,6,5,695,2,190,1\n", "line 2, column 5: "},
		{"points without a header", points, "lowerBallJoint,6,5,695,2,190,1\n", "line 1, column 5: "},
		{"a column without a title", readings, "travel,left,\n0,0,1\n", "line 2, column 3: "},
		{"parts", parts, "slot,name,price\narm,Arm,1,5\n", "line 2, column 4: "},
		{"empty cells of a spreadsheet", readings, "travel,left,right,,\n0,0,0,,\n", ""},
		{"decimal commas", readings, "travel;left;right\n-60;6,72;7,28\n", ""},
	} {
		err := tt.parse(tt.text)
		if tt.want == "" && err != nil || tt.want != "" && (err == nil || !strings.HasPrefix(err.Error(), tt.want)) {
			t.Errorf("%s: %v, want %q", tt.name, err, tt.want)
		}
	}
}

// TestTextOfAnyMachine: tables read alike whatever ends their lines, and what is no UTF-8 text, or
// has no line under its header, is refused and not read as something else.
func TestTextOfAnyMachine(t *testing.T) {
	d := templateDoc(t, "strut-rack")
	for kind, table := range map[string]struct {
		lines []string
		parse func(string) (any, error)
	}{
		"points":    {[]string{"point,x,y,z", "lowerBallJoint,5,690.5,185", "tieRodInner,-150,330,240"}, func(s string) (any, error) { return ParsePoints([]byte(s), d) }},
		"readings":  {[]string{"travel,left", "-50,1.5", "50,-1.25"}, func(s string) (any, error) { return ParseReadings([]byte(s), d, Reading{Base: 381}) }},
		"catalogue": {[]string{"slot,name,price", "arm,Low arm,12.5", "arm,Lower arm,14"}, func(s string) (any, error) { return ParseCatalogue([]byte(s), d) }},
	} {
		want, err := table.parse(strings.Join(table.lines, "\n"))
		if err != nil {
			t.Fatalf("%s: %v", kind, err)
		}
		for name, end := range map[string]string{"unix": "\n", "windows": "\r\n", "old mac": "\r"} {
			for _, mark := range []string{"", "\ufeff"} {
				text := mark + strings.Join(table.lines, end) + end
				if got, err := table.parse(text); err != nil || !reflect.DeepEqual(got, want) {
					t.Errorf("%s, lines of %s: %+v, %v, want %+v", kind, name, got, err, want)
				}
			}
		}
		text := strings.Join(table.lines, "\n")
		wide := []byte{0xff, 0xfe}
		for _, b := range []byte(text) {
			wide = append(wide, b, 0)
		}
		for name, text := range map[string]string{
			"UTF-16": string(wide), "UTF-16 without a mark": string(wide[2:]), "Latin-1": text + "\n# caf\xe9",
			"a header alone": table.lines[0],
		} {
			if got, err := table.parse(text); err == nil || !strings.HasPrefix(err.Error(), "line 1: table ") {
				t.Errorf("%s of %s: %+v, %v, want it refused", kind, name, got, err)
			}
		}
	}
}
