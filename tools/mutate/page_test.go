//go:build unix

package main

import (
	"strings"
	"testing"
)

// findings returns a page of mutants of which some were killed.
func findings(killed, living int) *page {
	p := &page{date: "2026-01-02", seed: 3, reasons: map[string]string{}, looks: []look{{2, "2026-01-01, first", "both", 50, 43}}}
	for range killed {
		p.verdicts = append(p.verdicts, verdict{mutant{file: "solver/a.go", kind: "sign"}, "TestA"})
	}
	for range living {
		m := mutant{file: "optimize/b.go", line: 7, function: "g", kind: "drop", old: "a\n\tb"}
		p.verdicts = append(p.verdicts, verdict{mutant: m})
		p.reasons[m.id()] = "It is the same."
	}
	return p
}

func TestPage(t *testing.T) {
	p := findings(3, 1)
	p.verdicts[0].by = elsewhere + "TestB"
	got := p.String()
	for _, want := range []string{
		"2026-01-02, seed 3, 4 mutants: **3 killed, 75.0 %**; 1 live.",
		"| 2 | 2026-01-01, first | both | 50 | 86.0 % |",
		"statements of `solver`, `optimize/nlp`,",
		"| `solver` | 3 | 3 | 100.0 % | 2 |",
		"| `optimize` | 1 | 0 | 0.0 % | 0 |",
		"| drop | a statement left out | 1 | 0 |",
		"- optimize/b.go:7, `g`, drop:\n  `a b` left out.\n  It is the same.\n",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("the page does not hold %q:\n%s", want, got)
		}
	}
}

func TestEnough(t *testing.T) {
	if err := findings(19, 1).enough(); err != nil {
		t.Errorf("19 of 20 killed: %v, want no error", err)
	}
	if err := findings(18, 1).enough(); err == nil {
		t.Error("18 of 19 killed: no error")
	}
	if err := findings(0, 0).enough(); err == nil {
		t.Error("no mutant at all: no error")
	}
}

func TestExplained(t *testing.T) {
	p := findings(1, 1)
	if err := p.explained(); err != nil {
		t.Errorf("all explained: %v, want no error", err)
	}
	p.reasons = nil
	if err := p.explained(); err == nil || !strings.Contains(err.Error(), "optimize/b.go g: a b -> ") {
		t.Errorf("explained = %v, want an error with the mutant", err)
	}
}
