package store

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"
)

// Version names a revision of a study: how many saves led to it, and which tab made
// it. The zero Version is none.
type Version struct {
	Number int
	Writer string // letters and digits
}

// String returns "12.3fa9", "" for none.
func (v Version) String() string {
	if v == (Version{}) {
		return ""
	}
	return fmt.Sprintf("%d.%s", v.Number, v.Writer)
}

// parseVersion is the inverse of [Version.String].
func parseVersion(text string) (Version, bool) {
	number, writer, ok := strings.Cut(text, ".")
	n, err := strconv.Atoi(number)
	v := Version{n, writer}
	return v, ok && err == nil && n > 0 && writer != "" && v.String() == text
}

// compare orders versions by their number, equal ones by their writer.
func (v Version) compare(w Version) int {
	return cmp.Or(cmp.Compare(v.Number, w.Number), cmp.Compare(v.Writer, w.Writer))
}
