package browsertest

import "encoding/json"

// quote returns a text as JavaScript has it.
func quote(text string) string {
	b, err := json.Marshal(text)
	if err != nil {
		panic(err) // a string is always JSON
	}
	return string(b)
}
