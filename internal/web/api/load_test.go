package api

import (
	"context"
	"errors"
	"io"
	"net/http"
	"net/http/httptest"
	"runtime"
	"strings"
	"testing"
	"time"

	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// patience is how long a test waits for what must happen soon.
const patience = 10 * time.Second

// slowCall is a call that says when it begins and lasts until it is released or
// its context ends.
type slowCall struct {
	began   chan struct{}
	release chan struct{}
	ended   chan error
}

func newSlowCall() *slowCall {
	return &slowCall{make(chan struct{}, 100), make(chan struct{}), make(chan error, 100)}
}

func (s *slowCall) call() calls.Call {
	return calls.Call{Name: "slow", Result: struct{}{}, New: func() *calls.Request {
		return &calls.Request{Ask: func(ctx context.Context, _ *study.Document, _ func(engine.Progress)) (any, error) {
			s.began <- struct{}{}
			select {
			case <-s.release:
				s.ended <- nil
				return "done", nil
			case <-ctx.Done():
				s.ended <- ctx.Err()
				return nil, ctx.Err()
			}
		}}
	}}
}

// serveSlow serves a slow call.
func serveSlow(t *testing.T, cfg Config) (*slowCall, *handler, *httptest.Server) {
	t.Helper()
	s, h := newSlowCall(), newHandler(cfg)
	server := httptest.NewServer(h.watched("slow", h.answer(s.call())))
	t.Cleanup(server.Close)
	return s, h, server
}

// send posts the study and returns the status, or what kept it from one.
func send(ctx context.Context, url string) (int, error) { return sendFor(ctx, url, "") }

// sendFor is send by who accepts an encoding; where none is given, what Go's client does.
func sendFor(ctx context.Context, url, encoding string) (int, error) {
	r, err := http.NewRequestWithContext(ctx, http.MethodPost, url, strings.NewReader(saloon))
	if err != nil {
		return 0, err
	}
	r.Header.Set("Content-Type", "application/json")
	if encoding != "" {
		r.Header.Set("Accept-Encoding", encoding)
	}
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		return 0, err
	}
	defer answer.Body.Close()
	_, err = io.Copy(io.Discard, answer.Body)
	return answer.StatusCode, err
}

// start sends in the background.
func start(ctx context.Context, url string) <-chan int {
	got := make(chan int, 1)
	go func() {
		status, _ := send(ctx, url)
		got <- status
	}()
	return got
}

// await fails where a condition does not come true soon.
func await(t *testing.T, what string, true func() bool) {
	t.Helper()
	for end := time.Now().Add(patience); !true(); time.Sleep(time.Millisecond) {
		if time.Now().After(end) {
			t.Fatalf("waited in vain for %s", what)
		}
	}
}

func TestQueueIsBounded(t *testing.T) {
	s, h, server := serveSlow(t, Config{Workers: 1, Queue: 1})
	first := start(t.Context(), server.URL)
	<-s.began
	second := start(t.Context(), server.URL)
	await(t, "a call to wait", func() bool { return h.work.waiting.Load() == 1 })
	status, err := send(t.Context(), server.URL)
	if err != nil || status != http.StatusTooManyRequests {
		t.Errorf("third call = %d, %v, want 429", status, err)
	}
	close(s.release)
	if a, b := <-first, <-second; a != http.StatusOK || b != http.StatusOK {
		t.Errorf("calls that were let in = %d, %d, want 200", a, b)
	}
}

func TestFullQueueRefusesBeforeItReads(t *testing.T) {
	s, h, server := serveSlow(t, Config{Workers: 1, Queue: 1})
	first := start(t.Context(), server.URL)
	<-s.began
	second := start(t.Context(), server.URL)
	await(t, "a call to wait", func() bool { return h.work.waiting.Load() == 1 })
	body, _ := io.Pipe() // never sends anything
	r, err := http.Post(server.URL, "application/json", body)
	if err != nil {
		t.Fatal(err)
	}
	r.Body.Close()
	if r.StatusCode != http.StatusTooManyRequests || r.Header.Get("Retry-After") == "" {
		t.Errorf("call with a study yet to come = %d, want 429 and Retry-After", r.StatusCode)
	}
	close(s.release)
	<-first
	<-second
}

