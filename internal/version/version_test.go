package version

import (
	"os"
	"strings"
	"testing"
)

func TestNameWithoutTheLinker(t *testing.T) {
	if got := Name(); got != "unversioned" {
		t.Errorf("Name() = %q, want unversioned in a test", got)
	}
}

// TestTheMakefileSetsTheName holds the two together: the linker says nothing of a
// variable that there is not.
func TestTheMakefileSetsTheName(t *testing.T) {
	makefile, err := os.ReadFile("../../Makefile")
	if err != nil {
		t.Fatal(err)
	}
	if want := "-X toewright/internal/version.name=$(VERSION)"; !strings.Contains(string(makefile), want) {
		t.Errorf("the Makefile does not hold %q", want)
	}
}
