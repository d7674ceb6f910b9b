package wasm

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"sync"
	"time"
)

// cancelGrace is how long a cancelled call may take to answer before its worker
// is held to be stuck and ended. It is a hundred yields.
const cancelGrace = 3 * time.Second

// startGrace is the same of a worker that has not been heard of: on a slow phone it takes
// seconds to start, and what was asked of it meanwhile must not fail for that.
const startGrace = time.Minute

// ErrWorkerEnded is what calls fail with whose worker crashed or was ended.
var ErrWorkerEnded = errors.New("wasm: the worker ended before it answered")

// errStuck is added to the cause of the cancel where no answer came within [cancelGrace].
var errStuck = errors.New("wasm: no answer to a cancel")

// client makes calls to one worker.
type client struct {
	port port

	mu    sync.Mutex
	heard bool // the worker has sent something
	last  int  // id of the last call
	calls map[int]*pending
	err   error // why the worker is no more; nil while it lives
}

// pending is a call that waits for its answer. Whoever takes it out of
// client.calls sends the answer, so there is never more than one.
type pending struct {
	progress func(json.RawMessage)
	answer   chan answer // of one place, so that the sender never waits
}

type answer struct {
	body json.RawMessage
	err  error
}

func newClient(p port) *client { return &client{port: p, calls: map[int]*pending{}} }

// call sends a call and waits for its answer. After ctx is cancelled it waits on
// for [cancelGrace]; if there is still no answer it returns an errStuck.
func (c *client) call(ctx context.Context, method string, body json.RawMessage, progress func(json.RawMessage)) (json.RawMessage, error) {
	id, p, err := c.begin(progress)
	if err != nil {
		return nil, err
	}
	defer c.take(id)
	c.port.post(message{ID: id, Kind: kindCall, Method: method, Body: body})
	select {
	case a := <-p.answer:
		return a.body, a.err
	case <-ctx.Done():
		c.port.post(message{ID: id, Kind: kindCancel})
	}
	select {
	case a := <-p.answer:
		return a.body, a.err
	case <-time.After(c.grace()):
		return nil, fmt.Errorf("%w: %w", errStuck, ctx.Err())
	}
}

// grace returns how long a cancelled call may take to answer.
func (c *client) grace() time.Duration {
	c.mu.Lock()
	defer c.mu.Unlock()
	if !c.heard {
		return startGrace
	}
	return cancelGrace
}

// receive takes in one message from the worker. One for a call that was given up
// is dropped.
func (c *client) receive(m message) {
	c.mu.Lock()
	c.heard = true
	c.mu.Unlock()
	switch m.Kind {
	case kindProgress:
		if p := c.find(m.ID); p != nil && p.progress != nil {
			p.progress(m.Body)
		}
	case kindResult:
		c.answer(m.ID, answer{body: m.Body})
	case kindError:
		c.answer(m.ID, answer{err: &Error{m.Code, m.Text}})
	}
}

// fail ends all calls with err, and those to come.
func (c *client) fail(err error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.err != nil {
		return
	}
	c.err = err
	for _, p := range c.calls {
		p.answer <- answer{err: err}
	}
	clear(c.calls)
}

// load returns the number of calls that wait, and whether the worker lives.
func (c *client) load() (calls int, alive bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	return len(c.calls), c.err == nil
}

func (c *client) begin(progress func(json.RawMessage)) (int, *pending, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.err != nil {
		return 0, nil, c.err
	}
	c.last++
	p := &pending{progress: progress, answer: make(chan answer, 1)}
	c.calls[c.last] = p
	return c.last, p, nil
}

func (c *client) answer(id int, a answer) {
	if p := c.take(id); p != nil {
		p.answer <- a
	}
}

func (c *client) find(id int) *pending {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.calls[id]
}

func (c *client) take(id int) *pending {
	c.mu.Lock()
	defer c.mu.Unlock()
	p := c.calls[id]
	delete(c.calls, id)
	return p
}
