package main

import (
	"bytes"
	"errors"
	"fmt"
)

// header begins every program of the format's version 1.
var header = []byte("\x00asm\x01\x00\x00\x00")

// Sections of a program, by number; see section 5.5 of the WebAssembly Core Specification.
const (
	codeSection = 10
	dataSection = 11
)

// withMemory returns the program with the memory that it begins with changed by edit, and
// written in few segments. All else stays as it is.
func withMemory(program []byte, edit func(memory []byte) error) ([]byte, error) {
	return withSection(program, dataSection, func(content []byte) ([]byte, error) {
		memory, err := readMemory(content)
		if err == nil {
			err = edit(memory)
		}
		if err != nil {
			return nil, fmt.Errorf("the data section: %w", err)
		}
		return appendMemory(nil, memory), nil
	})
}

// withSection returns the program with the content of a section changed by edit.
func withSection(program []byte, section byte, edit func(content []byte) ([]byte, error)) ([]byte, error) {
	rest, ok := bytes.CutPrefix(program, header)
	if !ok {
		return nil, errors.New("no WebAssembly program of version 1")
	}
	out := append(make([]byte, 0, len(program)), header...)
	r := reader{data: rest}
	for len(r.data) > 0 {
		before := r.data
		number := r.byte()
		content := r.bytes(r.unsigned())
		if r.err != nil {
			return nil, fmt.Errorf("the section at byte %d: %w", len(program)-len(before), r.err)
		}
		if number != section {
			out = append(out, before[:len(before)-len(r.data)]...)
			continue
		}
		content, err := edit(content)
		if err != nil {
			return nil, err
		}
		out = append(out, number)
		out = appendUnsigned(out, uint64(len(content)))
		out = append(out, content...)
	}
	return out, nil
}
