// Package spelling finds the word that a mistyped one was meant to be.
package spelling

import "strings"

// Nearest returns the word that a mistyped one was most likely meant to be, or ""
// where none is close: letter case aside, at most one letter or a third of them may be
// wrong, missing, added or swapped with a neighbour.
func Nearest(typed string, words []string) string {
	return within(typed, words, max(len(typed)/3, 1)+1)
}

// Closest returns the word that is fewest edits from a mistyped one, however many that
// are; "" where there are no words.
func Closest(typed string, words []string) string {
	if near := within(typed, words, 2*maxCompared); near != "" || len(words) == 0 {
		return near
	}
	return words[0] // beyond any comparison
}

// within returns the first word of those that are fewest edits from what was typed, if
// that is less than a number of edits.
func within(typed string, words []string, least int) string {
	best := ""
	for _, word := range words {
		d := distance(strings.ToLower(typed), strings.ToLower(word), least)
		if d < least {
			best, least = word, d
		}
	}
	return best
}

// maxCompared is the longest text that is compared: no key is longer, and the
// work grows with the square.
const maxCompared = 80

// distance counts the edits of single bytes (change, insert, delete, swap of
// neighbours) that turn a into b. It returns limit where the lengths alone show
// that more are needed.
func distance(a, b string, limit int) int {
	if max(len(a), len(b)) > maxCompared || max(len(a)-len(b), len(b)-len(a)) >= limit {
		return limit
	}
	older, old, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		old[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			row[j] = min(old[j]+1, row[j-1]+1, old[j-1]+differs(a[i-1], b[j-1]))
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], older[j-2]+1)
			}
		}
		older, old, row = old, row, older
	}
	return old[len(b)]
}

// differs is 1 for two different bytes, else 0.
func differs(a, b byte) int {
	if a == b {
		return 0
	}
	return 1
}
