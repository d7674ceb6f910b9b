package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"strconv"
	"strings"
	"sync"
	"time"
)

// storm is a kind of bad request. Each of its senders makes one after the other.
type storm struct {
	name    string
	senders int
	pause   time.Duration // of a sender between two
	// send makes one request on a new connection.
	send func(ctx context.Context, c net.Conn) error
}

// patience is the longest that one bad request may take, whatever the server does.
const patience = 40 * time.Second

// ends counts how requests ended: by a status, or closed without one.
type ends map[string]int

// closed is the end of a request that got no answer.
const closed = "closed"

// rage sends until the context ends, and returns how the requests ended.
func (s *storm) rage(ctx context.Context, address string) ends {
	var mu sync.Mutex
	var all sync.WaitGroup
	counts := ends{}
	for range s.senders {
		all.Go(func() {
			for ctx.Err() == nil {
				end := s.once(ctx, address)
				mu.Lock()
				counts[end]++
				mu.Unlock()
				sleep(ctx, s.pause)
			}
		})
	}
	all.Wait()
	delete(counts, "") // Broken off by ourselves at the end.
	return counts
}

// once makes one request and returns how it ended, nothing if the context did first.
func (s *storm) once(ctx context.Context, address string) string {
	c, err := net.Dial("tcp", address)
	if err != nil {
		return err.Error()
	}
	defer c.Close()
	defer context.AfterFunc(ctx, func() { c.Close() })()
	c.SetDeadline(time.Now().Add(patience))
	err = s.send(ctx, c)
	if errors.Is(err, errGone) {
		return "left"
	}
	answer, err := http.ReadResponse(bufio.NewReader(c), nil)
	switch {
	case ctx.Err() != nil:
		return ""
	case err == nil:
		answer.Body.Close()
		return strconv.Itoa(answer.StatusCode)
	}
	var late net.Error
	if errors.As(err, &late) && late.Timeout() {
		return fmt.Sprintf("nothing for %s", patience)
	}
	return closed
}

// errGone is returned by a sender that leaves without waiting for the answer.
var errGone = errors.New("the caller left")

// sleep waits, or until the context ends.
func sleep(ctx context.Context, d time.Duration) {
	select {
	case <-ctx.Done():
	case <-time.After(d):
	}
}

// head returns the head of a POST to a path with a body of a length.
func head(path string, length int) string {
	return fmt.Sprintf("POST %s HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nContent-Length: %d\r\n\r\n", path, length)
}

// trickle sends a text a letter at a time.
func trickle(ctx context.Context, c net.Conn, text string, pause time.Duration) error {
	for _, letter := range strings.Split(text, "") {
		if _, err := c.Write([]byte(letter)); err != nil {
			return err
		}
		if sleep(ctx, pause); ctx.Err() != nil {
			return ctx.Err()
		}
	}
	return nil
}
