package main

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"strconv"
	"strings"
	"time"
)

// lastCall takes long enough to be under way when the server is asked to stop.
const lastCall = "/api/v1/tolerance?cars=100000"

// farewell asks the server to stop while a call runs. It returns how long that took,
// how the call ended, and whether the server ended well.
func (s *server) farewell(ctx context.Context, study string) (took time.Duration, end string, err error) {
	ended := make(chan string, 1)
	go func() { ended <- s.call(ctx, study) }()
	if err := s.untilRunning(ctx); err != nil {
		return 0, "", err
	}
	took, err = s.stop()
	return took, <-ended, err
}

// call makes the last call and returns its status, or what else it ended by.
func (s *server) call(ctx context.Context, study string) string {
	r, err := http.NewRequestWithContext(ctx, http.MethodPost, s.url+lastCall, strings.NewReader(study))
	if err != nil {
		return err.Error()
	}
	r.Header.Set("Content-Type", "application/json")
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		return err.Error()
	}
	defer answer.Body.Close()
	if _, err := io.Copy(io.Discard, answer.Body); err != nil {
		return err.Error()
	}
	return strconv.Itoa(answer.StatusCode)
}

// untilRunning waits until the server works on a call.
func (s *server) untilRunning(ctx context.Context) error {
	for began := time.Now(); time.Since(began) < patience; sleep(ctx, 10*time.Millisecond) {
		m, err := s.metrics(ctx)
		if err != nil {
			return err
		}
		if m[running] > 0 {
			return nil
		}
	}
	return fmt.Errorf("the server did not take up %s within %s", lastCall, patience)
}
