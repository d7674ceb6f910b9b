package number

import "testing"

func TestSentence(t *testing.T) {
	for text, want := range map[string]string{
		"travel 50.8 mm cannot be reached":          "travel 2 in cannot be reached",
		"lies -180 mm above it, more than 1 mm: so": "lies -7.087 in above it, more than 0.03937 in: so",
		"bump 25.4 mm and droop 0 mm":               "bump 1 in and droop 0 in",
		`no part is called "Spacer 12 mm", 254 mm`:  `no part is called "Spacer 12 mm", 10 in`,
		"12 N/mm, 3 mm/rad and a mm":                "12 N/mm, 3 mm/rad and a mm",
		"1e+05 mm":                                  "3937 in",
		"2 mmol":                                    "2 mmol",
		"":                                          "",
	} {
		if got := Inch.Sentence(text); got != want {
			t.Errorf("Inch.Sentence(%q) = %q, want %q", text, got, want)
		}
		if got := Millimetre.Sentence(text); got != text {
			t.Errorf("Millimetre.Sentence(%q) = %q", text, got)
		}
	}
}
