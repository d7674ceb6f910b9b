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
	typeSection     = 1
	importSection   = 2
	functionSection = 3
	startSection    = 8
	elementSection  = 9
	codeSection     = 10
	dataSection     = 11
)

// section is a part of a program.
type section struct {
	number  byte
	content []byte
}

// program is a program's sections, in their order.
type program []section

// readProgram reads a program.
func readProgram(text []byte) (program, error) {
	rest, ok := bytes.CutPrefix(text, header)
	if !ok {
		return nil, errors.New("no WebAssembly program of version 1")
	}
	var p program
	r := reader{data: rest}
	for len(r.data) > 0 {
		at := len(text) - len(r.data)
		number := r.byte()
		content := r.bytes(r.unsigned())
		if r.err != nil {
			return nil, fmt.Errorf("the section at byte %d: %w", at, r.err)
		}
		p = append(p, section{number, content})
	}
	return p, nil
}

// append appends the program as it stands in a file.
func (p program) append(dst []byte) []byte {
	dst = append(dst, header...)
	for _, s := range p {
		dst = append(dst, s.number)
		dst = appendUnsigned(dst, uint64(len(s.content)))
		dst = append(dst, s.content...)
	}
	return dst
}

// edit changes the content of a section, if the program has it.
func (p program) edit(number byte, change func(content []byte) ([]byte, error)) error {
	for i := range p {
		if p[i].number != number {
			continue
		}
		content, err := change(p[i].content)
		if err != nil {
			return err
		}
		p[i].content = content
	}
	return nil
}

// editMemory changes the memory that the program begins with, and writes it in few segments.
func (p program) editMemory(change func(memory []byte) error) error {
	return p.edit(dataSection, func(content []byte) ([]byte, error) {
		memory, err := readMemory(content)
		if err == nil {
			err = change(memory)
		}
		if err != nil {
			return nil, fmt.Errorf("the data section: %w", err)
		}
		return appendMemory(nil, memory), nil
	})
}
