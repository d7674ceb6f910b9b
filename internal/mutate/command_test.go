//go:build unix

package main

import "testing"

func TestFailedTest(t *testing.T) {
	tests := []struct{ name, out, want string }{
		{"failure", "noise\n--- FAIL: TestA (0.00s)\n    a_test.go:1: no\nFAIL\n", "TestA"},
		{"panic", "panic: index\n\ngoroutine 9 [running]:\ntoewright/solver_test.TestB(0xc00)\n\t/a.go:1\n", "TestB"},
		{"test too long", "panic: test timed out after 10m0s\n", timeOrMemory},
		{"no more memory", "fatal error: runtime: out of memory\n", timeOrMemory},
		{"no more time", "SIGXCPU: cpu limit exceeded\nPC=0x1\n", timeOrMemory},
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

func TestLimitedRunsInTheFolder(t *testing.T) {
	dir := t.TempDir()
	for command, want := range map[string]string{
		`test "$PWD" = "` + dir + `"`:                  "",
		`test "$MUTANT" = 7`:                           "",
		"echo '--- FAIL: TestC (0.00s)'; exit 1":       "TestC",
		"ulimit -t | grep -qx 30 && ulimit -v >&2":     "",
		"ulimit -t 1; while :; do :; done; echo alive": "an end without a word",
	} {
		if by, err := limited(t.Context(), dir, 30, "MUTANT=7", []string{"sh", "-c", command}); by != want || err != nil {
			t.Errorf("limited(%q) = %q, %v, want %q", command, by, err, want)
		}
	}
}

func TestLimitedWithoutTheCommand(t *testing.T) {
	if by, err := limited(t.Context(), "/no/such/folder", 30, "", []string{"true"}); err == nil {
		t.Errorf("limited in no folder = %q, want an error", by)
	}
}
