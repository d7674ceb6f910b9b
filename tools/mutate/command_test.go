//go:build unix

package main

import "testing"

func TestFailedTest(t *testing.T) {
	tests := []struct{ name, out, want string }{
		{"failure", "noise\n--- FAIL: TestA (0.00s)\n    a_test.go:1: no\nFAIL\n", "TestA"},
		{"panic", "panic: index\n\ngoroutine 9 [running]:\ntoewright/solver_test.TestB(0xc00)\n\t/a.go:1\n", "TestB"},
		{"test too long", "panic: test timed out after 10m0s\n", timeOrMemory},
		{"no more memory", "fatal error: runtime: out of memory\n", timeOrMemory},
		{"nothing", "", "an end without a word"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := failedTest([]byte(tt.out)); got != tt.want {
				t.Errorf("failedTest = %q, want %q", got, tt.want)
			}
		})
	}
}

func TestLimited(t *testing.T) {
	dir := t.TempDir()
	tests := []struct{ name, command, want string }{
		{"in the folder", `test "$PWD" = "` + dir + `"`, ""},
		{"in the environment", `test "$MUTANT" = 7`, ""},
		{"a test that fails", "echo '--- FAIL: TestC (0.00s)'; exit 1", "TestC"},
		{"both limits", "test $(ulimit -t) = 1 && test $(ulimit -v) != unlimited", ""},
		{"no end", "while :; do :; done", timeOrMemory},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			by, err := limited(t.Context(), dir, 1, "MUTANT=7", []string{"sh", "-c", tt.command})
			if by != tt.want || err != nil {
				t.Errorf("limited(%q) = %q, %v, want %q", tt.command, by, err, tt.want)
			}
		})
	}
}

func TestLimitedWithoutTheCommand(t *testing.T) {
	if by, err := limited(t.Context(), "/no/such/folder", 30, "", []string{"true"}); err == nil {
		t.Errorf("limited in no folder = %q, want an error", by)
	}
}
