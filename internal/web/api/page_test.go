package api

import (
	"io"
	"net/http"
	"strings"
	"testing"

	"toewright/internal/report"
)

func TestReportAnswer(t *testing.T) {
	r := post(t, New(Config{}), "report?candidate=low+ball&date=1+May&paper=letter", saloon)
	body, err := io.ReadAll(r.Body)
	if err != nil || r.StatusCode != http.StatusOK {
		t.Fatalf("report: %d, %v", r.StatusCode, err)
	}
	for _, part := range []string{"<!DOCTYPE html>", "low ball", "<dd>1 May</dd>", "@page{size:letter"} {
		if !strings.Contains(string(body), part) {
			t.Errorf("the page has no %q", part)
		}
	}
	if got := r.Header.Get("Content-Type"); got != "text/html; charset=utf-8" {
		t.Errorf("content type %q", got)
	}
	if got, want := r.Header.Get("Content-Security-Policy"), report.Policy(report.Letter)+sandbox; got != want {
		t.Errorf("policy %q, want %q", got, want)
	}
}

func TestReportRefuses(t *testing.T) {
	r := post(t, New(Config{}), "report?paper=a5", saloon)
	if f := readFault(t, r); r.StatusCode != http.StatusBadRequest || f.Key != "paper" {
		t.Errorf("paper a5: %d, %+v", r.StatusCode, f)
	}
}
