package solver_test

import (
	"flag"
	"fmt"
	"math"
	"os"
	"runtime"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write docs/validation.md anew")

// A reference is a set of figures from outside the project.
type reference struct {
	name   string
	source string // who says so, and how the figures were come by
	claims func(t *testing.T) []claim
}

// A claim is one figure of a reference and what the solver says of it.
type claim struct {
	figure    string
	unit      string
	want, got float64
	limit     float64 // largest difference allowed
}

// references are all of them, in the order in which the page has them.
func references() []reference {
	var all []reference
	for _, rs := range [][]reference{textbookReferences, exactReferences, steeringReferences, casterReferences, sensitivityReferences} {
		all = append(all, rs...)
	}
	return all
}

const validationPage = "../docs/validation.md"

// TestValidation compares with every reference, and docs/validation.md with what
// this run would write there.
func TestValidation(t *testing.T) {
	page := validationHead
	for _, r := range references() {
		t.Run(r.name, func(t *testing.T) {
			cs := r.claims(t)
			for _, c := range cs {
				near(t, c.figure, c.got, c.want, c.limit)
			}
			page += r.section(cs)
		})
	}
	if *update {
		if err := os.WriteFile(validationPage, []byte(page), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if runtime.GOARCH != "amd64" {
		return // another rounding of the last digit is no news
	}
	have, err := os.ReadFile(validationPage)
	if err != nil {
		t.Fatal(err)
	}
	if string(have) != page && !t.Failed() {
		t.Errorf("%s is not what this run gives; write it with go test -run TestValidation ./solver -update", validationPage)
	}
}

const validationHead = `# Validation

Figures from outside the project beside what the solver says. The page is written
by a test run (` + "`go test -run TestValidation ./solver -update`" + `), and a test holds
it to the run. *Recomputed* figures are not printed in the source: its published
inputs were put through independent programs that agree with each other far below
the limit given here. *Invented* geometry serves an exact fact.

Angles are in degrees and lengths in mm unless said otherwise; signs are those of
ISO 8855 for a left wheel. Further tests, not listed here: both solvers against
each other on random linkages (closedform_test.go), laws such as mirror and scale
(law_test.go), known locks (lock_test.go), and cases of every kind of suspension
solved by general-purpose tools (cases_test.go).

This is geometry, not strength: no figure here says that a part will bear its load.
`

// section returns the reference as a section of the page.
func (r *reference) section(cs []claim) string {
	var b strings.Builder
	fmt.Fprintf(&b, "\n## %s\n\n%s\n\n| Figure | Unit | Reference | Ours | Difference | Limit |\n| --- | --- | ---: | ---: | ---: | ---: |\n", r.name, r.source)
	for _, c := range cs {
		n := c.decimals()
		fmt.Fprintf(&b, "| %s | %s | %.*f | %.*f | %s | %.0e |\n", c.figure, c.unit, n, unsigned(c.want), n, unsigned(round(c.got, n)), atMost(c.got-c.want), c.limit)
	}
	return b.String()
}

// decimals returns how many places the page gives: one beyond the limit.
func (c *claim) decimals() int {
	return max(0, int(math.Ceil(-math.Log10(c.limit)+1e-9)))
}

func round(x float64, decimals int) float64 {
	k := math.Pow(10, float64(decimals))
	return math.Round(x*k) / k
}

// unsigned returns x, and 0 for -0.
func unsigned(x float64) float64 { return x + 0 }

// finest is the least difference that the page tells from none.
const finest = -12

// atMost returns the power of ten that d does not exceed.
func atMost(d float64) string {
	if d = math.Abs(d); d <= math.Pow(10, finest) {
		return fmt.Sprintf("≤ 1e%d", finest)
	}
	return fmt.Sprintf("≤ 1e%d", int(math.Ceil(math.Log10(d))))
}
