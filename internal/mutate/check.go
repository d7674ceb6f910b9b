//go:build unix

package main

import (
	"context"
	"fmt"
	"os"
)

// suite is a package with what is known of its tests.
type suite struct {
	folder string
	slow   string   // the tests that are left to the end, as a regular expression
	users  []string // packages whose tests are asked where its own see nothing
}

var suites = []suite{
	{
		folder: "solver",
		slow:   "^(TestClosedFormAgrees|TestRimClearanceRandom|TestToeRates|TestAdjusterRates)$",
		users:  []string{"./optimize", "./internal/engine", "./cmd/toewright"},
	},
	{
		folder: "optimize",
		slow:   "^(TestSlips.*|TestPredictSpread|TestVerifyChance|TestOutliers.*|TestRobustBeatsNominal)$",
		users:  []string{"./internal/engine", "./cmd/toewright"},
	},
}

// check draws mutants and tries them.
type check struct {
	seed   uint64
	count  int    // mutants of each package
	killed string // file that remembers kills; empty for none
}

// verdict is what became of a mutant.
type verdict struct {
	mutant
	by string // the test that killed it, or "time or memory"; empty if it lives
}

// run tries the mutants of all suites.
func (c *check) run(ctx context.Context) ([]verdict, error) {
	memory, err := openMemory(c.killed)
	if err != nil {
		return nil, err
	}
	defer func() { _ = memory.close() }()
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return nil, err
	}
	defer func() { _ = os.RemoveAll(dir) }()
	var all []verdict
	for i := range suites {
		tried, err := c.runSuite(ctx, &trial{suite: &suites[i], dir: dir, memory: memory})
		if err != nil {
			return nil, err
		}
		all = append(all, tried...)
	}
	return all, nil
}

// runSuite tries the mutants of one package, of each statement drawn the first that
// compiles.
func (c *check) runSuite(ctx context.Context, t *trial) ([]verdict, error) {
	statements, err := findAll(t.folder)
	if err != nil {
		return nil, err
	}
	if err := t.unchanged(ctx); err != nil {
		return nil, err
	}
	var all []verdict
	for _, mutants := range draw(c.seed, statements) {
		if len(all) == c.count {
			break
		}
		v, err := t.first(ctx, mutants)
		if err != nil {
			return nil, err
		}
		if v != nil {
			all = append(all, *v)
			fmt.Fprintf(os.Stderr, "%d %s:%d %s: %s\n", len(all), v.file, v.line, v.kind, v.fate())
		}
	}
	return all, nil
}

// fate says what became of a mutant, for the log of a run.
func (v *verdict) fate() string {
	if v.by == "" {
		return "LIVES: " + oneLine(v.old) + " -> " + oneLine(v.new)
	}
	return "killed by " + v.by
}
