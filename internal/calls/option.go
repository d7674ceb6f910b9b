package calls

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Option is one option of a request.
type Option struct {
	Name  string
	Usage string // one line, with what stands for its value between back quotes
	Kind  Kind
	Words []string // those that it takes; nil where it takes any value of its kind
	OfCar bool     // it takes the name of a candidate of the study, or base
	// Set reads its value. The error says what is wrong with it, and not of which
	// option it is.
	Set func(string) error
}

// Kind is what the value of an option is, as flags name it.
type Kind string

// The kinds.
const (
	Text   Kind = "string"
	Word   Kind = "word" // one of a few
	Whole  Kind = "int"
	Number Kind = "float64"
)

// Description returns the usage as a sentence without marks.
func (o *Option) Description() string { return strings.ReplaceAll(o.Usage, "`", "") }

// text is an option that takes any text but none.
func text(value *string, name, usage string) Option {
	return Option{Name: name, Usage: usage, Kind: Text, Set: func(s string) error {
		if s == "" { // as of a script whose variable is not set: nothing given is said by leaving it out
			return errors.New("is empty; leave it out, or say what it is")
		}
		*value = s
		return nil
	}}
}

// car is an option that takes the name of a car.
func car(value *string, name, usage string) Option {
	o := text(value, name, usage)
	o.OfCar = true
	return o
}

// word is an option that takes one of words.
func word(value *string, name, usage string, words ...string) Option {
	usage += " (" + strings.Join(words, ", ") + ")"
	return Option{Name: name, Usage: usage, Kind: Word, Words: words, Set: func(s string) error {
		if !slices.Contains(words, s) {
			return fmt.Errorf("%.40q is none of %s", s, strings.Join(words, ", "))
		}
		*value = s
		return nil
	}}
}

// number is an option that is 0 where it is not given.
func number(value *float64, name, usage string) Option {
	return Option{Name: name, Usage: usage, Kind: Number, Set: func(s string) error {
		x, err := parseNumber(s)
		if err == nil {
			*value = x
		}
		return err
	}}
}

// optional is a number that is nil where it is not given.
func optional(value **float64, name, usage string) Option {
	return given(value, name, usage, Number, parseNumber)
}

// count is a whole number that is nil where it is not given.
func count(value **int, name, usage string) Option {
	return given(value, name, usage, Whole, parseWhole)
}

// parseNumber reads a number, which is finite.
func parseNumber(s string) (float64, error) {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, fmt.Errorf("%.40q is no number", s)
	}
	return x, nil
}

func parseWhole(s string) (int, error) {
	x, err := strconv.Atoi(s)
	if err != nil {
		return 0, fmt.Errorf("%.40q is no whole number", s)
	}
	return x, nil
}

// given is an option that leaves a nil pointer where it is not given.
func given[T int | float64](value **T, name, usage string, kind Kind, parse func(string) (T, error)) Option {
	return Option{Name: name, Usage: usage, Kind: kind, Set: func(s string) error {
		x, err := parse(s)
		if err == nil {
			*value = &x
		}
		return err
	}}
}
