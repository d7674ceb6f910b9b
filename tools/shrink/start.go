package main

import (
	"errors"
	"slices"
)

// noArguments is the type of a function without arguments and results.
var noArguments = []byte{0x60, 0, 0}

// errNoElements is the error for a program that has no table of functions to call by number.
var errNoElements = errors.New("the program has no section of elements, as every one of Go's has")

// startWith gives a program of Go's one more function, which runs as soon as memory is laid out. It
// stands behind all others, so that they keep their numbers.
func (p program) startWith(f function) (program, error) {
	text := f.append(nil)
	types, err := p.grow(typeSection, noArguments)
	if err != nil {
		return nil, err
	}
	functions, err := p.grow(functionSection, appendUnsigned(nil, types))
	if err != nil {
		return nil, err
	}
	if _, err := p.grow(codeSection, append(appendUnsigned(nil, uint64(len(text))), text...)); err != nil {
		return nil, err
	}
	var imports uint64
	err = p.edit(importSection, func(content []byte) ([]byte, error) {
		r := reader{data: content}
		imports = r.unsigned()
		return content, r.err
	})
	if err != nil {
		return nil, err
	}
	at := slices.IndexFunc(p, func(s section) bool { return s.number == elementSection })
	if at < 0 {
		return nil, errNoElements
	}
	return slices.Insert(p, at, section{startSection, appendUnsigned(nil, imports+functions)}), nil
}

// grow appends an item to the list that is a section's content, and returns how many stood there before.
func (p program) grow(number byte, item []byte) (before uint64, err error) {
	err = p.edit(number, func(content []byte) ([]byte, error) {
		r := reader{data: content}
		before = r.unsigned()
		return slices.Concat(appendUnsigned(nil, before+1), r.data, item), r.err
	})
	return before, err
}
