package main

import (
	"strings"
	"testing"
)

func TestRun(t *testing.T) {
	tests := []struct {
		name       string
		args       []string
		want       int
		stdout     string // a part of it
		stderrLine string // a part of its only line
	}{
		{name: "help", args: nil, want: exitDone, stdout: "Available Commands"},
		{name: "version", args: []string{"version"}, want: exitDone, stdout: "toewright "},
		{name: "unknown command", args: []string{"swep"}, want: exitUsage, stderrLine: `no command "swep"`},
		{name: "unknown flag", args: []string{"serve", "--prot"}, want: exitUsage, stderrLine: "toewright serve --help"},
		{name: "argument too many", args: []string{"version", "now"}, want: exitUsage, stderrLine: "now"},
		{name: "address that cannot be", args: []string{"serve", "--address", "127.0.0.1:x"}, want: exitFailed, stderrLine: "127.0.0.1"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var stdout, stderr strings.Builder
			if got := run(tt.args, strings.NewReader(""), &stdout, &stderr); got != tt.want {
				t.Errorf("run(%q) = %d, want %d", tt.args, got, tt.want)
			}
			if !strings.Contains(stdout.String(), tt.stdout) {
				t.Errorf("run(%q) prints %q, want it to hold %q", tt.args, stdout.String(), tt.stdout)
			}
			checkErrorLine(t, stderr.String(), tt.stderrLine)
		})
	}
}

// checkErrorLine checks that there is one line that holds the part, or none if the
// part is empty.
func checkErrorLine(t *testing.T, got, part string) {
	t.Helper()
	lines := 1
	if part == "" {
		lines = 0
	}
	if strings.Count(got, "\n") != lines || !strings.Contains(got, part) {
		t.Errorf("standard error %q, want %d line with %q", got, lines, part)
	}
}
