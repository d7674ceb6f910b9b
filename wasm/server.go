package wasm

import (
	"context"
	"encoding/json"
	"fmt"
	"sync"
	"time"
)

// progressInterval is the least time between two reports of one call. The page
// can show no more than some of them.
const progressInterval = 50 * time.Millisecond

// Handler is a method that the page can call. It returns a value that is sent as
// JSON, or [Bytes], which are sent as they are. Progress sends a value on the way
// to it; of reports in quick succession only the first is sent. When ctx is
// cancelled the handler should return soon, with its best so far or with ctx.Err().
// A panic ends the worker.
type Handler func(ctx context.Context, params json.RawMessage, progress func(any)) (any, error)

// Bytes are a result that is no JSON: numbers by the ten thousand, which the wire
// carries as a typed array without reading them.
type Bytes []byte

// server answers calls that arrive by receive, on its port.
type server struct {
	handlers map[string]Handler
	port     port
	yield    func() // lets the event loop turn

	mu      sync.Mutex
	running map[int]context.CancelFunc
}

func newServer(handlers map[string]Handler, p port, yield func()) *server {
	return &server{handlers: handlers, port: p, yield: yield, running: map[int]context.CancelFunc{}}
}

// receive takes in one message. It does not block: a call runs in a goroutine of
// its own.
func (s *server) receive(m message) {
	switch m.Kind {
	case kindCall:
		s.call(m)
	case kindCancel:
		s.cancel(m.ID)
	default:
		s.port.post(errorMessage(m.ID, fmt.Errorf("wasm: kind %q is not for a worker", m.Kind)))
	}
}

func (s *server) call(m message) {
	handler, ok := s.handlers[m.Method]
	if !ok {
		s.port.post(errorMessage(m.ID, &Error{CodeUnknownMethod, fmt.Sprintf("wasm: no method %q", m.Method)}))
		return
	}
	ctx, ok := s.begin(m.ID)
	if !ok {
		s.port.post(errorMessage(m.ID, fmt.Errorf("wasm: call %d is running already", m.ID)))
		return
	}
	go func() {
		answer := s.run(ctx, handler, m)
		s.end(m.ID)
		s.port.post(answer)
	}()
}

// run calls the handler and returns the answer to the call m.
func (s *server) run(ctx context.Context, handler Handler, m message) message {
	paced := pacedContext{ctx, newPacer(s.yield)}
	result, err := handler(paced, m.Body, s.reporter(m.ID, paced.pacer))
	if err != nil {
		return errorMessage(m.ID, err)
	}
	body, err := encodeResult(result)
	if err != nil {
		return errorMessage(m.ID, fmt.Errorf("wasm: result of %s: %w", m.Method, err))
	}
	return message{ID: m.ID, Kind: kindResult, Body: body}
}

// encodeResult returns what is sent of a handler's result.
func encodeResult(result any) (json.RawMessage, error) {
	if b, ok := result.(Bytes); ok {
		return json.RawMessage(b), nil
	}
	return json.Marshal(result)
}

// reporter returns the progress function of a call. A value that is not JSON is
// a mistake in the handler and panics.
func (s *server) reporter(id int, pace *pacer) func(any) {
	var mu sync.Mutex
	var next time.Time
	return func(v any) {
		defer pace.pause()
		mu.Lock()
		defer mu.Unlock()
		now := time.Now()
		if now.Before(next) {
			return
		}
		next = now.Add(progressInterval)
		body, err := json.Marshal(v)
		if err != nil {
			panic(fmt.Sprintf("wasm: progress: %v", err))
		}
		s.port.post(message{ID: id, Kind: kindProgress, Body: body})
	}
}

// begin enters a call and reports whether its id was free.
func (s *server) begin(id int) (context.Context, bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if _, taken := s.running[id]; taken {
		return nil, false
	}
	ctx, cancel := context.WithCancel(context.Background())
	s.running[id] = cancel
	return ctx, true
}

// cancel cancels the context of a call that is running.
func (s *server) cancel(id int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if cancel, ok := s.running[id]; ok {
		cancel()
	}
}

// cancelAll cancels every call that is running.
func (s *server) cancelAll() {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, cancel := range s.running {
		cancel()
	}
}

// end forgets a call, freeing its id.
func (s *server) end(id int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.running[id]()
	delete(s.running, id)
}
