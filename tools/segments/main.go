// Command segments joins the data segments of a WebAssembly program that lie close
// together. Go's linker leaves out every run of zeros, which makes 100,000 segments, the
// most that the format allows: each costs a header, breaks up what a compressor could find
// alike, and is read one by one when the program starts. Joined they are a few; the
// zeros between them compress to nothing. On the page it saves a twentieth of what is sent.
//
//	go run ./tools/segments -out bin/app.wasm bin/linked.wasm
package main

import (
	"flag"
	"fmt"
	"os"
)

// gap is the longest run of zeros, in bytes, that a segment takes in.
const gap = 128

func main() {
	out := flag.String("out", "", "file to write")
	flag.Parse()
	if *out == "" || flag.NArg() != 1 {
		flag.Usage()
		os.Exit(2)
	}
	if err := rewrite(*out, flag.Arg(0)); err != nil {
		fmt.Fprintln(os.Stderr, "segments:", err)
		os.Exit(1)
	}
}

// rewrite writes the program of a file to another, with its segments joined.
func rewrite(out, file string) error {
	program, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	joined, err := joinData(program, gap)
	if err != nil {
		return fmt.Errorf("%s: %w", file, err)
	}
	return os.WriteFile(out, joined, 0o666)
}
