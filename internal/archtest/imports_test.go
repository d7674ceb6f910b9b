package archtest

import (
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// module is the prefix of our own packages.
const module = "toewright/"

// ranks order our packages: each may import only such of a lower rank. Programs
// are not listed, as nothing can import them.
var ranks = map[string]int{
	"solver":                       0,
	"internal/number":              0,
	"internal/spelling":            -1,
	"internal/plot":                1, // draws numbers, whatever they are
	"internal/strictjson":          0,
	"internal/version":             0,
	"wasm":                         0, // carries messages, whatever they say
	"optimize":                     1,
	"optimize/nlp":                 0, // numbers, whatever they are of
	"internal/study":               1,
	"internal/engine":              2,
	"internal/shards":              3,
	"internal/batch":               4,
	"app/demo":                     3,
	"app/store":                    3,
	"app/worker":                   6,
	"app/model":                    3,
	"app/scene":                    4,
	"internal/drawing/dxf":         0,
	"internal/drawing/step":        0,
	"internal/drawing":             3,
	"internal/report":              4,
	"internal/calls":               5,
	"internal/web/coding":          0,
	"internal/web/jsonplan":        3,
	"internal/web/api":             6,
	"app/ui":                       7,
	"internal/web":                 8,
	"internal/browsertest":         9,
	"internal/browsertest/engines": 10,
	"internal/archtest":            0,
	"tools/referee":                2, // of tests and benchmarks only
	"tools/validation":             0, // of tests only
}

// ban keeps packages from importing others, themselves or by what they import.
type ban struct {
	packages []string
	imports  []string
	direct   bool // only what they import themselves
	reason   string
}

var bans = []ban{
	{
		packages: []string{"solver", "optimize", "optimize/nlp", "internal/number", "internal/plot", "internal/spelling", "internal/strictjson", "internal/study", "internal/engine", "internal/shards", "internal/report", "internal/calls", "app/model", "wasm"},
		imports:  []string{"net/http", "net", "github.com/maxence-charriere/go-app/v10/pkg/app", "github.com/spf13/cobra", "github.com/spf13/pflag"},
		reason:   "it runs in the browser's worker as well as here, and neither serves nor parses a command line",
	},
	{
		packages: []string{"solver", "optimize", "optimize/nlp", "internal/number", "internal/plot", "internal/spelling", "internal/strictjson", "internal/study", "internal/engine", "internal/shards", "internal/batch", "internal/report", "internal/calls", "app/model"},
		imports:  []string{"syscall/js", "os", "os/exec", "log", "log/slog", "time", "unsafe"},
		direct:   true,
		reason:   "it is pure computation: no files, no clock, no browser",
	},
	{
		packages: []string{"internal/report"},
		imports:  []string{"html/template", "text/template"},
		direct:   true,
		reason:   "they cost half a megabyte of the page's two",
	},
	{
		packages: []string{"solver", "optimize", "optimize/nlp"},
		imports:  []string{"encoding/json"},
		reason:   "files and messages are for package study",
	},
	{
		packages: []string{"internal/web", "internal/web/api"},
		imports:  []string{"github.com/spf13/cobra"},
		reason:   "commands call the server, not the other way round",
	},
}

// listed is a package as go list describes it.
type listed struct {
	ImportPath, Name, Doc string
	Imports, Deps         []string
}

// targets are the platforms for which packages are built.
var targets = map[string][]string{
	"this machine": nil,
	"the browser":  {"GOOS=js", "GOARCH=wasm"},
}

// list returns all our packages as they are built for a platform.
func list(t *testing.T, environment []string) map[string]listed {
	t.Helper()
	cmd := exec.Command("go", "list", "-json=ImportPath,Name,Doc,Imports,Deps", module+"...")
	cmd.Env = append(os.Environ(), environment...)
	out, err := cmd.Output()
	if err != nil {
		var failed *exec.ExitError
		if errors.As(err, &failed) {
			t.Fatalf("go list: %v: %s", err, failed.Stderr)
		}
		t.Fatalf("go list: %v", err)
	}
	all := map[string]listed{}
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p listed
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return all
		} else if err != nil {
			t.Fatalf("go list: %v", err)
		}
		all[strings.TrimPrefix(p.ImportPath, module)] = p
	}
}

func TestImportsGoDownward(t *testing.T) {
	for target, environment := range targets {
		for name, p := range list(t, environment) {
			rank, ok := ranks[name]
			if !ok && p.Name != "main" {
				t.Errorf("%s has no rank; give it one in ranks", name)
			}
			if !ok {
				continue
			}
			for _, path := range p.Imports {
				ours, is := strings.CutPrefix(path, module)
				if is && ranks[ours] >= rank {
					t.Errorf("for %s, %s (rank %d) imports %s (rank %d)", target, name, rank, ours, ranks[ours])
				}
			}
		}
	}
}

func TestRanksAreOfPackages(t *testing.T) {
	all := list(t, nil)
	for name := range ranks {
		if _, ok := all[name]; !ok {
			t.Errorf("%s has a rank, but there is no such package", name)
		}
	}
}

func TestBans(t *testing.T) {
	for target, environment := range targets {
		all := list(t, environment)
		for _, b := range bans {
			for _, name := range b.packages {
				imports := all[name].Deps
				if b.direct {
					imports = all[name].Imports
				}
				for _, path := range b.imports {
					if slices.Contains(imports, path) {
						t.Errorf("for %s, %s imports %s: %s", target, name, path, b.reason)
					}
				}
			}
		}
	}
}

func TestEveryPackageSaysWhatItIs(t *testing.T) {
	for name, p := range list(t, nil) {
		want := "Package " + p.Name + " "
		if p.Name == "main" {
			want = "Command "
		}
		if !strings.HasPrefix(p.Doc, want) {
			t.Errorf("%s: comment %q, want one that begins with %q", name, p.Doc, want)
		}
	}
}
