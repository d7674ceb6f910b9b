// Command shrink makes a WebAssembly program of Go's linker smaller, which computes what it did
// before.
//
//	go run ./tools/shrink -out bin/app.wasm bin/linked.wasm
//
// It drops what only a printed stack is made of (traces.go): a crash then says program counters
// without names and lines. On the page that saves an eighth of what is sent. With the linked
// program names and lines are put to a stack again:
//
//	go run ./tools/shrink -describe bin/linked.wasm <stack.txt
//
// And it writes the memory that the program begins with in few segments (image.go). Go's linker
// leaves out every run of zeros, which makes 100,000 segments, the most that the format allows:
// each costs a header, breaks up what a compressor could find alike, and is read one by one when
// the program starts. The zeros compress to nothing. On the page it saves a twentieth.
//
// It leaves out what the runtime finds a function by, and has the program write that as it starts
// (finding.go). On the page that saves a quarter of what a browser has to read, and a twenty-fifth of
// what is sent.
//
// At last it makes the compiled functions simpler (code.go): jumps go straight to where they go on
// (jumps.go), offsets stand in loads and stores (addresses.go), and a function says its number once
// (numbers.go). On the page that saves a seventh, and the solver's sweeps take a fifth less time.
package main

import (
	"flag"
	"fmt"
	"os"
)

func main() {
	out := flag.String("out", "", "file to write")
	stack := flag.Bool("describe", false, "read a printed stack, and write it with names and lines")
	flag.Parse()
	if flag.NArg() != 1 || (*out == "") != *stack {
		flag.Usage()
		os.Exit(2)
	}
	if err := run(*out, flag.Arg(0)); err != nil {
		fmt.Fprintln(os.Stderr, "shrink:", err)
		os.Exit(1)
	}
}

// run writes the program of a file to another, made smaller; without one it describes the stack
// that is typed.
func run(out, file string) error {
	text, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	p, err := readProgram(text)
	switch {
	case err != nil:
	case out == "":
		err = p.editMemory(func(memory []byte) error { return describe(os.Stdout, os.Stdin, memory) })
	default:
		p, err = p.smaller()
	}
	if err != nil {
		return fmt.Errorf("%s: %w", file, err)
	}
	if out == "" {
		return nil
	}
	return os.WriteFile(out, p.append(nil), 0o666)
}

// smaller returns the program made smaller.
func (p program) smaller() (program, error) {
	var f finding
	err := p.editMemory(func(memory []byte) error {
		if err := dropTraces(memory); err != nil {
			return err
		}
		return f.take(memory)
	})
	if err == nil {
		err = p.edit(codeSection, simplify)
	}
	if err != nil {
		return nil, err
	}
	return p.startWith(f.fill())
}
