//go:build unix

package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"slices"
	"sync"
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
		users:  []string{"optimize", "internal/engine", "cmd/toewright"},
	},
	{
		folder: "optimize/nlp",
		users:  []string{"optimize", "internal/engine"},
	},
	{
		folder: "optimize",
		slow:   "^(TestSlips.*|TestPredictSpread|TestVerifyChance|TestOutliers.*|TestRobustBeatsNominal)$",
		users:  []string{"internal/engine", "cmd/toewright"},
	},
	{
		folder: "internal/study",
		slow:   "^(TestParseReadingsManyRuns)$",
		users:  []string{"internal/engine", "app/model", "cmd/toewright"},
	},
	{
		folder: "internal/engine",
		slow:   "^(TestTradeOff|TestTolerance)$",
		users:  []string{"app/model", "internal/web/api", "internal/report", "cmd/toewright"},
	},
}

// check draws mutants and tries them.
type check struct {
	seed  uint64
	count int    // mutants of each package
	own   bool   // whether only the tests of the package itself are run
	only  string // the one package to check; empty for all
}

// verdict is what became of a mutant.
type verdict struct {
	mutant
	by string // the test that killed it, or a limit; empty if it lives
}

// run tries the mutants of all suites, or of the only one asked for, two at a time.
func (c *check) run(ctx context.Context) ([]verdict, error) {
	all, errs := make([][]verdict, len(suites)), make([]error, len(suites))
	var group sync.WaitGroup
	turn := make(chan struct{}, 2)
	for i, s := range suites {
		if c.only != "" && c.only != s.folder {
			continue
		}
		if c.own {
			s.users = nil
		}
		group.Go(func() {
			turn <- struct{}{}
			all[i], errs[i] = c.runSuite(ctx, &s)
			<-turn
		})
	}
	group.Wait()
	return slices.Concat(all...), errors.Join(errs...)
}

// runSuite tries the mutants of one package.
func (c *check) runSuite(ctx context.Context, s *suite) ([]verdict, error) {
	mutants, err := c.choose(s.folder)
	if err != nil {
		return nil, err
	}
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return nil, err
	}
	defer func() { _ = os.RemoveAll(dir) }()
	t, err := newTrial(ctx, s, dir, mutants)
	if err != nil {
		return nil, err
	}
	var all []verdict
	for _, m := range mutants {
		by, err := t.tests(ctx, m.number)
		if err != nil {
			return nil, err
		}
		v := verdict{m.mutant, by}
		fmt.Fprintf(os.Stderr, "%d %s:%d %s: %s\n", m.number, v.file, v.line, v.kind, v.fate())
		all = append(all, v)
	}
	return all, nil
}

// choose draws mutants of a package: of each statement drawn, the first that compiles.
func (c *check) choose(folder string) ([]numbered, error) {
	statements, err := findAll(folder)
	if err != nil {
		return nil, err
	}
	types, err := newChecker(folder)
	if err != nil {
		return nil, err
	}
	var chosen []numbered
	for _, mutants := range draw(c.seed, statements) {
		if len(chosen) == c.count {
			break
		}
		m, err := types.first(mutants)
		if err != nil {
			return nil, err
		}
		if m != nil {
			chosen = append(chosen, numbered{*m, len(chosen) + 1})
		}
	}
	return chosen, nil
}

// fate says what became of a mutant, for the log of a run.
func (v *verdict) fate() string {
	if v.by == "" {
		return "LIVES: " + oneLine(v.old) + " -> " + oneLine(v.new)
	}
	return "killed by " + v.by
}
