package model

import (
	"strings"

	"toewright/internal/study"
)

// In writes what a figure is in: "in deg", and where lengths are in inches "in inches over
// 15 in", as "in" beside "in" reads like a slip.
func In(unit string) string {
	if rest, ok := strings.CutPrefix(unit, string(study.Inch)); ok && strings.Trim(rest, " /") != rest || unit == string(study.Inch) {
		return "in inches" + rest
	}
	return "in " + unit
}
