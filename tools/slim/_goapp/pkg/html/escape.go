// Package html has the writing half of its namesake in the standard library.
package html

import "strings"

var escaper = strings.NewReplacer("&", "&amp;", "'", "&#39;", "<", "&lt;", ">", "&gt;", `"`, "&#34;")

// EscapeString returns s with the characters that mean something to HTML written by
// their names.
func EscapeString(s string) string { return escaper.Replace(s) }
