package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"time"
)

// queries are the sweeps that are asked of each study: mostly of one car, as a program
// asks that tries a value, and now and then of all.
var queries = []string{
	"sweep?candidate=base",
	"sweep?candidate=base&motion=left",
	"sweep?candidate=base&motion=roll",
	"sweep?candidate=base&heave=5",
	"sweep?candidate=base&roll=1.5",
	"sweep",
}

// target is a request as the load tool reads it.
type target struct {
	Method string              `json:"method"`
	URL    string              `json:"url"`
	Body   []byte              `json:"body"`
	Header map[string][]string `json:"header"`
}

// targets returns the requests, one on each line. The tool takes them in turn.
func targets(url, folder string) ([]byte, error) {
	files, err := filepath.Glob(filepath.Join(folder, "*.json"))
	if err != nil {
		return nil, err
	}
	if len(files) == 0 {
		return nil, fmt.Errorf("no studies in %s", folder)
	}
	var lines bytes.Buffer
	to := json.NewEncoder(&lines)
	for _, query := range queries {
		for _, file := range files {
			body, err := os.ReadFile(file)
			if err != nil {
				return nil, err
			}
			t := target{"POST", url + "/api/v1/" + query, body, map[string][]string{"Content-Type": {"application/json"}}}
			if err := to.Encode(t); err != nil {
				return nil, err
			}
		}
	}
	return lines.Bytes(), nil
}

// attack is what the load tool reports of the sweeps.
type attack struct {
	Requests   int
	Rate       float64 // sent a second
	Throughput float64 // answered with success a second
	Latencies  struct {
		P50 time.Duration `json:"50th"`
		P95 time.Duration `json:"95th"`
		P99 time.Duration `json:"99th"`
		Max time.Duration
	}
	StatusCodes map[string]int `json:"status_codes"`
	Errors      []string
	// Processors that the load tool and the server kept busy meanwhile, on the average.
	tool, server float64
}

// answered returns the share of the sweeps that were answered with success.
func (a *attack) answered() float64 { return float64(a.StatusCodes["200"]) / float64(a.Requests) }

// sweep has the load tool send the sweeps to a server.
func sweep(ctx context.Context, o options, s *server) (*attack, error) {
	before, err := processorTime(s.cmd.Process.Pid)
	if err != nil {
		return nil, err
	}
	began := time.Now()
	a, tool, err := send(ctx, o, s.url)
	if err != nil {
		return nil, err
	}
	took := time.Since(began)
	after, err := processorTime(s.cmd.Process.Pid)
	a.tool, a.server = tool.Seconds()/took.Seconds(), (after-before).Seconds()/took.Seconds()
	return a, err
}

// send has the load tool send the sweeps, and returns its processor time as it did.
func send(ctx context.Context, o options, url string) (a *attack, tool time.Duration, err error) {
	lines, err := targets(url, o.studies)
	if err != nil {
		return nil, 0, err
	}
	send := exec.CommandContext(ctx, o.tool, "attack", "-format=json",
		"-rate="+strconv.Itoa(o.rate), "-duration="+o.lasting.String(), "-timeout=30s", "-max-body=0")
	send.Stdin = bytes.NewReader(lines)
	send.Stderr = os.Stderr
	results, err := send.Output()
	if err != nil {
		return nil, 0, fmt.Errorf("%s attack: %w", o.tool, err)
	}
	sum := exec.CommandContext(ctx, o.tool, "report", "-type=json")
	sum.Stdin = bytes.NewReader(results)
	text, err := sum.Output()
	if err != nil {
		return nil, 0, fmt.Errorf("%s report: %w", o.tool, err)
	}
	a = &attack{}
	return a, send.ProcessState.UserTime() + send.ProcessState.SystemTime(), json.Unmarshal(text, a)
}
