//go:build unix

package main

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
)

// numbered is a mutant with the number that switches it on.
type numbered struct {
	mutant
	number int
}

// variable is what woven code asks for the mutant that is on, environment where the
// number comes from.
const (
	variable    = "mutantThatIsOn"
	environment = "TOEWRIGHT_MUTANT"
)

// weave returns a file with all mutants in it, none of which is on by itself: one
// build of the tests then serves for all. A function that has mutants becomes
//
//	func f() {
//		switch mutantThatIsOn {
//		case 7:
//			the body with mutant 7 in it
//			return
//		case 12:
//			the body with mutant 12 in it
//			return
//		}
//		the body
//	}
func weave(source []byte, mutants []numbered) []byte {
	byBody := slices.Clone(mutants)
	slices.SortStableFunc(byBody, func(a, b numbered) int { return cmp.Compare(a.body.start, b.body.start) })
	var out bytes.Buffer
	done := 0
	for len(byBody) > 0 {
		start := byBody[0].body.start
		n := 0
		for n < len(byBody) && byBody[n].body.start == start {
			n++
		}
		out.Write(source[done:start])
		out.WriteString("\nswitch " + variable + " {\n")
		for i := range byBody[:n] {
			fmt.Fprintf(&out, "case %d:\n%s\n", byBody[i].number, byBody[i].changedBody(source))
		}
		out.WriteString("}\n")
		done, byBody = start, byBody[n:]
	}
	out.Write(source[done:])
	return out.Bytes()
}

// switchFile returns the file that a package with woven code needs besides.
func switchFile(name string) []byte {
	return fmt.Appendf(nil, `package %s

import (
	"os"
	"strconv"
)

var %s, _ = strconv.Atoi(os.Getenv(%q))
`, name, variable, environment)
}
