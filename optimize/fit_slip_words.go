package optimize

import (
	"strconv"
	"strings"
)

// Words says in a sentence what is wrong and where; lengths in mm.
func (s *Slip) Words(sets []ReadingSet) string {
	at := sets[s.Set].label(s.Set)
	if s.Kind == SwappedSidesSlip {
		return at + " and " + sets[s.Other].label(s.Other) + " are likely exchanged: left and right swapped"
	}
	n := len(sets[s.Set].Readings)
	if s.single() {
		return at + ", travel " + millimetres(sets[s.Set].Readings[s.First].Travel) + ": " + millimetres(s.Value) +
			" stands where " + millimetres(s.Likely) + " would fit: " + slipWords[s.Kind][0]
	}
	if s.First > 0 || s.End < n {
		from, to := sets[s.Set].Readings[s.First].Travel, sets[s.Set].Readings[s.End-1].Travel
		at += ", travels " + strings.TrimSuffix(millimetres(from), " mm") + " to " + millimetres(to)
	}
	return at + ": " + slipWords[s.Kind][1]
}

// slipWords say what was done, for one reading and for many.
var slipWords = map[SlipKind][2]string{
	DigitSlip:      {"a digit or the decimal point is wrong", ""},
	SignSlip:       {"", "the sign is likely reversed; toe-in is positive"},
	InchSlip:       {"inches and millimetres are mixed", "the readings are likely in the other unit, inches or millimetres"},
	TravelSignSlip: {"", "bump and droop are likely exchanged; bump is positive"},
	TravelInchSlip: {"", "the travels are likely in the other unit, inches or millimetres"},
}

// millimetres formats a length.
func millimetres(x float64) string { return strconv.FormatFloat(x, 'g', 4, 64) + " mm" }
