package api

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"sync"

	"toewright/internal/engine"
	"toewright/internal/web/jsonplan"
)

// fault is why a call got no answer, as the caller sees it.
type fault struct {
	status  int
	Key     string `json:"key"` // of the study or the option at fault; may be empty
	Message string `json:"message"`
	Line    int    `json:"line,omitzero"` // in the study as it was sent, from 1
	Column  int    `json:"column,omitzero"`
	cause   error  // for the log: of what is our own mistake
}

func faultf(status int, key, format string, args ...any) *fault {
	return &fault{status: status, Key: key, Message: fmt.Sprintf(format, args...)}
}

// statusGone is logged for a caller that went away before the answer. It is never
// sent.
const statusGone = 499

// faultOf returns the fault of an error of the engine.
func faultOf(err error) *fault {
	var e *engine.Error
	switch {
	case errors.Is(err, context.DeadlineExceeded):
		return faultf(http.StatusGatewayTimeout, "", "the answer took too long; ask for less, or use the command, which has no limit")
	case errors.Is(err, context.Canceled):
		return faultf(statusGone, "", "the caller went away")
	case !errors.As(err, &e):
		return &fault{status: http.StatusInternalServerError, Message: "the program failed at this; the log of the server says how", cause: err}
	}
	f := faultf(http.StatusBadRequest, e.Key, "%s", e.Message)
	if e.Car != "" {
		f.Message = e.Car + ": " + f.Message
	}
	if e.Fault == engine.Unsolvable {
		f.status = http.StatusUnprocessableEntity
	}
	return f
}

// Refuse answers a request that does not get as far as a call, as calls are refused.
// Key names the header at fault.
func Refuse(w http.ResponseWriter, status int, key, message string) {
	faultf(status, key, "%s", message).write(w)
}

// retryAfter is when a caller that was refused should come again, in seconds.
const retryAfter = "1"

// write sends the fault.
func (f *fault) write(w http.ResponseWriter) {
	if f.status == statusGone {
		w.WriteHeader(statusGone) // noted for the log; nobody is there to read more
		return
	}
	if f.status == http.StatusTooManyRequests || f.status == http.StatusServiceUnavailable {
		w.Header().Set("Retry-After", retryAfter)
	}
	answer, _ := asJSON(f.status, faultAnswer{f}) // texts and whole numbers, which are always written
	answer.write(w)
}

// faultAnswer is a fault as it goes out.
type faultAnswer struct {
	Error *fault `json:"error"`
}

// jsonAnswer is an answer as JSON.
type jsonAnswer struct {
	status int
	body   *[]byte
}

// bodies are at rest between answers: most of an answer's memory is its text.
var bodies = sync.Pool{New: func() any { return new([]byte) }}

// largestBody is the most memory that is kept for another answer.
const largestBody = 1 << 20

// asJSON writes an answer as JSON.
func asJSON(status int, answer any) (*jsonAnswer, *fault) {
	body := bodies.Get().(*[]byte)
	text, err := jsonplan.Append((*body)[:0], answer)
	*body = text
	if f := unwritten(err); f != nil {
		return nil, f
	}
	return &jsonAnswer{status, body}, nil
}

// unwritten returns the fault of an answer that cannot be written; nil without an error.
// Figures that are no numbers come of a study that is out of all proportion, which is
// told; anything else is our own mistake.
func unwritten(err error) *fault {
	var value *json.UnsupportedValueError
	switch {
	case err == nil:
		return nil
	case errors.As(err, &value):
		return faultf(http.StatusUnprocessableEntity, "", "the answer has figures that are no numbers: look for values of the study that are out of proportion to the rest")
	}
	return faultOf(err)
}

func (a *jsonAnswer) write(w http.ResponseWriter) {
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(a.status)
	w.Write(*a.body) // The caller may be gone; there is nobody to tell.
	if cap(*a.body) <= largestBody {
		bodies.Put(a.body)
	}
}
