package wasm

import (
	"context"
	"errors"
)

// Code says of what sort an error from a worker is.
type Code string

const (
	CodeFailed        Code = ""               // the method returned an error
	CodeCancelled     Code = "cancelled"      // the method gave up because it was cancelled
	CodeUnknownMethod Code = "unknown-method" // the worker has no such method
)

// Error is an error that a worker answered with. One of code [CodeCancelled]
// is a [context.Canceled].
type Error struct {
	Code Code
	Text string // one line for the reader, as the method wrote it
}

func (e *Error) Error() string { return e.Text }

// Is makes errors.Is(err, context.Canceled) true for a cancelled call.
func (e *Error) Is(target error) bool {
	return e.Code == CodeCancelled && target == context.Canceled
}

// errorMessage returns the answer that carries err.
func errorMessage(id int, err error) message {
	m := message{ID: id, Kind: kindError, Text: err.Error()}
	var e *Error
	switch {
	case errors.As(err, &e):
		m.Code = e.Code
	case errors.Is(err, context.Canceled):
		m.Code = CodeCancelled
	}
	return m
}
