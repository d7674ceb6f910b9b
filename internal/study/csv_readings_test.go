package study

import (
	"strconv"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestParseReadings(t *testing.T) {
	usual := Reading{Gauge: "plate", Base: 380, Repeatability: 0.1}
	tests := []struct {
		name, template, text string
		want                 []Reading
	}{
		{
			"left and right", "strut-rack", "travel,left,right\n-10,0.5,0.6\n0,0,0\n10,,-0.4\n",
			[]Reading{
				{Side: Left, Gauge: "plate", Base: 380, Repeatability: 0.1, Values: [][2]float64{{-10, 0.5}, {0, 0}}},
				{Side: Right, Gauge: "plate", Base: 380, Repeatability: 0.1, Values: [][2]float64{{-10, 0.6}, {0, 0}, {10, -0.4}}},
			},
		},
		{
			"no header, decimal commas", "strut-rack", "-10;0,5\n0;0\n",
			[]Reading{{Side: Left, Gauge: "plate", Base: 380, Repeatability: 0.1, Values: [][2]float64{{-10, 0.5}, {0, 0}}}},
		},
		{
			"inches", "strut-rack", "Travel (in),Left (mm)\n1/2,0.5\n",
			[]Reading{{Side: Left, Gauge: "plate", Base: 380, Repeatability: 0.1, Values: [][2]float64{{12.7, 0.5}}}},
		},
		{
			"gauge in the table", "strut-rack", "side,gauge,base,repeatability,travel,reading\nRight,Indicators,300,0.05,0,1\n",
			[]Reading{{Side: Right, Gauge: "indicators", Base: 300, Repeatability: 0.05, Values: [][2]float64{{0, 1}}}},
		},
		{
			"set-ups", "strut-rack", "travel,left,tieRodOuterHeight (mm),caster\n0,1,,\n0,2,-3,4.5\n10,1.5,,\n",
			[]Reading{
				{Side: Left, Gauge: "plate", Base: 380, Repeatability: 0.1, Values: [][2]float64{{0, 1}, {10, 1.5}}},
				{
					Side: Left, Gauge: "plate", Base: 380, Repeatability: 0.1,
					Changes: Changes{"tieRodOuterHeight": -3, "caster": 4.5}, Values: [][2]float64{{0, 2}},
				},
			},
		},
		{
			"runs", "strut-rack", "run,travel,left\na,0,1\nb,0,2\n",
			[]Reading{
				{Side: Left, Gauge: "plate", Base: 380, Repeatability: 0.1, Values: [][2]float64{{0, 1}}},
				{Side: Left, Gauge: "plate", Base: 380, Repeatability: 0.1, Values: [][2]float64{{0, 2}}},
			},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := ParseReadings([]byte(tt.text), templateDoc(t, tt.template), usual)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(tt.want, got); diff != "" {
				t.Errorf("ParseReadings (-want +got):\n%s", diff)
			}
		})
	}
}

// TestParseReadingsManyRuns checks that a table of very many runs, as only an
// attacker has, costs no more than its length.
func TestParseReadingsManyRuns(t *testing.T) {
	const rows = 100_000
	text := []byte("run,travel,left\n")
	for i := range rows {
		text = append(strconv.AppendInt(text, int64(i), 10), ",0,0\n"...)
	}
	got, err := ParseReadings(text, templateDoc(t, "strut-rack"), Reading{Base: 300})
	if err != nil || len(got) != rows {
		t.Errorf("ParseReadings gave %d runs, %v, want %d", len(got), err, rows)
	}
}

func TestParseReadingsErrors(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"empty", "", "line 1: table is empty"},
		{"no readings", "travel,note\n0,1\n", "line 1: want columns left or right, or side and reading, beside travel"},
		{"no side", "travel,reading\n0,1\n", "line 1: want columns left or right, or side and reading, beside travel"},
		{"unknown column", "travel,left,rihgt\n0,1,2\n", "line 1, column 3 (rihgt): unknown column; did you mean right?"},
		{"unknown parameter", "travel,left,tieRodOuterHieght\n0,1,2\n", "line 1, column 3 (tieRodOuterHieght): is not a parameter of a strut; the nearest is tieRodOuterHeight"},
		{"no travel", "travel,left\n,1\n", "line 2, column 1 (travel): \"\" is not a length; type a number like 12.7, or 1/2 in"},
		{"no number", "travel,left\n0,x\n", "line 2, column 2 (left): \"x\" is not a length; type a number like 12.7, or 1/2 in"},
		{"unknown side", "travel,side,reading\n0,up,1\n", "line 2, column 2 (side): \"up\" is not a side, want left or right"},
		{"unknown gauge", "travel,left,gauge\n0,1,ruler\n", "line 2, column 3 (gauge): \"ruler\" is not a gauge, want indicators, plate, dial, tape"},
		{"no base", "travel,left,base\n0,1,0\n", "line 2, column 3 (base): want more than 0, got 0"},
		{"angle with a unit", "travel,left,caster\n0,1,2 mm\n", "line 2, column 3 (caster): \"2 mm\" is not a number"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := ParseReadings([]byte(tt.text), templateDoc(t, "strut-rack"), Reading{Base: 300})
			if err == nil || err.Error() != tt.want {
				t.Errorf("ParseReadings = %v, want %s", err, tt.want)
			}
		})
	}
}

// TestReadingsRoundTrip checks that the readings of every template come back from
// their table.
func TestReadingsRoundTrip(t *testing.T) {
	for _, template := range Templates() {
		t.Run(template.Key, func(t *testing.T) {
			d := template.Document()
			if len(d.Readings) == 0 {
				t.Skip("no readings")
			}
			got, err := ParseReadings(FormatReadings(d.Readings), d, Reading{})
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(d.Readings, got); diff != "" {
				t.Errorf("ParseReadings(FormatReadings) (-want +got):\n%s", diff)
			}
		})
	}
}

// TestFormatReadings writes a table as a person would: runs counted from 1, and only
// the columns that a reading has something for.
func TestFormatReadings(t *testing.T) {
	got := string(FormatReadings([]Reading{
		{Side: Left, Gauge: "plate", Base: 300, Repeatability: 0.05, Values: [][2]float64{{-10, 1.5}, {0, 2}}},
		{Side: Right, Base: 381, Changes: Changes{"tieRodOuterHeight": -6}, Values: [][2]float64{{0, 2.25}}},
	}))
	const want = `run,side,gauge,base,repeatability,travel,reading,tieRodOuterHeight
1,left,plate,300,0.05,-10,1.5,
1,left,plate,300,0.05,0,2,
2,right,,381,,0,2.25,-6
`
	if got != want {
		t.Errorf("FormatReadings =\n%s\nwant\n%s", got, want)
	}
}

// FuzzParseReadings checks that no table makes the parser panic.
func FuzzParseReadings(f *testing.F) {
	d := templateDoc(f, "strut-rack")
	f.Add(FormatReadings(d.Readings))
	f.Add([]byte("travel;left;caster\n1/2;0,5;4\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		readings, err := ParseReadings(data, d, Reading{Base: 300})
		if err != nil {
			return
		}
		for _, r := range readings {
			if len(r.Values) == 0 || !(r.Base > 0) {
				t.Fatalf("reading %+v has no values or no base", r)
			}
		}
	})
}
