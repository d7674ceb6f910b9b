//go:build unix

package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
)

// packages are the Debian packages of the tools.
const packages = "g++ python3-scipy libslvs1-dev libsimbody-dev libnlopt-dev"

// python is Debian's own: another in the path may lack its scipy.
const python = "/usr/bin/python3"

// sources is where the tools' programs lie, from the repository's root.
const sources = "tools/peers/src"

// bench is the directory in which the tools stand ready.
type bench struct{ dir string }

// builds are the compiler calls that make the tools' programs.
var builds = [][]string{
	{"gcc", "-O2", "-o", "closedform", "closedform.c", "-lm"},
	{"gcc", "-O2", "-o", "constraints", "constraints.c", "-lslvs", "-lm"},
	{"gcc", "-O2", "-o", "globalsearch", "globalsearch.c", "-lnlopt", "-lm"},
	{"gcc", "-O2", "-shared", "-fPIC", "-o", "shared.so", "shared.c", "-lm"},
	{"g++", "-O2", "-Wno-deprecated-declarations", "-I/usr/include/simbody", "-o", "multibody", "multibody.cpp",
		"-lSimTKsimbody", "-lSimTKmath", "-lSimTKcommon"},
}

// newBench builds the tools in dir.
func newBench(dir string) (*bench, error) {
	for _, args := range builds {
		args = append([]string(nil), args...)
		for i, a := range args {
			switch {
			case i > 0 && args[i-1] == "-o":
				args[i] = filepath.Join(dir, a)
			case strings.HasSuffix(a, ".c") || strings.HasSuffix(a, ".cpp"):
				args[i] = filepath.Join(sources, a)
			}
		}
		if msg, err := exec.Command(args[0], args[1:]...).CombinedOutput(); err != nil {
			return nil, fmt.Errorf("%s: %w\n%s\nthe tools need: apt-get install %s", strings.Join(args, " "), err, msg, packages)
		}
	}
	return &bench{dir}, nil
}

// tool is a peer as it is called: its program with what comes before the case.
type tool struct {
	name string
	args []string
}

func (b *bench) program(name string, args ...string) tool {
	return tool{name, append([]string{filepath.Join(b.dir, name)}, args...)}
}

func script(name string) tool {
	return tool{name, []string{python, filepath.Join(sources, name)}}
}

// answer is what a tool prints: times in ns, the toe in deg at each travel, and of
// a search the best value and the evaluations it took.
type answer struct {
	times, toes []float64
	best        float64
	evaluations int
}

// ask runs a tool.
func (t tool) ask(ctx context.Context, args ...string) (*answer, error) {
	cmd := exec.CommandContext(ctx, t.args[0], append(t.args[1:len(t.args):len(t.args)], args...)...)
	cmd.Env = append(os.Environ(), "OPENBLAS_NUM_THREADS=1", "OMP_NUM_THREADS=1", "PYTHONWARNINGS=ignore", "PYTHONDONTWRITEBYTECODE=1")
	cmd.Stderr = os.Stderr
	text, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", t.name, err)
	}
	return parse(t.name, string(text))
}

// parse reads what a tool has printed.
func parse(name, text string) (*answer, error) {
	a := &answer{}
	for line := range strings.Lines(text) {
		word, value, _ := strings.Cut(strings.TrimSpace(line), " ")
		x, err := strconv.ParseFloat(value, 64)
		if err != nil {
			return nil, fmt.Errorf("%s printed %q", name, line)
		}
		switch word {
		case "time":
			a.times = append(a.times, x)
		case "toe":
			a.toes = append(a.toes, x)
		case "best":
			a.best = x
		case "evaluations":
			a.evaluations = int(x)
		}
	}
	if len(a.times) == 0 {
		return nil, errors.New(name + " printed no time")
	}
	return a, nil
}
