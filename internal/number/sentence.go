package number

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"toewright/internal/spelling"
)

// sentenceDigits are the significant digits of a length in a sentence.
const sentenceDigits = 4

// Sentence returns a sentence of the solver, which knows mm alone, with its lengths in u:
// "travel 50.8 mm cannot be reached" is "travel 2 in cannot be reached". What stands between
// double quotes is somebody's own text and stays.
func (u Units) Sentence(text string) string {
	if u != Inch {
		return text
	}
	return spelling.OutsideQuotes(text, inches)
}

// inches returns a text whose numbers before " mm" are inches.
func inches(text string) string {
	const unit = " mm"
	before, after, found := strings.Cut(text, unit)
	if !found {
		return text
	}
	start := len(strings.TrimRight(before, "0123456789.+-e"))
	x, err := strconv.ParseFloat(before[start:], 64)
	if next, _ := utf8.DecodeRuneInString(after); err != nil || unicode.IsLetter(next) || next == '/' {
		return before + unit + inches(after)
	}
	return before[:start] + strconv.FormatFloat(Inch.FromMillimetres(x), 'g', sentenceDigits, 64) + " " + string(Inch) + inches(after)
}
