package main

import (
	"bufio"
	"fmt"
	"io"
	"regexp"
	"strconv"
)

// counterAt is a program counter as a printed stack says it.
var counterAt = regexp.MustCompile(`\bpc=0x([0-9a-f]{1,16})\b`)

// describe copies a printed stack. Before each line that says a program counter it puts in which
// function and line that is, by the memory of the program as it was linked.
func describe(w io.Writer, stack io.Reader, memory []byte) error {
	t, err := findTable(memory)
	if err != nil {
		return err
	}
	lines := bufio.NewScanner(stack)
	for lines.Scan() {
		if m := counterAt.FindStringSubmatch(lines.Text()); m != nil {
			pc, _ := strconv.ParseUint(m[1], 16, 64) // It has digits alone.
			if where, err := t.describe(pc); err != nil {
				return err
			} else if where != "" {
				fmt.Fprintln(w, where)
			}
		}
		fmt.Fprintln(w, lines.Text())
	}
	return lines.Err()
}

// describe returns the function and the line at a program counter; nothing where there is none.
func (t table) describe(pc uint64) (string, error) {
	for i := range t.number {
		if uint64(t.place(i)) != pc>>16 {
			continue
		}
		f, err := t.function(i)
		if err != nil {
			return "", err
		}
		name, err := t.name(f)
		if err != nil {
			return "", err
		}
		// The call is the instruction before that at which the stack goes on.
		at := pc & 0xffff
		if at > 0 {
			at--
		}
		file, err := t.file(f, at)
		if err != nil {
			return "", err
		}
		line, err := t.value(field(f, lineField), at)
		return fmt.Sprintf("%s %s:%d", name, file, line), err
	}
	return "", nil
}

// file returns from which file an instruction of a function came.
func (t table) file(f []byte, instruction uint64) (string, error) {
	number, err := t.value(field(f, fileField), instruction)
	if err != nil {
		return "", err
	}
	at := 4 * (uint64(field(f, unitField)) + uint64(number))
	if number < 0 || at+4 > uint64(len(t.units)) {
		return "?", nil
	}
	name, err := text(t.files, field(t.units, int(at)))
	return string(name), err
}

// value returns what a counter says of an instruction; -1 where there is no such counter.
func (t table) value(from uint32, instruction uint64) (int32, error) {
	value := int32(-1)
	if from == 0 {
		return value, nil
	}
	var to uint64
	for at, first := int(from), true; ; first = false {
		change, instructions, end, err := t.step(at, first)
		if err != nil || instructions == 0 {
			return value, err
		}
		at, value, to = end, value+change, to+instructions
		if instruction < to {
			return value, nil
		}
	}
}
