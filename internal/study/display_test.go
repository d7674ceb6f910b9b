package study

import (
	"strings"
	"testing"

	"toewright/internal/number"
)

func TestStyle(t *testing.T) {
	tests := []struct {
		name    string
		display *Display
		want    number.Style
	}{
		{"the file's own", nil, number.Style{Units: Inch, Base: UsualBase}},
		{"fractions", &Display{Fraction: UsualFraction}, number.Style{Units: Inch, Fraction: 32, Base: UsualBase}},
		{"sixty-fourths", &Display{Fraction: 64}, number.Style{Units: Inch, Fraction: 64, Base: UsualBase}},
		{"a plate of 10 in", &Display{Toe: "plate", Base: 10}, number.Style{Units: Inch, Gauge: number.Plate, Base: 254}},
		{"indicators without a base", &Display{Toe: "indicators"}, number.Style{Units: Inch, Gauge: number.Indicators, Base: UsualBase}},
		{"degrees said aloud", &Display{Units: Millimetre, Toe: "degrees", Base: 20}, number.Style{Units: Millimetre, Base: 508}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := (&Document{Units: Inch, Display: tt.display}).Style(); got != tt.want {
				t.Errorf("got %+v, want %+v", got, tt.want)
			}
		})
	}
}

// TestFractionOfFiles reads every way in which a file may state fractions, writes it as it
// was, and takes it by the schema; it refuses the rest by name in both.
func TestFractionOfFiles(t *testing.T) {
	schema := compiledSchema(t)
	text := func(fraction string) []byte {
		return edited(t, `"units": "mm"`, `"units": "mm", "display": {"units": "in", "fraction": `+fraction+`}`)
	}
	for fraction, want := range map[string]int{"true": 32, "false": 0, "16": 16, "32": 32, "64": 64} {
		d := decode(t, text(fraction))
		if got := d.Style().Fraction; got != want {
			t.Errorf("fraction %s is 1/%d, want 1/%d", fraction, got, want)
		}
		again, err := Encode(d)
		if err != nil {
			t.Fatal(err)
		}
		if fraction != "false" && !strings.Contains(string(again), `"fraction": `+fraction) {
			t.Errorf("fraction %s is written\n%s", fraction, again)
		}
		if err := validate(t, schema, text(fraction)); err != nil {
			t.Errorf("the schema refuses fraction %s: %v", fraction, err)
		}
	}
	for _, fraction := range []string{"0", "8", "1", "-32", "32.5", "128", `"32"`, "null"} {
		if _, err := Decode(text(fraction)); err == nil || !strings.Contains(err.Error(), "display.fraction") {
			t.Errorf("fraction %s: %v, want an error that names display.fraction", fraction, err)
		}
		if err := validate(t, schema, text(fraction)); err == nil {
			t.Errorf("the schema takes fraction %s", fraction)
		}
	}
}
