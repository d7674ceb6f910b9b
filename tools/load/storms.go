package main

import (
	"context"
	"fmt"
	"net"
	"strings"
	"time"
)

// hugeBody is the length of a study that is far too large, in bytes.
const hugeBody = 64 << 20

// storms returns all kinds. Study is one that can be solved.
func storms(study string) []*storm {
	whole := head("/api/v1/sweep", len(study)) + study
	bad := badRequests(study)
	return []*storm{
		{"bad", 4, 20 * time.Millisecond, func(_ context.Context, c net.Conn) error {
			return write(c, bad[time.Now().Nanosecond()/1000%len(bad)])
		}},
		{"huge", 4, 100 * time.Millisecond, func(_ context.Context, c net.Conn) error {
			if err := write(c, head("/api/v1/sweep", hugeBody)); err != nil {
				return err
			}
			return flood(c, hugeBody)
		}},
		{"slow header", 100, time.Second, func(ctx context.Context, c net.Conn) error {
			return trickle(ctx, c, whole, 500*time.Millisecond)
		}},
		{"slow body", 200, time.Second, func(ctx context.Context, c net.Conn) error {
			if err := write(c, head("/api/v1/sweep", len(study))); err != nil {
				return err
			}
			return trickle(ctx, c, study, 500*time.Millisecond)
		}},
		{"half-closed after the request", 4, 50 * time.Millisecond, func(_ context.Context, c net.Conn) error {
			return halfClosed(c, whole)
		}},
		{"half-closed in the body", 4, 50 * time.Millisecond, func(_ context.Context, c net.Conn) error {
			return halfClosed(c, whole[:len(whole)/2])
		}},
		{"half-closed in the header", 4, 50 * time.Millisecond, func(_ context.Context, c net.Conn) error {
			return halfClosed(c, whole[:40])
		}},
		{"left before the answer", 4, 50 * time.Millisecond, func(_ context.Context, c net.Conn) error {
			if err := write(c, whole); err != nil {
				return err
			}
			return errGone
		}},
	}
}

// badRequests returns requests that are wrong in different ways.
func badRequests(study string) []string {
	nested := strings.Repeat("[", 100_000)
	broken := study[:len(study)/2]
	return []string{
		"nonsense\r\n\r\n",
		"GET /" + strings.Repeat("a", 2<<20) + " HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n",
		"GET / HTTP/1.1\r\nHost: 127.0.0.1\r\n" + strings.Repeat("X: y\r\n", 500_000) + "\r\n",
		"POST /api/v1/sweep HTTP/1.1\r\nHost: 127.0.0.1\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\n",
		"DELETE /api/v1/sweep HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n",
		head("/api/v1/none", 2) + "{}",
		head("/api/v1/sweep", 0),
		head("/api/v1/sweep", len(nested)) + nested,
		head("/api/v1/sweep", len(broken)) + broken,
		head("/api/v1/sweep?"+strings.Repeat("a=1&", 10_000), len(study)) + study,
		head("/api/v1/sweep?steer=1e999", len(study)) + study,
	}
}

func write(c net.Conn, text string) error {
	_, err := c.Write([]byte(text))
	return err
}

// flood sends that many bytes, or until the server takes no more.
func flood(c net.Conn, length int) error {
	piece := []byte(strings.Repeat(" ", 64<<10))
	for sent := 0; sent < length; sent += len(piece) {
		if _, err := c.Write(piece); err != nil {
			return fmt.Errorf("after %d bytes: %w", sent, err)
		}
	}
	return nil
}

// halfClosed sends a text and says that nothing more will come.
func halfClosed(c net.Conn, text string) error {
	if err := write(c, text); err != nil {
		return err
	}
	return c.(*net.TCPConn).CloseWrite()
}
