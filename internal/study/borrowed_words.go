package study

import (
	"fmt"
	"strings"
)

// mostPlaces is how many places a sentence names.
const mostPlaces = 6

// Warning is what stands wherever a part could be made by the study's answers, as long as
// a number that the toe curve depends on is a template's; else it is empty.
func (b Borrowed) Warning() string {
	switch {
	case b.Decisive == 0:
		return ""
	case b.All():
		return "Invented example: no vehicle was measured for it. Make no part by it."
	case b.Decisive == 1:
		return fmt.Sprintf("1 of the %d numbers that the toe curve depends on is a template's, no car was measured for it: %s. Make no part by it.", b.Deciding, some(b.Places))
	}
	return fmt.Sprintf("%d of the %d numbers that the toe curve depends on are a template's, no car was measured for them: %s. Make no part by it.",
		b.Decisive, b.Deciding, some(b.Places))
}

// Remark names what else is a template's or a usual value; empty for nothing, and where
// the warning is that all is invented.
func (b Borrowed) Remark() string {
	if len(b.Others) == 0 || b.All() {
		return ""
	}
	return "Not this car's own either, but a template's or usual values: " + some(b.Others) + "."
}

// some lists places, as many as a sentence holds.
func some(places []string) string {
	if n := len(places); n > mostPlaces {
		return fmt.Sprintf("%s; and %d more", strings.Join(places[:mostPlaces-1], "; "), n-mostPlaces+1)
	}
	return strings.Join(places, "; ")
}
