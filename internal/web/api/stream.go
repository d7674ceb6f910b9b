package api

import (
	"bufio"
	"context"
	"net/http"
	"time"

	"toewright/internal/calls"
	"toewright/internal/study"
	"toewright/internal/web/jsonplan"
)

// linesType is the media type of many JSON values, one on each line.
const linesType = "application/x-ndjson"

// Bounds of a call for many change sets, beside those of a study.
const (
	mostSets    = 10_000
	longestLine = 64 << 10 // bytes of one
	mostOfLines = 1 << 20  // bytes of all, which are read as they come
)

// takesLines reports whether a call is for one car, and answered by figures.
func takesLines(c calls.Call) bool { return c.Types == nil && chosen(c.New()) != nil }

// stream answers a call for each of many change sets of one study: a line in, a line out,
// in their order. It returns what is wrong before the first; from then on a line says so.
//
// Lines are read while others are worked on, so that a caller who leaves is noticed; a
// line's work waits its turn among all calls.
func (h *handler) stream(c calls.Call, w http.ResponseWriter, r *http.Request) *fault {
	request := c.New()
	if f := readOptions(request.Options, r.URL.RawQuery); f != nil {
		return f
	}
	if !takesLines(c) {
		return faultf(http.StatusUnsupportedMediaType, "Content-Type", "%s takes one study, as application/json", c.Name)
	}
	if f := choose(request, r.URL.RawQuery, study.ChangedName); f != nil {
		return f
	}
	leave, err := h.streams.enter(r.Context())
	if err != nil {
		return refusal(err)
	}
	defer leave()
	// HTTP/1 wants a say before it answers what it has not read whole; not every writer does.
	answer := http.NewResponseController(w)
	_ = answer.EnableFullDuplex()
	ctx, gone := context.WithCancel(r.Context())
	defer gone()
	in := &lines{conn: answer, body: bufio.NewReader(http.MaxBytesReader(w, r.Body, h.cfg.MaxBody+mostOfLines)), gone: gone}
	defer in.end()

	first, ok := in.next(int(h.cfg.MaxBody), h.cfg.BodyTimeout)
	if !ok {
		return faultf(http.StatusBadRequest, "", "want a study on the first line, and a change set on each after it")
	}
	if first.fault != nil {
		return first.fault
	}
	d, f := h.study(nil, "", first.text, w.Header())
	if f != nil {
		return f
	}
	in.readOn(h.cfg.BodyTimeout + h.cfg.Deadline)
	w.Header().Set("Content-Type", linesType)
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(http.StatusOK)
	_ = answer.Flush() // a caller may wait for this before its first line
	s := streamed{h: h, call: c, request: request, study: d}
	for {
		select {
		case next, ok := <-in.queue:
			if !ok || !s.answer(ctx, w, &next) {
				return nil
			}
		case <-h.cfg.Stopping:
			s.answer(ctx, w, &line{fault: refusal(errStopping)})
			return nil
		}
	}
}

// streamed is a call for many change sets that is being answered.
type streamed struct {
	h       *handler
	call    calls.Call
	request *calls.Request
	study   *study.Document
	text    []byte // of the answer to a line, whose memory serves the next
}

// answer sends the answer to a line. It reports whether another can follow.
func (s *streamed) answer(ctx context.Context, w http.ResponseWriter, l *line) bool {
	f := l.fault
	s.text = s.text[:0]
	if f == nil {
		f = s.appendAnswer(ctx, l.text)
	}
	if f != nil {
		if f.status == statusGone {
			return false
		}
		s.h.log(ctx, s.call, f)
		f.Line = l.number
		s.text, _ = jsonplan.Append(s.text[:0], faultAnswer{f})
	}
	s.text = append(s.text, '\n')
	conn := http.NewResponseController(w)
	_ = conn.SetWriteDeadline(time.Now().Add(s.h.cfg.Deadline))
	_, err := w.Write(s.text)
	_ = conn.Flush() // where the caller is gone, the next write says so
	return err == nil && l.fault == nil
}

// appendAnswer appends the answer to one change set.
func (s *streamed) appendAnswer(caller context.Context, text []byte) *fault {
	set, err := study.DecodeChangeSet(text)
	if err != nil {
		return studyFault(err)
	}
	d, name := s.study.With(set)
	if f := choose(s.request, "", name); f != nil {
		return f
	}
	ctx, done := s.h.waited(caller)
	defer done()
	leave, err := s.h.work.await(ctx)
	if err != nil {
		return refusal(err)
	}
	defer leave()
	result, f := ask(ctx, s.request, d)
	if f != nil {
		return f
	}
	s.text, err = jsonplan.Append(s.text, result)
	return unwritten(err)
}
