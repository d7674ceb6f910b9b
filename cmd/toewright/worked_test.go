package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const (
	indent  = "    "
	prompt  = indent + "$ bin/toewright "
	leftOut = indent + "..."
)

// workedPages are the pages of worked examples.
var workedPages = []string{"../../docs/worked-examples.md", "../../docs/worked-forging.md"}

// worked is a command line of the page and what stands there as its output.
type worked struct {
	args []string
	want []string // lines, the indent taken off
	cut  bool     // the page leaves out what follows
}

// TestWorkedExamples runs the commands of each page of worked examples and compares
// what they print with what the page says. With -update it writes the page anew,
// as many lines of each output as it has now.
func TestWorkedExamples(t *testing.T) {
	for _, page := range workedPages {
		t.Run(filepath.Base(page), func(t *testing.T) { checkWorked(t, page) })
	}
}

// checkWorked runs the commands of one page.
func checkWorked(t *testing.T, workedExamples string) {
	page, err := os.ReadFile(workedExamples)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(string(page), "\n")
	var anew []string
	examples := 0
	for i := 0; i < len(lines); {
		if !strings.HasPrefix(lines[i], prompt) {
			anew = append(anew, lines[i])
			i++
			continue
		}
		w, next := parseWorked(lines, i)
		got := w.run(t)
		if !*update && strings.Join(got, "\n") != strings.Join(w.want, "\n") {
			t.Errorf("%s: %s prints\n%s\nnot\n%s", workedExamples, lines[i], strings.Join(got, "\n"), strings.Join(w.want, "\n"))
		}
		anew = append(anew, lines[i])
		anew = append(anew, w.block(got)...)
		i = next
		examples++
	}
	if examples == 0 {
		t.Fatalf("%s holds no command", workedExamples)
	}
	if *update {
		if err := os.WriteFile(workedExamples, []byte(strings.Join(anew, "\n")), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// parseWorked reads the example whose command is line i, and gives the line after it.
func parseWorked(lines []string, i int) (worked, int) {
	w := worked{args: strings.Fields(strings.TrimPrefix(lines[i], prompt))}
	for j, arg := range w.args {
		if strings.HasPrefix(arg, "testdata/") {
			w.args[j] = "../../" + arg
		}
	}
	for i++; i < len(lines); i++ {
		switch {
		case lines[i] == leftOut:
			w.cut = true
			return w, i + 1
		case strings.HasPrefix(lines[i], indent):
			w.want = append(w.want, strings.TrimPrefix(lines[i], indent))
		case lines[i] == "" && i+1 < len(lines) && strings.HasPrefix(lines[i+1], indent):
			w.want = append(w.want, "")
		default:
			return w, i
		}
	}
	return w, i
}

// run gives the lines that the command prints, as many as the page shows.
func (w *worked) run(t *testing.T) []string {
	t.Helper()
	var stdout, stderr strings.Builder
	if status := run(w.args, strings.NewReader(""), &stdout, &stderr); status != exitDone {
		t.Fatalf("toewright %s: exit status %d: %s", strings.Join(w.args, " "), status, stderr.String())
	}
	got := strings.Split(strings.TrimSuffix(stdout.String(), "\n"), "\n")
	if w.cut && len(w.want) < len(got) {
		got = got[:len(w.want)]
	}
	return got
}

// block is the output as the page writes it.
func (w *worked) block(got []string) []string {
	var lines []string
	for _, line := range got {
		if line != "" {
			line = indent + line
		}
		lines = append(lines, line)
	}
	if w.cut {
		lines = append(lines, leftOut)
	}
	return lines
}
