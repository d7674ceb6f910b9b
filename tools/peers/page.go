//go:build unix

package main

import (
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"strings"
	"time"
)

// page is the comparison in Markdown.
type page struct{ strings.Builder }

func newPage() *page {
	p := &page{}
	fmt.Fprintf(p, `# Benchmarks

Written by `+"`make bench-peers`"+`, which runs everything below in one go: our solver and
general-purpose tools on the same linkages of testdata/cases. Times are processor
times; runs are interleaved. Ratios carry over to other machines, times do not.

| What | Version |
| --- | --- |
| Date | %s |
| Processor | %s, %d in use |
| Go | %s |
| Tools | %s |
`, time.Now().UTC().Format("2006-01-02"), processor(), runtime.GOMAXPROCS(0), runtime.Version(), versions())
	return p
}

// processor returns the name of the machine's processor.
func processor() string {
	data, _ := os.ReadFile("/proc/cpuinfo")
	for line := range strings.Lines(string(data)) {
		if name, value, ok := strings.Cut(line, ":"); ok && strings.TrimSpace(name) == "model name" {
			return strings.TrimSpace(value)
		}
	}
	return runtime.GOARCH
}

// versions returns those of the tools' packages.
func versions() string {
	args := append([]string{"-W", "-f", "${Package} ${Version}\n"}, strings.Fields(packages)...)
	text, err := exec.Command("dpkg-query", args...).Output()
	if err != nil {
		return "unknown: not a Debian machine"
	}
	return strings.Join(strings.Split(strings.TrimSpace(string(text)), "\n"), ", ")
}

func (p *page) section(title, text string) {
	fmt.Fprintf(os.Stderr, "measuring: %s\n", title)
	fmt.Fprintf(p, "\n## %s\n\n%s\n", title, text)
}

// table is one of the page's.
type table struct {
	header []string
	rows   [][]string
}

func (t *table) row(cells ...string) { t.rows = append(t.rows, cells) }

func (p *page) table(t *table) {
	rule := make([]string, len(t.header))
	for i := range rule {
		rule[i] = "---"
	}
	p.WriteByte('\n')
	for _, cells := range append([][]string{t.header, rule}, t.rows...) {
		fmt.Fprintf(p, "| %s |\n", strings.Join(cells, " | "))
	}
}

// micro returns a time in ns as µs.
func micro(ns float64) string { return digits(ns / 1e3) }

// ratio returns a ratio as it is read.
func ratio(x float64) string { return digits(x) }

// digits returns x with three digits.
func digits(x float64) string {
	switch {
	case x >= 100:
		return fmt.Sprintf("%.0f", x)
	case x >= 10:
		return fmt.Sprintf("%.1f", x)
	}
	return fmt.Sprintf("%.2f", x)
}
