// Command shrink makes a WebAssembly program of Go's linker smaller, which computes what it did
// before.
//
// It drops the tables of source lines (lines.go): a crash then names functions without lines. On
// the page that saves a sixteenth of what is sent.
//
// And it writes the memory that the program begins with in few segments (image.go). Go's linker
// leaves out every run of zeros, which makes 100,000 segments, the most that the format allows:
// each costs a header, breaks up what a compressor could find alike, and is read one by one when
// the program starts. The zeros compress to nothing. On the page it saves a twentieth.
//
//	go run ./tools/shrink -out bin/app.wasm bin/linked.wasm
package main

import (
	"flag"
	"fmt"
	"os"
)

func main() {
	out := flag.String("out", "", "file to write")
	flag.Parse()
	if *out == "" || flag.NArg() != 1 {
		flag.Usage()
		os.Exit(2)
	}
	if err := rewrite(*out, flag.Arg(0)); err != nil {
		fmt.Fprintln(os.Stderr, "shrink:", err)
		os.Exit(1)
	}
}

// rewrite writes the program of a file to another, made smaller.
func rewrite(out, file string) error {
	program, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	smaller, err := withMemory(program, dropLines)
	if err != nil {
		return fmt.Errorf("%s: %w", file, err)
	}
	return os.WriteFile(out, smaller, 0o666)
}
