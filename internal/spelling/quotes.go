package spelling

import "strings"

// OutsideQuotes returns a sentence whose parts outside double quotes are changed; what
// stands between them is somebody's own text.
func OutsideQuotes(sentence string, change func(string) string) string {
	parts := strings.Split(sentence, `"`)
	for i := range parts {
		if closed := i%2 == 1 && i+1 < len(parts); !closed {
			parts[i] = change(parts[i])
		}
	}
	return strings.Join(parts, `"`)
}
