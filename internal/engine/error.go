package engine

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"toewright/internal/strictjson"
	"toewright/internal/study"
	"toewright/solver"
)

// Fault says what kind of thing keeps a call from an answer.
type Fault uint8

// The faults. A study or an option that is wrong has to be mended; one that cannot
// be solved is well stated, but the linkage does not go there.
const (
	Wrong Fault = iota
	Unsolvable
)

// Error is why a call gave no answer, in one line.
type Error struct {
	Fault   Fault
	Key     string // the key of the study, the parameter or the option at fault; may be empty
	Car     string // the car it is about: "base car" or a candidate's name in quotes; may be empty
	Message string // what is wrong, with numbers and units, and what to do
}

// Error returns car, key and message in one line.
func (e *Error) Error() string {
	var parts []string
	for _, part := range []string{e.Car, e.Key, e.Message} {
		if part != "" {
			parts = append(parts, part)
		}
	}
	return strings.Join(parts, ": ")
}

// wrongf returns an error about a key or an option.
func wrongf(key, format string, args ...any) *Error {
	return &Error{Fault: Wrong, Key: key, Message: fmt.Sprintf(format, args...)}
}

// explain returns err, which is about a car or, if that is empty, about the study,
// as an [*Error]. Errors of a context and nil are returned as they are.
func explain(err error, car string) error {
	var file *strictjson.Error
	var input *solver.InputError
	var static *solver.StaticError
	var reach *solver.ReachError
	var ours *Error
	switch {
	case err == nil, isContext(err):
		return err
	case errors.As(err, &ours):
		if ours.Car != "" || car == "" {
			return err
		}
		whose := *ours
		whose.Car = car
		return &whose
	case errors.As(err, &file):
		return &Error{Key: file.Path, Car: car, Message: file.Message}
	case errors.As(err, &input):
		return &Error{Key: input.Key, Car: car, Message: input.Problem}
	case errors.As(err, &static):
		return &Error{Fault: Unsolvable, Car: car + " at travel 0", Message: bare(static)}
	case errors.As(err, &reach):
		return &Error{Fault: Unsolvable, Car: car, Message: bare(reach)}
	}
	return &Error{Car: car, Message: bare(err)}
}

// InUnits returns an error about a study with its lengths in the study's units; the solver
// and the searches know mm alone. What is no [*Error] is returned as it is.
func InUnits(err error, d *study.Document) error {
	if err == nil || d == nil || d.Units != study.Inch {
		return err // before anything is asked of the memory: a frame has no error
	}
	var e *Error
	if !errors.As(err, &e) {
		return err
	}
	said := *e
	said.Message = d.Units.Sentence(e.Message)
	return &said
}

// isContext reports whether err says that a call was cancelled or took too long.
func isContext(err error) bool {
	return errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded)
}

// bare returns the message of an error without the name of the package.
func bare(err error) string {
	text := strings.TrimPrefix(err.Error(), "solver: ")
	return strings.TrimPrefix(text, "optimize: ")
}
