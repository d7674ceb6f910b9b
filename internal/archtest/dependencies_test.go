package archtest

import (
	"encoding/json"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// required returns the modules that a go.mod requires for itself.
func required(t *testing.T, file string) []string {
	t.Helper()
	out, err := exec.Command("go", "mod", "edit", "-json", file).Output()
	if err != nil {
		t.Fatalf("go mod edit -json %s: %v", file, err)
	}
	var mod struct {
		Require []struct {
			Path     string
			Indirect bool
		}
	}
	if err := json.Unmarshal(out, &mod); err != nil {
		t.Fatal(err)
	}
	var paths []string
	for _, r := range mod.Require {
		if !r.Indirect {
			paths = append(paths, r.Path)
		}
	}
	if len(paths) == 0 {
		t.Fatalf("%s requires nothing", file)
	}
	return paths
}

func TestEveryDependencyHasItsReason(t *testing.T) {
	reasons, err := os.ReadFile("../../docs/dependencies.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range []string{"../../go.mod", "../../tools/manifests/go.mod"} {
		for _, path := range required(t, file) {
			if !strings.Contains(string(reasons), "`"+path+"`") {
				t.Errorf("docs/dependencies.md does not say what %s is for", path)
			}
		}
	}
}
