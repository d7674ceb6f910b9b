package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// server is the program under load, in a process of its own.
type server struct {
	cmd    *exec.Cmd
	url    string // without a slash at the end
	exited chan error
}

var urlPattern = regexp.MustCompile(`http://(127\.0\.0\.1:\d+)`)

// startServer starts the program at a free port of the loopback. Its log is dropped.
func startServer(ctx context.Context, program string) (*server, error) {
	cmd := exec.CommandContext(ctx, program, "serve", "--address", "127.0.0.1:0")
	out, err := cmd.StdoutPipe()
	if err != nil {
		return nil, err
	}
	if err := cmd.Start(); err != nil {
		return nil, fmt.Errorf("%w; make load builds it", err)
	}
	line, err := bufio.NewReader(out).ReadString('\n')
	url := urlPattern.FindString(line)
	if err != nil || url == "" {
		cmd.Process.Kill()
		return nil, fmt.Errorf("%s serve said %q (%v), want its address", program, line, err)
	}
	s := &server{cmd: cmd, url: url, exited: make(chan error, 1)}
	go func() { s.exited <- cmd.Wait() }()
	return s, nil
}

// address returns the host and port.
func (s *server) address() string { return s.url[len("http://"):] }

// processorTime returns what a process has taken so far, as Linux tells.
func processorTime(pid int) (time.Duration, error) {
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
	if err != nil {
		return 0, err
	}
	return parseStat(string(text))
}

// parseStat returns the processor time of a process, its own and the system's for it, from
// the text of its stat.
func parseStat(text string) (time.Duration, error) {
	const tick = 10 * time.Millisecond // of the clock in which Linux tells it to programs
	const own, system = 11, 12         // behind the name, which may hold anything but ends by the last bracket
	fields := strings.Fields(text[strings.LastIndexByte(text, ')')+1:])
	if len(fields) <= system {
		return 0, fmt.Errorf("a process's stat is %q, want more fields", text)
	}
	var ticks time.Duration
	for _, i := range []int{own, system} {
		n, err := strconv.ParseInt(fields[i], 10, 64)
		if err != nil {
			return 0, fmt.Errorf("a process's stat is %q: %w", text, err)
		}
		ticks += time.Duration(n)
	}
	return ticks * tick, nil
}

// stopLimit is the longest that a server may take to stop.
const stopLimit = 2 * time.Second

// stop asks the server to stop and returns how long it took.
func (s *server) stop() (time.Duration, error) {
	began := time.Now()
	if err := s.cmd.Process.Signal(os.Interrupt); err != nil {
		return 0, err
	}
	select {
	case err := <-s.exited:
		return time.Since(began), err
	case <-time.After(stopLimit):
		return stopLimit, errors.New("the server did not stop")
	}
}

// kill ends the server if it still runs.
func (s *server) kill() { s.cmd.Process.Kill() }
