package engines

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"strconv"
	"strings"
	"time"
)

// marionette is Firefox's own socket for tests. A message is its length, a colon and JSON; a
// command is [0, number, name, parameters], an answer [1, number, error, result].
type marionette struct {
	process *process
	conn    net.Conn
	in      *bufio.Reader
	number  int
}

// dialMarionette connects to a Firefox that is starting.
func dialMarionette(ctx context.Context, p *process, port int) (*marionette, error) {
	conn, err := dial(ctx, port)
	if err != nil {
		return nil, fmt.Errorf("marionette: %w: %s", err, p.said())
	}
	m := &marionette{process: p, conn: conn, in: bufio.NewReader(conn)}
	if _, err := m.read(); err != nil { // It says what it is first.
		return nil, fmt.Errorf("marionette: %w: %s", err, p.said())
	}
	return m, nil
}

func (m *marionette) call(ctx context.Context, c command, p parameters) (json.RawMessage, error) {
	if p == nil {
		p = parameters{}
	}
	m.number++
	message, err := json.Marshal([]any{0, m.number, "WebDriver:" + c.marionette, p})
	if err != nil {
		return nil, err
	}
	if deadline, ok := ctx.Deadline(); ok {
		m.conn.SetDeadline(deadline)
	}
	if _, err := fmt.Fprintf(m.conn, "%d:%s", len(message), message); err != nil {
		return nil, err
	}
	text, err := m.read()
	if err != nil {
		return nil, err
	}
	var failure *refusal
	var result json.RawMessage
	if err := json.Unmarshal(text, &[]any{new(int), new(int), &failure, &result}); err != nil {
		return nil, fmt.Errorf("the answer %.200s: %w", text, err)
	}
	if failure != nil {
		return nil, *failure
	}
	return valueIn(result), nil
}

// valueIn returns the value of a result, which most commands wrap in an object.
func valueIn(result json.RawMessage) json.RawMessage {
	var wrapped struct {
		Value json.RawMessage `json:"value"`
	}
	if json.Unmarshal(result, &wrapped) == nil && wrapped.Value != nil {
		return wrapped.Value
	}
	return result
}

// read returns the next message.
func (m *marionette) read() ([]byte, error) {
	length, err := m.in.ReadString(':')
	if err != nil {
		return nil, err
	}
	n, err := strconv.Atoi(strings.TrimSuffix(length, ":"))
	if err != nil {
		return nil, fmt.Errorf("a message of length %q", length)
	}
	text := make([]byte, n)
	_, err = io.ReadFull(m.in, text)
	return text, err
}

func (m *marionette) close() {
	m.conn.Close()
	m.process.end()
}

// dial connects to a port of this machine as soon as something listens there.
func dial(ctx context.Context, port int) (net.Conn, error) {
	for {
		conn, err := net.Dial("tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(port)))
		if err == nil {
			return conn, nil
		}
		select {
		case <-ctx.Done():
			return nil, err
		case <-time.After(pollInterval):
		}
	}
}
