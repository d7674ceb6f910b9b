//go:build unix

package main

import (
	"errors"
	"fmt"
	"strings"
)

// page is what the documentation says of a run.
type page struct {
	date     string
	seed     uint64
	verdicts []verdict
	reasons  map[string]string
	looks    []look // earlier
}

const introduction = `# What the tests see

A test that cannot fail is worth nothing. So statements of %s
are drawn at random and changed for the worse, one at a time; then the tests run. A change
that makes a test fail is killed; one that no test sees lives. Anyone can repeat it:

    make mutants

Of each statement drawn, the first change that compiles is tried, on the quick tests of
the package, then on its slow ones, then on those of the packages that use it. A change is
drawn by the seed and its own text, so that code elsewhere does not move the draw. Texts
for the reader are not changed, nor declarations of constants and tables: those are no
statements. Quick tests past %d s of processor time, others past %d s, and any
that take more than %d GB are a kill.

%s, seed %d, %d mutants: **%d killed, %.1f %%**; %d live.

A seed flatters once tests were written for what it showed. The first look at a seed says
what tests see of changes that nobody had in mind:

| seed | day | mutants of | | killed |
| ---: | --- | --- | ---: | ---: |
%s
`

// look is what a seed showed on a day.
type look struct {
	seed          uint64
	day           string
	packages      string
	tried, killed int
}

// looksTable returns the lines of the table of earlier looks.
func looksTable(looks []look) string {
	var b strings.Builder
	for _, l := range looks {
		t := tally{tried: l.tried, killed: l.killed}
		fmt.Fprintf(&b, "| %d | %s | %s | %d | %.1f %% |\n", l.seed, l.day, l.packages, l.tried, t.percent())
	}
	return b.String()
}

// packageNames lists the packages that are checked.
func packageNames() string {
	var names []string
	for i := range suites {
		names = append(names, "`"+suites[i].folder+"`")
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " and " + names[last]
}

// String returns the page as Markdown.
func (p *page) String() string {
	all := p.tally(func(*verdict) bool { return true })
	var b strings.Builder
	fmt.Fprintf(&b, introduction, packageNames(), quickLimit, slowLimit, memoryLimit/1_000_000,
		p.date, p.seed, all.tried, all.killed, all.percent(), all.tried-all.killed, looksTable(p.looks))
	p.packages(&b)
	p.kinds(&b)
	p.living(&b)
	return b.String()
}

func (p *page) packages(b *strings.Builder) {
	b.WriteString("| package | mutants | killed | | by its own tests |\n| --- | ---: | ---: | ---: | ---: |\n")
	for i := range suites {
		n := p.tally(func(v *verdict) bool { return v.folder() == suites[i].folder })
		if n.tried == 0 {
			continue
		}
		fmt.Fprintf(b, "| `%s` | %d | %d | %.1f %% | %d |\n", suites[i].folder, n.tried, n.killed, n.percent(), n.own)
	}
}

func (p *page) kinds(b *strings.Builder) {
	b.WriteString("\n| change | | mutants | killed |\n| --- | --- | ---: | ---: |\n")
	for _, o := range operators {
		n := p.tally(func(v *verdict) bool { return v.kind == o.kind })
		fmt.Fprintf(b, "| %s | %s | %d | %d |\n", o.kind, o.what, n.tried, n.killed)
	}
}

func (p *page) living(b *strings.Builder) {
	b.WriteString("\n## What lives, and why\n")
	for i := range p.verdicts {
		if v := &p.verdicts[i]; v.by == "" {
			fmt.Fprintf(b, "\n- %s:%d, `%s`, %s:\n  `%s` %s.\n  %s\n",
				v.file, v.line, v.function, v.kind, oneLine(v.old), v.became(), p.reasons[v.id()])
		}
	}
}

// became says what a mutant puts in place of the code.
func (m *mutant) became() string {
	if m.new == "" {
		return "left out"
	}
	return "became `" + oneLine(m.new) + "`"
}

// tally counts mutants.
type tally struct{ tried, killed, own int }

// percent returns the share that was killed.
func (t *tally) percent() float64 { return 100 * float64(t.killed) / float64(t.tried) }

// tally counts the mutants of a sort.
func (p *page) tally(is func(*verdict) bool) tally {
	var t tally
	for i := range p.verdicts {
		switch v := &p.verdicts[i]; {
		case !is(v):
		case v.by == "":
			t.tried++
		case strings.HasPrefix(v.by, elsewhere):
			t.tried, t.killed = t.tried+1, t.killed+1
		default:
			t.tried, t.killed, t.own = t.tried+1, t.killed+1, t.own+1
		}
	}
	return t
}

// enough returns an error if too few mutants are killed.
func (p *page) enough() error {
	if t := p.tally(func(*verdict) bool { return true }); !(t.percent() >= killedPercent) {
		return fmt.Errorf("%.1f %% are killed, want %d", t.percent(), killedPercent)
	}
	return nil
}

// explained returns an error that lists the mutants that live without a reason.
func (p *page) explained() error {
	var missing []error
	for i := range p.verdicts {
		if v := &p.verdicts[i]; v.by == "" && p.reasons[v.id()] == "" {
			missing = append(missing, fmt.Errorf("no reason why this lives: %s", v.id()))
		}
	}
	return errors.Join(missing...)
}
