package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// few are put in the place of the many cars and shards of the manual's examples.
var few = strings.NewReplacer("1000000000", "60", "shards=100", "shards=3", "/100", "/3")

// example returns the text between two marks in docs/batch.md, with few cars.
func example(t *testing.T, from, to string) string {
	t.Helper()
	manual, err := os.ReadFile("../../docs/batch.md")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, begun := strings.Cut(string(manual), from)
	text, _, ended := strings.Cut(rest, to)
	if !begun || !ended {
		t.Fatalf("docs/batch.md has nothing from %q to %q", from, to)
	}
	return few.Replace(text)
}

// batchFolder returns a folder with a study and a place for parts.
func batchFolder(t *testing.T) string {
	t.Helper()
	folder := t.TempDir()
	study, err := os.ReadFile(shardStudy)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(folder, "car.json"), study, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(folder, "parts"), 0o700); err != nil {
		t.Fatal(err)
	}
	return folder
}

// wantMerged checks that the parts in a folder merge to what one run prints.
func wantMerged(t *testing.T, folder string) {
	t.Helper()
	parts, err := filepath.Glob(filepath.Join(folder, "parts", "*.json"))
	if err != nil || len(parts) != 3 {
		t.Fatalf("parts %v, %v; want 3", parts, err)
	}
	study := filepath.Join(folder, "car.json")
	want := output(t, "tolerance", study, "--cars", "60")
	if got := output(t, append([]string{"merge", study}, parts...)...); len(want) == 0 || !bytes.Equal(got, want) {
		t.Errorf("merged:\n%s\nwant\n%s", got, want)
	}
}

// linkProgram puts the program into a folder, as the manual's scripts want it.
func linkProgram(t *testing.T, folder string) {
	t.Helper()
	program, err := exec.LookPath("toewright")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(program, filepath.Join(folder, "toewright")); err != nil {
		t.Fatal(err)
	}
}

// TestSlurmScriptOfTheManual runs the manual's script as Slurm would, with the
// index of each task in the environment, counted from 1.
func TestSlurmScriptOfTheManual(t *testing.T) {
	folder := batchFolder(t)
	linkProgram(t, folder)
	script := "#!/bin/bash" + example(t, "```bash\n#!/bin/bash", "```")
	for i := 1; i <= 3; i++ {
		cmd := exec.Command("bash", "-c", script)
		cmd.Dir = folder
		cmd.Env = append(os.Environ(), fmt.Sprintf("SLURM_ARRAY_TASK_ID=%d", i))
		if text, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("task %d: %v: %s", i, err, text)
		}
	}
	wantMerged(t, folder)
}

// TestStudiesScriptOfTheManual runs the manual's script for many studies, one of which has no
// answer.
func TestStudiesScriptOfTheManual(t *testing.T) {
	folder := batchFolder(t)
	linkProgram(t, folder)
	cars := filepath.Join(folder, "cars")
	if err := os.Mkdir(cars, 0o700); err != nil {
		t.Fatal(err)
	}
	car, err := os.ReadFile(filepath.Join(folder, "car.json"))
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string][]byte{"a.json": car, "b.json": []byte("{}"), "c.json": car, "d.json": car} {
		if err := os.WriteFile(filepath.Join(cars, name), text, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	script := "#!/bin/bash\n#SBATCH --job-name=studies" + example(t, "```bash\n#!/bin/bash\n#SBATCH --job-name=studies", "```")
	for i := range 3 {
		cmd := exec.Command("bash", "-c", script)
		cmd.Dir = folder
		cmd.Env = append(os.Environ(), fmt.Sprintf("SLURM_ARRAY_TASK_ID=%d", i))
		if text, err := cmd.CombinedOutput(); (err == nil) != (i != 1) {
			t.Errorf("task %d: %v: %s", i, err, text)
		}
	}
	want := output(t, "search", filepath.Join(folder, "car.json"), "--json")
	for name, there := range map[string]bool{"a.json": true, "b.json": false, "c.json": true, "d.json": true} {
		got, err := os.ReadFile(filepath.Join(folder, "answers", name))
		if there && (err != nil || !bytes.Equal(got, want)) || !there && err == nil {
			t.Errorf("%s: %v, %.200s, want %.200s", name, err, got, want)
		}
	}
}

// TestKubernetesArgumentsOfTheManual runs the program with the arguments of the
// manual's manifest, their index filled in as Kubernetes does.
func TestKubernetesArgumentsOfTheManual(t *testing.T) {
	folder := batchFolder(t)
	lines := regexp.MustCompile(`(?m)^ +- (.+)$`).FindAllStringSubmatch(example(t, "args:\n", "env:"), -1)
	for i := range 3 {
		var args []string
		for _, line := range lines {
			filled := strings.NewReplacer("$(INDEX)", fmt.Sprint(i), "/study/", folder+"/", "/parts/", folder+"/parts/")
			args = append(args, filled.Replace(line[1]))
		}
		output(t, args...)
	}
	wantMerged(t, folder)
}
