package main

import (
	"strings"
	"unicode/utf8"
)

const (
	sentenceWidth  = 96   // most characters in a line of a sentence
	sentenceIndent = "  " // before each line of a sentence but its first
)

// wrap breaks a sentence between words into lines of at most width characters; a
// word longer than that stands alone. Lines after the first are indented.
func wrap(sentence string, width int, indent string) string {
	var text strings.Builder
	at := 0
	for i, word := range strings.Fields(sentence) {
		length := utf8.RuneCountInString(word)
		switch {
		case i == 0:
		case at+1+length > width:
			text.WriteString("\n" + indent)
			at = utf8.RuneCountInString(indent)
		default:
			text.WriteByte(' ')
			at++
		}
		text.WriteString(word)
		at += length
	}
	return text.String()
}
