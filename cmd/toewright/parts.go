package main

import (
	"bufio"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"os"
)

// maxPart is far more than any part takes: a tolerance's grows to some megabytes,
// a map's to ten.
const maxPart = 256 << 20

// gzipMagic is what a gzip file begins with (RFC 1952, section 2.3.1).
const gzipMagic = "\x1f\x8b"

// eachPart calls do with each part in a file or in standard input, one a line, packed by
// gzip or not, and with what names it. One part is in memory at a time.
func eachPart(path string, stdin io.Reader, do func(name string, data []byte) error) error {
	in := stdin
	if path != standardInput {
		f, err := os.Open(path)
		if err != nil {
			return err
		}
		defer f.Close()
		in = f
	}
	lines := bufio.NewReader(in)
	if start, _ := lines.Peek(len(gzipMagic)); string(start) == gzipMagic {
		unpacked, err := gzip.NewReader(lines)
		if err != nil {
			return cutShort(path)
		}
		lines = bufio.NewReader(unpacked)
	}
	for n := 1; ; n++ {
		name := path
		if n > 1 {
			name = fmt.Sprintf("%s, line %d", path, n)
		}
		line, err := readLine(lines)
		if err != nil && !errors.Is(err, io.EOF) {
			return cutShort(name)
		}
		if len(line) > 0 || n == 1 {
			if err := do(name, line); err != nil {
				return err
			}
		}
		if err != nil {
			return nil
		}
	}
}

func cutShort(name string) error {
	return fmt.Errorf("%s: was cut short or damaged on its way; fetch it, or run its shard, again", name)
}

// readLine reads up to the next end of a line, or as much as any part takes.
func readLine(r *bufio.Reader) (line []byte, err error) {
	for len(line) < maxPart {
		piece, err := r.ReadSlice('\n')
		line = append(line, piece...)
		if !errors.Is(err, bufio.ErrBufferFull) {
			return line, err
		}
	}
	return line, nil
}
