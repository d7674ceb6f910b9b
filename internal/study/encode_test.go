package study

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestRoundTrip checks that nothing of any study is lost on paper and that the
// same study always gives the same bytes.
func TestRoundTrip(t *testing.T) {
	files := studyFiles(t)
	files["small"] = []byte(smallText)
	for name, data := range files {
		t.Run(name, func(t *testing.T) {
			d := decode(t, data)
			text, err := Encode(d)
			if err != nil {
				t.Fatal(err)
			}
			again := decode(t, text)
			if diff := cmp.Diff(d, again); diff != "" {
				t.Errorf("round trip (-first +second):\n%s", diff)
			}
			twice, err := Encode(again)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(text, twice) {
				t.Errorf("second Encode differs:\n%s\nfirst:\n%s", twice, text)
			}
		})
	}
}

func TestEncodeErrors(t *testing.T) {
	tests := []struct {
		name string
		edit func(*Document)
		want string
	}{
		{"NaN of the vehicle", func(d *Document) { d.Vehicle.Wheelbase = math.NaN() }, "vehicle.wheelbase: NaN is not a number that can be stored"},
		{
			"NaN in a point", func(d *Document) { d.Suspension.Left.Points["strutTop"] = Vec3{0, math.NaN(), 0} },
			"suspension.left.strutTop.1: NaN is not a number that can be stored",
		},
		{"missing point", func(d *Document) { delete(d.Suspension.Left.Points, "strutTop") }, "suspension.left.strutTop: missing"},
		{
			"no such type", func(d *Document) { d.Suspension.Type = "unicycle" },
			`suspension.type: suspension type "unicycle" is unknown; use one of double-wishbone, strut, multi-link, swing-arm, solid-axle`,
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := decode(t, []byte(smallText))
			tt.edit(d)
			if _, err := Encode(d); err == nil || err.Error() != tt.want {
				t.Errorf("Encode = %v, want %s", err, tt.want)
			}
		})
	}
}

// TestEncodeErrorsOfAnAxle: what an axle lacks is named, be it of a side or of both.
func TestEncodeErrorsOfAnAxle(t *testing.T) {
	for _, tt := range []struct {
		name string
		edit func(*Suspension)
		want string
	}{
		{"kingpin of the right", func(s *Suspension) { delete(s.Right.Points, "kingpins.1") }, "kingpins.1: missing"},
		{"link", func(s *Suspension) { delete(s.Common, "links.2.outer") }, "links.2.outer: missing"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := templateDoc(t, "solid-axle-rack")
			tt.edit(&d.Suspension)
			if _, err := Encode(d); err == nil || !strings.HasSuffix(err.Error(), tt.want) {
				t.Errorf("Encode = %v, want an error that ends in %q", err, tt.want)
			}
		})
	}
}
