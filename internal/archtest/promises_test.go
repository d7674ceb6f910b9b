package archtest

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// promise finds a row of docs/promises.md: the words, and what holds them.
var promise = regexp.MustCompile(`(?m)^\| (.+?) \| ((?:` + "`[^`]+`[:,; ]*" + `)+) \|$`)

// code finds what stands in backticks.
var code = regexp.MustCompile("`([^`]+)`")

// TestPromisesAreHeld checks that every promise that docs/promises.md quotes stands in
// README.md still, and that the tests that are said to hold it are there; and that README.md
// names no test that is not.
func TestPromisesAreHeld(t *testing.T) {
	readme := strings.Join(strings.Fields(read(t, "../../README.md")), " ")
	rows := promise.FindAllStringSubmatch(read(t, "../../docs/promises.md"), -1)
	if len(rows) < 20 {
		t.Fatalf("docs/promises.md has %d rows that can be read", len(rows))
	}
	for _, row := range rows {
		if !strings.Contains(readme, row[1]) {
			t.Errorf("README.md does not say %q", row[1])
		}
		folder := ""
		for _, m := range code.FindAllStringSubmatch(row[2], -1) {
			if !strings.HasPrefix(m[1], "Test") {
				folder = m[1]
			} else if !tested(t, folder, m[1]) {
				t.Errorf("%q: there is no %s in %s", row[1], m[1], folder)
			}
		}
	}
	for _, m := range regexp.MustCompile("`(Test[A-Z]\\w+)`").FindAllStringSubmatch(readme, -1) {
		if !tested(t, "*", m[1]) && !tested(t, "*/*", m[1]) && !tested(t, "*/*/*", m[1]) {
			t.Errorf("README.md names %s, which is no test", m[1])
		}
	}
}

// tested reports whether a test stands in a folder of the repository.
func tested(t *testing.T, folder, test string) bool {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("../..", folder, "*_test.go"))
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		if strings.Contains(read(t, file), "\nfunc "+test+"(") {
			return true
		}
	}
	return false
}
