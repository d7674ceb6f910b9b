// Package coding chooses how an answer is packed, by what its client says it accepts.
package coding

import (
	"strconv"
	"strings"
)

// Encoding is a content coding of HTTP; see RFC 9110, section 8.4.1.
type Encoding string

// The codings that are known here.
const (
	Identity Encoding = ""
	Gzip     Encoding = "gzip"
	Brotli   Encoding = "br"
)

// preferred lists the encodings, the smallest result first.
var preferred = []Encoding{Brotli, Gzip}

// Choose returns the first preferred encoding that is at hand and that an
// Accept-Encoding header allows, else the identity.
func Choose(header string, atHand func(Encoding) bool) Encoding {
	allowed := acceptedEncodings(header)
	for _, e := range preferred {
		if allowed[e] && atHand(e) {
			return e
		}
	}
	return Identity
}

// acceptedEncodings returns the codings that an Accept-Encoding header names with a
// weight above zero. A star stands for none of ours: browsers name what they can.
func acceptedEncodings(header string) map[Encoding]bool {
	allowed := map[Encoding]bool{}
	for item := range strings.SplitSeq(header, ",") {
		name, params, _ := strings.Cut(item, ";")
		if weight(params) > 0 {
			allowed[Encoding(strings.ToLower(strings.TrimSpace(name)))] = true
		}
	}
	return allowed
}

// weight returns the q in the parameters of a coding, 1 if there is none, and 0 if
// it is not a number.
func weight(params string) float64 {
	text, ok := strings.CutPrefix(strings.TrimSpace(params), "q=")
	if !ok {
		return 1
	}
	q, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0
	}
	return q
}
