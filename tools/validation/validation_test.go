package validation

import (
	"strings"
	"testing"
)

func TestWithPart(t *testing.T) {
	const page = "head\n<!-- part: a -->\nold a\n\n<!-- part: b -->\nold b\n"
	tests := []struct {
		part, text, want string
		ok               bool
	}{
		{"a", "\n## A\n", "head\n<!-- part: a -->\n\n## A\n\n<!-- part: b -->\nold b\n", true},
		{"b", "new\n", "head\n<!-- part: a -->\nold a\n\n<!-- part: b -->\nnew\n", true},
		{"c", "new\n", "", false},
	}
	for _, tt := range tests {
		got, ok := withPart(page, tt.part, tt.text)
		if got != tt.want || ok != tt.ok {
			t.Errorf("part %s: %q, %t, want %q, %t", tt.part, got, ok, tt.want, tt.ok)
		}
	}
}

// TestSection: places follow from the limit, differences from the figures.
func TestSection(t *testing.T) {
	r := Reference{Name: "Name", Source: "Source."}
	got := r.section([]Claim{
		{"angle", "deg", 1.25, 1.2500004, 1e-6},
		{"exact", "mm", 3, 3, 0.01},
		{"minus nothing", "mm", 0, -1e-9, 1e-6},
		{"large", "N", 1234, 1262, 50},
	})
	for _, want := range []string{
		"\n## Name\n\nSource.\n",
		"| angle | deg | 1.2500000 | 1.2500004 | ≤ 1e-6 | 1e-06 |",
		"| exact | mm | 3.000 | 3.000 | ≤ 1e-12 | 1e-02 |",
		"| minus nothing | mm | 0.0000000 | 0.0000000 | ≤ 1e-9 | 1e-06 |",
		"| large | N | 1234 | 1262 | ≤ 1e2 | 5e+01 |",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("section %q lacks %q", got, want)
		}
	}
}
