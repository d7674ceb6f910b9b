package api

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"io"
	"net/http"
	"os"
	"time"
)

// line is one line of a body.
type line struct {
	text   []byte
	number int    // in the body, from 1
	fault  *fault // what is wrong in place of the text; no line follows
}

// lines reads the lines of a body.
type lines struct {
	conn   *http.ResponseController
	body   *bufio.Reader
	gone   context.CancelFunc // called where the caller is
	number int
	queue  chan line     // filled and closed by [lines.readOn]
	done   chan struct{} // closed when nothing more is read; nil before
}

// next returns the next line that is not blank, of at most so many bytes and within a time.
// It returns false where there is none.
func (l *lines) next(most int, within time.Duration) (out line, ok bool) {
	for {
		_ = l.conn.SetReadDeadline(time.Now().Add(within)) // not every writer has deadlines
		text, err := readLine(l.body, most)
		l.number++
		out = line{text: bytes.TrimSpace(text), number: l.number}
		var tooLarge *http.MaxBytesError
		switch {
		case errors.Is(err, errLongLine):
			out.fault = faultf(http.StatusRequestEntityTooLarge, "", "the line is longer than %d bytes", most)
		case errors.As(err, &tooLarge):
			out.fault = faultf(http.StatusRequestEntityTooLarge, "", "the lines come to more than %d bytes; send the rest by another call", tooLarge.Limit)
		case errors.Is(err, os.ErrDeadlineExceeded):
			out.fault = faultf(http.StatusBadRequest, "", "no whole line came within %s", within)
		case errors.Is(err, io.EOF):
			return line{}, false
		case err != nil:
			l.gone()
			return line{}, false
		case len(out.text) == 0:
			continue
		}
		return out, true
	}
}

var errLongLine = errors.New("long line")

// readLine returns the next line, the last of which may have no end.
func readLine(r *bufio.Reader, most int) ([]byte, error) {
	var text []byte
	for {
		part, err := r.ReadSlice('\n')
		text = append(text, part...)
		switch {
		case len(bytes.TrimRight(text, "\r\n")) > most:
			return nil, errLongLine
		case errors.Is(err, bufio.ErrBufferFull):
		case errors.Is(err, io.EOF) && len(text) > 0:
			return text, nil
		default:
			return text, err
		}
	}
}

// readOn begins to fill the queue with the lines that follow, each within a time.
func (l *lines) readOn(within time.Duration) {
	l.queue, l.done = make(chan line, mostSets+1), make(chan struct{})
	go func() {
		defer close(l.done)
		defer close(l.queue)
		for n := 0; ; n++ {
			next, ok := l.next(longestLine, within)
			if !ok {
				return
			}
			if n == mostSets {
				next.fault = faultf(http.StatusRequestEntityTooLarge, "", "more than %d change sets; send the rest by another call", mostSets)
			}
			l.queue <- next
			if next.fault != nil {
				return
			}
		}
	}()
}

// end ends the reading, which must not outlast the request.
func (l *lines) end() {
	if l.done == nil {
		return
	}
	select {
	case <-l.done:
	default:
		_ = l.conn.SetReadDeadline(time.Now())
		<-l.done
	}
}
