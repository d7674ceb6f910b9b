package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// atRoot runs the rest of the test where the module files are.
func atRoot(t *testing.T) {
	t.Helper()
	t.Chdir("../..")
}

func TestWriteBuildsThePageWithoutServer(t *testing.T) {
	atRoot(t)
	out := t.TempDir()
	if err := write(out); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command("go", "list", "-deps", "-modfile="+filepath.Join(out, "go.mod"), "./app")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	list, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	there := "\n" + string(list)
	if !strings.Contains(there, "\ngithub.com/maxence-charriere/go-app/v10/pkg/app\n") {
		t.Fatal("go-app is not in the page")
	}
	for _, path := range []string{"net", "net/http", "crypto/tls", "crypto/x509", "crypto/rand", "crypto/sha256", "regexp", "math/big", "mime", "log", "html", "net/url"} {
		if strings.Contains(there, "\n"+path+"\n") {
			t.Errorf("%s is in the page", path)
		}
	}
}

// TestOurPackages runs the tests of the packages that stand in for others.
func TestOurPackages(t *testing.T) {
	atRoot(t)
	out := t.TempDir()
	if err := write(out); err != nil {
		t.Fatal(err)
	}
	prefix := editions[0].module + "/pkg/"
	cmd := exec.Command("go", "test", "-modfile="+filepath.Join(out, "go.mod"), prefix+"html", prefix+"url")
	if report, err := cmd.CombinedOutput(); err != nil {
		t.Errorf("%v: %s", err, report)
	}
}

func TestAnotherVersionIsRefused(t *testing.T) {
	atRoot(t)
	e := editions[0]
	e.version = "v10.0.0"
	out := t.TempDir()
	err := e.write(out)
	if err == nil || !strings.Contains(err.Error(), "was written for v10.0.0") {
		t.Errorf("write = %v, want an error that names the version", err)
	}
	if entries, _ := os.ReadDir(out); len(entries) > 0 {
		t.Errorf("%d files were written all the same", len(entries))
	}
}

// TestNewMachine writes the edition where Go has nothing in its cache of modules.
func TestNewMachine(t *testing.T) {
	atRoot(t)
	source, err := editions[0].find() // so that it is in the cache of this machine
	if err != nil {
		t.Fatal(err)
	}
	module := filepath.FromSlash(editions[0].module + "@" + editions[0].version)
	cache := strings.TrimSuffix(source.Dir, module)
	if cache == source.Dir {
		t.Fatalf("%s is in %s, no cache of modules", editions[0].module, source.Dir)
	}
	t.Setenv("GOPROXY", "file://"+filepath.ToSlash(filepath.Join(cache, "cache", "download")))
	t.Setenv("GOMODCACHE", filepath.Join(t.TempDir(), "empty"))
	t.Setenv("GOFLAGS", "-modcacherw") // so that what is fetched can be removed
	t.Setenv("GOSUMDB", "off")
	out := t.TempDir()
	if err := editions[0].write(out); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(filepath.Join(out, "pkg", "app", "node.go")); err != nil {
		t.Error(err)
	}
}

func TestModuleThatCannotBeFetched(t *testing.T) {
	atRoot(t)
	t.Setenv("GOPROXY", "off")
	t.Setenv("GOMODCACHE", filepath.Join(t.TempDir(), "empty"))
	err := editions[0].write(t.TempDir())
	if err == nil || !strings.Contains(err.Error(), editions[0].module) {
		t.Errorf("write = %v, want an error that names the module", err)
	}
}

func TestEditionFiles(t *testing.T) {
	for _, tt := range []struct {
		name string
		want bool
	}{
		{"pkg/app/node.go", true},
		{"pkg/app/http.go", false},
		{"pkg/app/node_test.go", false},
		{"pkg/app/gen/style.css", false},
	} {
		if got := editions[0].has(tt.name); got != tt.want {
			t.Errorf("has(%s) = %t, want %t", tt.name, got, tt.want)
		}
	}
}
