package spelling

import (
	"strings"
	"testing"
)

func TestOutsideQuotes(t *testing.T) {
	for sentence, want := range map[string]string{
		`a "b" c`: `A "b" C`, `a 15" b`: `A 15" B`, `"a" "b" c`: `"a" "b" C`, "": "",
	} {
		if got := OutsideQuotes(sentence, strings.ToUpper); got != want {
			t.Errorf("OutsideQuotes(%s) = %s, want %s", sentence, got, want)
		}
	}
}
