//go:build unix

package main

import (
	"go/format"
	"testing"
)

const plain = `package p

func sum(a, b int) int {
	return a + b
}

func less(a, b int) bool {
	return a < b
}

func count(n *int) {
	*n++
}
`

const wovenTogether = `package p

func sum(a, b int) int {
	switch mutantThatIsOn {
	case 1:

		return a - b

	case 3:

		return *new(int)

	}

	return a + b
}

func less(a, b int) bool {
	switch mutantThatIsOn {
	case 2:

		return a <= b

	}

	return a < b
}

func count(n *int) {
	switch mutantThatIsOn {
	case 4:

		*n--

		return
	}

	*n++
}
`

// numberedMutants returns the mutants of plain that are asked for, by their new code.
func numberedMutants(t *testing.T, want ...string) []numbered {
	t.Helper()
	statements, err := find("p.go", []byte(plain))
	if err != nil {
		t.Fatal(err)
	}
	var all []numbered
	for i, code := range want {
		for _, s := range statements {
			for _, m := range s.mutants {
				if m.new == code {
					all = append(all, numbered{m, i + 1})
				}
			}
		}
	}
	return all
}

func TestWeave(t *testing.T) {
	got := weave([]byte(plain), numberedMutants(t, "a - b", "a <= b", "return *new(int)", "*n--"))
	got, err := format.Source(got)
	if err != nil || string(got) != wovenTogether {
		t.Errorf("weave = %s (%v), want %s", got, err, wovenTogether)
	}
}

func TestWeaveOfNothing(t *testing.T) {
	if got := string(weave([]byte(plain), nil)); got != plain {
		t.Errorf("weave without mutants = %s, want the file", got)
	}
}