func TestStoppingFinishesWhatRuns(t *testing.T) {
	stopping := make(chan struct{})
	s, h, server := serveSlow(t, Config{Workers: 1, Queue: 5, Stopping: stopping})
	running := start(t.Context(), server.URL)
	<-s.began
	waiting := start(t.Context(), server.URL)
	await(t, "a call to wait", func() bool { return h.work.waiting.Load() == 1 })
	close(stopping)
	if got := <-waiting; got != http.StatusServiceUnavailable {
		t.Errorf("call that waited = %d, want 503", got)
	}
	close(s.release)
	if got := <-running; got != http.StatusOK {
		t.Errorf("call that ran = %d, want 200", got)
	}
}

// TestStoppingEndsWhatRunsOn: a call that is not done within its grace is ended, and told
// why.
func TestStoppingEndsWhatRunsOn(t *testing.T) {
	stopping := make(chan struct{})
	s, _, server := serveSlow(t, Config{Stopping: stopping, Grace: time.Millisecond})
	running := start(t.Context(), server.URL)
	<-s.began
	close(stopping)
	if got := <-running; got != http.StatusServiceUnavailable {
		t.Errorf("call that ran on = %d, want 503", got)
	}
	if err := <-s.ended; !errors.Is(err, context.Canceled) {
		t.Errorf("the work ended by %v, want cancellation", err)
	}
}

func TestDeadlineEndsTheWork(t *testing.T) {
	s, _, server := serveSlow(t, Config{Deadline: time.Millisecond})
	status, err := send(t.Context(), server.URL)
	if err != nil || status != http.StatusGatewayTimeout {
		t.Errorf("slow call = %d, %v, want 504", status, err)
	}
	select {
	case <-s.began:
		if err := <-s.ended; !errors.Is(err, context.DeadlineExceeded) {
			t.Errorf("the work ended by %v, want its deadline", err)
		}
	default: // It did not get as far as to begin.
	}
}

func TestCallerGoingAwayEndsTheWork(t *testing.T) {
	s, h, server := serveSlow(t, Config{})
	ctx, cancel := context.WithCancel(t.Context())
	gone := start(ctx, server.URL)
	<-s.began
	cancel()
	<-gone
	if err := <-s.ended; !errors.Is(err, context.Canceled) {
		t.Errorf("the work ended by %v, want cancellation", err)
	}
	await(t, "the call to be counted", func() bool { return h.metrics.snapshot()[outcome{"slow", statusGone}].count == 1 })
}

func TestSlowBodyIsCutOff(t *testing.T) {
	server := httptest.NewServer(New(Config{BodyTimeout: 10 * time.Millisecond}))
	defer server.Close()
	body, _ := io.Pipe() // never sends anything
	r, err := http.Post(server.URL+base+"sweep", "application/json", body)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	if f := readFault(t, r); r.StatusCode != http.StatusBadRequest || !strings.Contains(f.Message, "10ms") {
		t.Errorf("slow body = %d %q, want 400 and the time allowed", r.StatusCode, f.Message)
	}
}

func TestNoGoroutineIsLeft(t *testing.T) {
	before := runtime.NumGoroutine()
	s, _, server := serveSlow(t, Config{Workers: 2, Queue: 3})
	ctx, cancel := context.WithCancel(t.Context())
	var all []<-chan int
	for range 20 {
		all = append(all, start(ctx, server.URL))
	}
	<-s.began
	cancel()
	for _, got := range all {
		<-got
	}
	server.Close()
	http.DefaultClient.CloseIdleConnections()
	await(t, "goroutines to end", func() bool { return runtime.NumGoroutine() <= before })
}
