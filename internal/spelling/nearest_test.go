package spelling

import (
	"strings"
	"testing"
)

func TestNearest(t *testing.T) {
	words := []string{"lowerBallJoint", "upperBallJoint", "toe", "camber", "wheelCentre"}
	tests := []struct{ name, typed, want string }{
		{"letter missing", "lowerBallJont", "lowerBallJoint"},
		{"letters swapped", "cambre", "camber"},
		{"other case", "WHEELCENTRE", "wheelCentre"},
		{"other spelling", "wheelCenter", "wheelCentre"},
		{"one of three letters", "tie", "toe"},
		{"nothing near", "colour", ""},
		{"empty", "", ""},
		{"far too long", strings.Repeat("toe", 100), ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Nearest(tt.typed, words); got != tt.want {
				t.Errorf("Nearest(%q) = %q, want %q", tt.typed, got, tt.want)
			}
		})
	}
}

func TestDistance(t *testing.T) {
	tests := []struct {
		a, b string
		want int
	}{
		{"", "", 0},
		{"toe", "toe", 0},
		{"toe", "tie", 1},
		{"toe", "te", 1},
		{"toe", "teo", 1},
		{"kitten", "sitting", 3}, // the usual example of this distance
		{"abc", "", 3},
	}
	for _, tt := range tests {
		if got := distance(tt.a, tt.b, 10); got != tt.want {
			t.Errorf("distance(%q, %q) = %d, want %d", tt.a, tt.b, got, tt.want)
		}
		if got := distance(tt.b, tt.a, 10); got != tt.want {
			t.Errorf("distance(%q, %q) = %d, want %d", tt.b, tt.a, got, tt.want)
		}
	}
}

func TestClosest(t *testing.T) {
	words := []string{"tieRodOuter.x", "toe"}
	for typed, want := range map[string]string{"tie": "toe", "tieRodOuter": "tieRodOuter.x", "colour of the car": "tieRodOuter.x", strings.Repeat("x", 100): "tieRodOuter.x"} {
		if got := Closest(typed, words); got != want {
			t.Errorf("Closest(%q) = %q, want %q", typed, got, want)
		}
	}
	if got := Closest("toe", nil); got != "" {
		t.Errorf("Closest of no words = %q", got)
	}
}
