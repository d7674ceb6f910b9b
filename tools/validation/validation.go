// Package validation writes docs/validation.md: figures from outside the project
// beside what ours says of them. Only tests use it. Each package's test owns a part
// of the page, compares with every figure in it, and holds the page to its own run.
package validation

import (
	"flag"
	"math"
	"os"
	"runtime"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write what the tests hold anew")

// Page is where the page lies, from the folder of a package of the first level.
const Page = "../docs/validation.md"

// A Reference is a set of figures from outside the project.
type Reference struct {
	Name   string
	Source string // who says so, and how the figures were come by
	Claims func(t *testing.T) []Claim
}

// A Claim is one figure of a reference and what ours says of it.
type Claim struct {
	Figure    string
	Unit      string
	Want, Got float64
	Limit     float64 // largest difference allowed
}

// Hold compares with every reference, and a part of the page with what this run
// would write there. With -update it writes that part anew.
func Hold(t *testing.T, page, part string, references []Reference) {
	text := ""
	for _, r := range references {
		t.Run(r.Name, func(t *testing.T) {
			cs := r.Claims(t)
			for _, c := range cs {
				c.check(t)
			}
			text += r.section(cs)
		})
	}
	have, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	want, ok := withPart(string(have), part, text)
	if !ok {
		t.Fatalf("%s has no line %q", page, marker(part))
	}
	if *update {
		if err := os.WriteFile(page, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if runtime.GOARCH != "amd64" {
		return // another rounding of the last digit is no news
	}
	if string(have) != want && !t.Failed() {
		t.Errorf("part %s of %s is not what this run gives; write it with make golden", part, page)
	}
}

// check compares the figure.
func (c *Claim) check(t *testing.T) {
	t.Helper()
	if !(math.Abs(c.Got-c.Want) <= c.Limit) {
		t.Errorf("%s = %.12g %s, want %.12g within %.3g", c.Figure, c.Got, c.Unit, c.Want, c.Limit)
	}
}

// marker is the line of the page at which a part begins.
func marker(part string) string { return "<!-- part: " + part + " -->\n" }

// withPart returns the page with the text of a part, which ends at the next part or
// with the page. It returns false where the page has no such part.
func withPart(page, part, text string) (string, bool) {
	before, after, ok := strings.Cut(page, marker(part))
	if !ok {
		return "", false
	}
	rest := ""
	if i := strings.Index(after, marker("")[:len("<!-- part: ")]); i >= 0 {
		rest = "\n" + after[i:]
	}
	return before + marker(part) + text + rest, true
}
