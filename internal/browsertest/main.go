package browsertest

import (
	"fmt"
	"os"
	"testing"
)

// Main runs the tests of a package with a browser, and ends the process. Where the
// browser or the built page is missing it says what to do, and either fails or
// leaves the tests out.
func Main(m *testing.M) {
	b, err := start()
	if err != nil {
		fmt.Fprintf(os.Stderr, "\n##### LEFT OUT: the tests of the page: %v\n\n", err)
		if os.Getenv("TOEWRIGHT_BROWSER") == "required" || os.Getenv("CI") == "true" {
			os.Exit(1)
		}
		os.Exit(0)
	}
	shared = b
	status := m.Run()
	b.stop()
	os.Exit(status)
}
