package main

import (
	"bytes"
	"encoding/json"
	"net/http"
	"strings"
	"testing"

	"toewright/internal/web/api"
)

func TestEveryTargetIsAnswered(t *testing.T) {
	address, _ := serveCalls(t, api.Config{})
	lines, err := targets("http://"+address, "../../testdata/studies")
	if err != nil {
		t.Fatal(err)
	}
	for line := range bytes.Lines(lines) {
		var one target
		if err := json.Unmarshal(line, &one); err != nil {
			t.Fatal(err)
		}
		answer, err := http.Post(one.URL, "application/json", bytes.NewReader(one.Body))
		if err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
		if answer.StatusCode != http.StatusOK {
			t.Errorf("%s of %.60q = %d, want 200", one.URL, one.Body, answer.StatusCode)
		}
	}
}

func TestTargetsOfNothing(t *testing.T) {
	if _, err := targets("http://127.0.0.1:1", t.TempDir()); err == nil || !strings.Contains(err.Error(), "no studies") {
		t.Errorf("targets of an empty folder: %v, want an error", err)
	}
}

func TestSweepWithoutTheTool(t *testing.T) {
	_, _, err := send(t.Context(), options{tool: "no-such-tool", studies: "../../testdata/studies"}, "http://127.0.0.1:1")
	if err == nil || !strings.Contains(err.Error(), "no-such-tool") {
		t.Errorf("sweep = %v, want an error that names the tool", err)
	}
}
