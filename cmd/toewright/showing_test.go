package main

import (
	"math"
	"strings"
	"testing"

	"toewright/internal/study"
)

func TestScale(t *testing.T) {
	inDegrees := &study.Document{Units: study.Millimetre}
	inInches := &study.Document{Units: study.Inch}
	onPlate := &study.Document{Units: study.Inch, Display: &study.Display{Units: study.Millimetre, Toe: "plate", Base: 20}}
	tests := []struct {
		name         string
		study        *study.Document
		showing      showing
		length       string // of 10 in the file's units
		toe, toeUnit string // of 1 degree
		basis        string // a part of it
	}{
		{"as the file is", inDegrees, showing{}, "10.00", "1.000", "deg", ""},
		{"inches of a file in mm", inDegrees, showing{inches: true}, "0.394", "1.000", "deg", ""},
		{"mm of a file in inches", inInches, showing{millimetres: true}, "254.00", "1.000", "deg", ""},
		{"toe over indicators", inDegrees, showing{base: "15 in"}, "10.00", "6.650", "mm", "indicators 381 mm"},
		{"base in the units shown", inInches, showing{base: "15"}, "10.000", "0.2618", "in", "15 in"},
		{"as the study says", onPlate, showing{}, "254.00", "8.866", "mm", "plate 508 mm"},
		{"in place of what the study says", onPlate, showing{inches: true}, "10.000", "0.3490", "in", "plate 20 in"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d, err := tt.showing.over(tt.study)
			if err != nil {
				t.Fatal(err)
			}
			sc := newScale(d)
			if got := sc.length(10); got != tt.length {
				t.Errorf("length(10) = %s, want %s", got, tt.length)
			}
			if got := sc.toe(1); got != tt.toe || sc.ToeMark() != tt.toeUnit {
				t.Errorf("toe(1) = %s %s, want %s %s", got, sc.ToeMark(), tt.toe, tt.toeUnit)
			}
			if got := sc.Basis(); !strings.Contains(got, tt.basis) || (got == "") != (tt.basis == "") {
				t.Errorf("basis = %q, want it to hold %q", got, tt.basis)
			}
		})
	}
}

func TestFixed(t *testing.T) {
	tests := []struct {
		x    float64
		want string
	}{{1.25, "1.25"}, {-0.001, "0.00"}, {-0.006, "-0.01"}, {math.NaN(), "-"}, {math.Inf(-1), "-"}}
	for _, tt := range tests {
		if got := fixed(tt.x, 2); got != tt.want {
			t.Errorf("fixed(%g, 2) = %s, want %s", tt.x, got, tt.want)
		}
	}
}

func TestOneLine(t *testing.T) {
	if got, want := oneLine("a\x1b[31mb\nc\u009b"), "a [31mb c "; got != want {
		t.Errorf("oneLine = %q, want %q", got, want)
	}
}
