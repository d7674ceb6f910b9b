package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"regexp"
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
