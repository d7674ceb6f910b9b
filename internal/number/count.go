package number

import "strconv"

// Count writes how many there are of something, whose plural takes an s: "1 design",
// "8 designs".
func Count(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + one + "s"
}
